using System.Diagnostics;
using System.Globalization;

namespace Clutchwright.Years;

/// <summary>The real program, serving a book on a free port of this machine, measured from outside.</summary>
internal sealed class Server : IDisposable
{
    private const int TicksASecond = 100;
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
                return new(process, client, start, Stopwatch.GetElapsedTime(started));
            }
            catch (HttpRequestException) when (!process.HasExited)
            {
                await Task.Delay(10);
            }
        }
    }

    /// <summary>Starts the command line that was built beside this program.</summary>
    public static Process Run(string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet") { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = AppContext.BaseDirectory };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "clutchwright.dll"));
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        return Process.Start(start)!;
    }

    public void Dispose()
    {
        Client.Dispose();
        _process.Kill();
        _process.WaitForExit();
        _process.Dispose();
    }
}
