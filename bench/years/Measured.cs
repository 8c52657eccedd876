using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace Clutchwright.Years;

/// <summary>A page: the first answer, then several.</summary>
/// <param name="Address">Its address.</param>
/// <param name="First">Milliseconds of the first answer of a server that has answered other pages.</param>
/// <param name="Median">Milliseconds of the later ones.</param>
/// <param name="Worst">The longest of them.</param>
/// <param name="Cpu">Milliseconds of the processor a later answer.</param>
/// <param name="Bytes">Length of an answer.</param>
internal sealed record PageTime(string Address, double First, double Median, double Worst, double Cpu, long Bytes)
{
    /// <summary>Whether a page is in time.</summary>
    public bool IsInTime => Worst <= Measured.MostMilliseconds && First <= Measured.MostMilliseconds;
}

/// <summary>What was measured of a book.</summary>
internal sealed record Measured(int Years, Sample Sample, double StartSeconds, double BeliefsSeconds, double HatchSeconds, double LabelSeconds, IReadOnlyList<PageTime> Pages, double Megabytes, double BackupSeconds, double BackupCpuSeconds, double CopySeconds)
{
    public const double MostMilliseconds = 300.0;
    private const int Turns = 5;

    public static async Task<Measured> OfAsync(string folder, int years, string? only)
    {
        var sample = await Sample.OfAsync(folder);
        var addresses = global::Clutchwright.Years.Pages.All(sample);
        using var server = await Server.StartAsync(folder, 5_600 + years);
        var pages = new List<PageTime>();
        foreach (var address in addresses.Where(a => only is null || a.StartsWith(only, StringComparison.Ordinal)))
        {
            pages.Add(await AskAsync(server, address));
            Console.Error.WriteLine(pages[^1]);
        }

        var (hatch, label) = await AfterAHatchlingAsync(server, folder, sample);
        var megabytes = server.MostMegabytes;
        var (backup, cpu, copy) = only is null ? await BackupAsync(folder) : default;
        return new(years, sample, server.Start.TotalSeconds, server.Beliefs.TotalSeconds, hatch, label, pages, megabytes, backup, cpu, copy);
    }

    // What is believed of all kin is reckoned anew. The hatchling is taken out again: the book is kept for the day.
    private static async Task<(double Hatch, double Label)> AfterAHatchlingAsync(Server server, string folder, Sample sample)
    {
        var file = Path.Combine(folder, "hatchling.csv");
        await File.WriteAllTextAsync(file, $"id,dam,seen\nbench,{sample.Animal},normal\n");
        using var imported = JsonDocument.Parse(await SayAsync(["stock", "import", file, "--data", folder, "--json"]));
        var (hatch, _) = await TimeAsync(server, $"/clutches/{sample.Clutch}/hatch");
        var (label, _) = await TimeAsync(server, $"/sheets?sheet=label&tag={sample.Young}");
        await SayAsync(["stock", "undo", imported.RootElement.GetProperty("deed").GetInt64().ToString(CultureInfo.InvariantCulture), "--data", folder]);
        File.Delete(file);
        return (hatch / 1000.0, label / 1000.0);
    }

    private static async Task<string> SayAsync(string[] arguments)
    {
        using var process = Server.Run(arguments);
        var wrong = process.StandardError.ReadToEndAsync();
        var said = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0 ? said : throw new InvalidOperationException(await wrong + said);
    }

    private static async Task<PageTime> AskAsync(Server server, string address)
    {
        var (first, bytes) = await TimeAsync(server, address);
        var (cpu, times) = (server.Cpu, new double[Turns]);
        for (var i = 0; i < Turns; i++)
        {
            (times[i], bytes) = await TimeAsync(server, address);
        }

        Array.Sort(times);
        return new(address, first, times[Turns / 2], times[^1], (server.Cpu - cpu) / Turns, bytes);
    }

    private static async Task<(double Milliseconds, long Bytes)> TimeAsync(Server server, string address)
    {
        var started = Stopwatch.GetTimestamp();
        using var answer = await server.Client.GetAsync(address);
        var bytes = await answer.Content.ReadAsByteArrayAsync();
        if (!answer.IsSuccessStatusCode)
        {
            Console.Error.WriteLine($"{address}: {answer.StatusCode}");
        }

        return (Stopwatch.GetElapsedTime(started).TotalMilliseconds, bytes.LongLength);
    }

    // Beside it the same bytes copied and flushed, which is what the disk needs.
    private static async Task<(double Seconds, double Cpu, double Copy)> BackupAsync(string folder)
    {
        var to = Path.Combine(folder, "bench.clutchwright");
        var copy = Path.Combine(folder, "bench.copy");
        File.Delete(to);
        var started = Stopwatch.GetTimestamp();
        using var process = Server.Run(["book", "backup", to, "--data", folder]);
        var said = process.StandardOutput.ReadToEndAsync();
        var wrong = process.StandardError.ReadToEndAsync();
        var cpu = 0.0;
        while (!process.WaitForExit(TimeSpan.FromMilliseconds(50)))
        {
            process.Refresh();
            cpu = process.HasExited ? cpu : Math.Max(cpu, CpuSeconds(process));
        }

        var took = Stopwatch.GetElapsedTime(started).TotalSeconds;
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException(await wrong + await said);
        }

        started = Stopwatch.GetTimestamp();
        await using (var from = File.OpenRead(Path.Combine(folder, "clutchwright.db")))
        await using (var into = File.Create(copy))
        {
            await from.CopyToAsync(into, 1 << 20);
            into.Flush(flushToDisk: true);
        }

        var copied = Stopwatch.GetElapsedTime(started).TotalSeconds;
        File.Delete(to);
        File.Delete(copy);
        return (took, cpu, copied);
    }

    // Of a process that may end while it is asked.
    private static double CpuSeconds(Process process)
    {
        try
        {
            return process.TotalProcessorTime.TotalSeconds;
        }
        catch (InvalidOperationException)
        {
            return 0.0;
        }
    }

    /// <summary>The figures as tables.</summary>
    public void Tell(TextWriter told)
    {
        told.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"\n{Years} years: {Sample.Animals:N0} animals, {Sample.Deeds:N0} deeds, {Sample.Photos:N0} photos, {Sample.Bytes / 1e6:N0} MB. Start to the start page {StartSeconds:0.0} s, to all beliefs {BeliefsSeconds:0.0} s; after a hatchling was written down its clutch's hatch day {HatchSeconds:0.0} s, then a label {LabelSeconds:0.0} s; memory at most {Megabytes:0} MB; backup {BackupSeconds:0.0} s ({BackupCpuSeconds:0.0} s of a processor), a copy alone {CopySeconds:0.0} s.\n"));
        told.WriteLine("| page | first | median | worst | processor | kB | |\n|---|---|---|---|---|---|---|");
        foreach (var page in Pages.OrderByDescending(p => Math.Max(p.First, p.Worst)))
        {
            told.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| {page.Address} | {page.First:0} | {page.Median:0} | {page.Worst:0} | {page.Cpu:0} | {page.Bytes / 1000} | {(page.IsInTime ? "" : "late")} |"));
        }
    }
}
