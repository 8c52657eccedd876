using System.Diagnostics;
using System.Net;
using System.Text.RegularExpressions;

namespace Clutchwright.Cli.Tests.Serving;

/// <summary><c>clutchwright serve</c> in a process of its own, to be killed.</summary>
internal sealed partial class ServedProgram : IAsyncDisposable
{
    private readonly Process _process;
    private readonly Task<string> _error;

    private ServedProgram(Process process, Uri address)
    {
        _process = process;
        _error = process.StandardError.ReadToEndAsync();
        Address = address;
    }

    public Uri Address { get; }

    /// <summary>Starts it on a free port and waits until it answers.</summary>
    /// <param name="home">The folder of the user, in which the data folder lies where none is named.</param>
    /// <param name="data">The data folder; <c>null</c>: the book lies on the server.</param>
    /// <param name="connection">The connection string of a database, where the book lies on a server.</param>
    public static async Task<ServedProgram> StartAsync(string home, string? data, string? connection)
    {
        var process = Start(home, connection, ["serve", "--urls", "http://127.0.0.1:0", "--backup-hour", "off", .. data is null ? [] : (string[])["--data", data]]);
        for (var line = ""; line is not null; line = await process.StandardOutput.ReadLineAsync(CancellationToken.None))
        {
            if (Written().Match(line) is { Success: true } found)
            {
                return new(process, new Uri(found.Value));
            }
        }

        throw new InvalidOperationException($"The program did not start: {await process.StandardError.ReadToEndAsync(CancellationToken.None)}");
    }

    /// <summary>Starts the program with any command.</summary>
    public static Process Start(string home, string? connection, IReadOnlyList<string> args)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        foreach (var arg in args.Prepend(Path.Combine(AppContext.BaseDirectory, "clutchwright.dll")))
        {
            start.ArgumentList.Add(arg);
        }

        start.Environment["XDG_DATA_HOME"] = home;
        start.Environment["CLUTCHWRIGHT_POSTGRESQL"] = connection ?? string.Empty;
        return Process.Start(start)!;
    }

    /// <summary>Kills it (SIGKILL, where the system knows it).</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync(CancellationToken.None);
    }

    /// <summary>What it said on standard error by now that it is over.</summary>
    public Task<string> ErrorAsync() => _error;

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            await KillAsync();
        }

        await _error;
        _process.Dispose();
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex Written();
}

/// <summary>A keeper at a browser: asks for a form, fills it in, sends it.</summary>
internal sealed partial class FormClient(Uri address) : IDisposable
{
    private readonly HttpClient _http = new(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = true }) { BaseAddress = address };
    private string? _token;

    /// <summary>Sends a form.</summary>
    /// <param name="path">The page.</param>
    /// <param name="form">The form's name.</param>
    /// <param name="fields">What is filled in.</param>
    /// <returns>Whether the app said that it is written: it sends the browser on. False also where it was not there any more.</returns>
    public async Task<bool> SendAsync(string path, string form, params (string Name, string Value)[] fields)
    {
        try
        {
            if (_token is null)
            {
                using var page = await _http.GetAsync(new Uri("/log", UriKind.Relative), CancellationToken.None);
                _token = Token().Match(await page.Content.ReadAsStringAsync(CancellationToken.None)).Groups["token"].Value;
            }

            using var content = new FormUrlEncodedContent(
                fields.Append(("_handler", form)).Append(("__RequestVerificationToken", _token)).Select(f => new KeyValuePair<string, string>(f.Item1, f.Item2)));
            using var answer = await _http.PostAsync(new Uri(path, UriKind.Relative), content, CancellationToken.None);
            return answer.StatusCode is HttpStatusCode.Found or HttpStatusCode.SeeOther;
        }
        catch (Exception gone) when (gone is HttpRequestException or IOException or OperationCanceledException)
        {
            return false;
        }
    }

    public void Dispose() => _http.Dispose();

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"(?<token>[^\"]+)\"")]
    private static partial Regex Token();
}
