using System.Diagnostics;
using System.Globalization;

namespace Clutchwright.Years;

/// <summary>The real program, serving a book on a free port of this machine, measured from outside.</summary>
internal sealed class Server : IDisposable
{
    private const int TicksASecond = 100;
    private const double RestingMilliseconds = 50.0;
    private readonly Process _process;

    private Server(Process process, HttpClient client, TimeSpan start, TimeSpan beliefs) => (_process, Client, Start, Beliefs) = (process, client, start, beliefs);

    public HttpClient Client { get; }

    /// <summary>From the start of the process to the end of the start page.</summary>
    public TimeSpan Start { get; }

    /// <summary>From the start of the process to the end of a page that needs what is believed of every animal.</summary>
    public TimeSpan Beliefs { get; }

    /// <summary>Processor time of the server so far, of all threads, in milliseconds.</summary>
    public double Cpu
    {
        get
        {
            var fields = File.ReadAllText($"/proc/{_process.Id}/stat").Split(')')[^1].Split(' ', StringSplitOptions.RemoveEmptyEntries);
            return (double.Parse(fields[11], CultureInfo.InvariantCulture) + double.Parse(fields[12], CultureInfo.InvariantCulture)) * 1000.0 / TicksASecond;
        }
    }

    /// <summary>The most memory that was resident at once, in MB.</summary>
    public double MostMegabytes => double.Parse(
        File.ReadLines($"/proc/{_process.Id}/status").First(l => l.StartsWith("VmHWM", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2], CultureInfo.InvariantCulture) / 1024.0;

    public static async Task<Server> StartAsync(string folder, int port)
    {
        var url = string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}");
        var started = Stopwatch.GetTimestamp();
        var process = Run(["serve", "--data", folder, "--urls", url, "--backup-hour", "off"]);
        _ = process.StandardOutput.ReadToEndAsync();
        _ = process.StandardError.ReadToEndAsync();
        var client = new HttpClient { BaseAddress = new(url), Timeout = TimeSpan.FromMinutes(5) };
        while (true)
        {
            try
            {
                (await client.GetAsync("/")).EnsureSuccessStatusCode();
                var start = Stopwatch.GetElapsedTime(started);
                (await client.GetAsync("/stock")).EnsureSuccessStatusCode();
                var server = new Server(process, client, start, Stopwatch.GetElapsedTime(started));
                await server.RestAsync();
                return server;
            }
            catch (HttpRequestException) when (!process.HasExited)
            {
                await Task.Delay(10);
            }
        }
    }

    // After a start the program asks itself for its first pages; what is measured comes after them.
    private async Task RestAsync()
    {
        for (double before = -1.0, now = Cpu; now - before > RestingMilliseconds; (before, now) = (now, Cpu))
        {
            await Task.Delay(1_000);
        }
    }

    /// <summary>Builds the program as a keeper has it, where that is not done.</summary>
    public static async Task BuildAsync()
    {
        var start = new ProcessStartInfo(Path.Combine(Root(), "clutchwright"), ["--version"]) { UseShellExecute = false };
        using var building = Process.Start(start)!;
        await building.WaitForExitAsync();
        if (building.ExitCode != 0)
        {
            throw new InvalidOperationException("The program could not be built.");
        }
    }

    /// <summary>Starts the program as the keeper's command does.</summary>
    public static Process Run(string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet") { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(Path.Combine(Root(), "artifacts", "ready", "clutchwright.dll"));
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        return Process.Start(start)!;
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Clutchwright.slnx")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("This is measured in a checkout.");
        }

        return folder.FullName;
    }

    public void Dispose()
    {
        Client.Dispose();
        _process.Kill();
        _process.WaitForExit();
        _process.Dispose();
    }
}
