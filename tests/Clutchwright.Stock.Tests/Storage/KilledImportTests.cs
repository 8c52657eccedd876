using System.Diagnostics;
using System.Globalization;
using Clutchwright.Stock.Storage;
using Clutchwright.Stock.Tests.Testing;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Clutchwright.Stock.Tests.Storage;

/// <summary>A program that imports is killed (SIGKILL, where the system knows it) at random moments: what is in the book
/// afterwards is the whole import or nothing, and what was acknowledged is there.</summary>
[Collection(nameof(Alone))]
public sealed class KilledImportTests(ITestOutputHelper output)
{
    private const int Rows = 2000;
    private const int KillsWhileOpening = 4;
    private const int KillsWhileImporting = 12;
    private const int MostRuns = 60;

    [Fact]
    public async Task ImportAnimals_KilledAtRandomMoments_LeavesAllOrNothing()
    {
        var place = await TestPlace.BareAsync();
        var undisturbed = await RunAsync(place, killAfterStart: null, killAfterOpen: null);
        Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"done {Rows}"), undisturbed.LastWords);
        Assert.Equal(Rows, await CheckAsync(place));
        place.Dispose();

        var random = new Random(20260501);
        var longest = undisturbed.FromOpenToDone;
        var importing = 0;
        place = await TestPlace.BareAsync();
        for (var kill = 0; importing < KillsWhileImporting; kill++)
        {
            Assert.True(kill < MostRuns, $"only {importing} of {MostRuns} kills fell into the import");
            var run = kill < KillsWhileOpening
                ? await RunAsync(place, random.NextDouble() * undisturbed.UntilOpen, null)
                : await RunAsync(place, null, random.NextDouble() * longest);
            var isDone = run.LastWords.StartsWith("done", StringComparison.Ordinal);
            importing += run.LastWords == "open" ? 1 : 0;

            // How fast the machine is changes while the tests run.
            longest = isDone ? Math.Max(0.05, run.FromOpenToDone) : longest * 1.05;

            var found = await CheckAsync(place);

            output.WriteLine($"kill {kill}: last words \"{run.LastWords}\", {found} animals");
            Assert.True(found is 0 or Rows, $"{found} animals");
            Assert.True(!isDone || found == Rows, "what was acknowledged is gone");
            if (found > 0)
            {
                place.Dispose();
                place = await TestPlace.BareAsync();
            }
        }

        place.Dispose();
    }

    /// <returns>How many animals there are, after the book was found whole and in agreement with its history.</returns>
    private static async Task<int> CheckAsync(TestPlace place)
    {
        using var book = (await Book.OpenAsync(place.Place, TimeProvider.System, TestBook.Cancellation)).Expect();
        await using var db = book.NewContext();
        if (!TestServer.HoldsTheBooks)
        {
            Assert.Equal("ok", await db.Database.SqlQueryRaw<string>("SELECT integrity_check AS \"Value\" FROM pragma_integrity_check").SingleAsync(TestBook.Cancellation));
            Assert.Empty(await db.Database.SqlQueryRaw<string>("SELECT \"table\" AS \"Value\" FROM pragma_foreign_key_check").ToListAsync(TestBook.Cancellation));
        }

        var animals = await db.Animals.CountAsync(TestBook.Cancellation);
        Assert.Equal(2 * animals, await db.Statements.CountAsync(TestBook.Cancellation));
        Assert.Equal(3 * animals, await db.Changes.CountAsync(TestBook.Cancellation));
        Assert.Equal(animals > 0 ? 1 : 0, await db.Deeds.CountAsync(TestBook.Cancellation));
        return animals;
    }

    /// <summary>Runs the import in a process of its own and kills it so many seconds after it said it had started or the book
    /// was open, if it is not done by then.</summary>
    private static async Task<Run> RunAsync(TestPlace place, double? killAfterStart, double? killAfterOpen)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "Clutchwright.Stock.KilledImport.dll");
        using var process = Process.Start(new ProcessStartInfo(Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet")
        {
            ArgumentList = { program, place.Text, Rows.ToString(CultureInfo.InvariantCulture) },
            RedirectStandardOutput = true,
            UseShellExecute = false,
        })!;
        var lastWords = "";
        double untilOpen = 0;
        double fromOpenToDone = 0;
        var started = Stopwatch.GetTimestamp();
        Task? killing = null;
        while (await process.StandardOutput.ReadLineAsync(TestBook.Cancellation) is { } words)
        {
            lastWords = words;
            switch (words)
            {
                case "started":
                    started = Stopwatch.GetTimestamp();
                    killing = killAfterStart is { } soon ? KillAsync(process, soon) : null;
                    break;
                case "open":
                    untilOpen = Stopwatch.GetElapsedTime(started).TotalSeconds;
                    started = Stopwatch.GetTimestamp();
                    killing ??= killAfterOpen is { } later ? KillAsync(process, later) : null;
                    break;
                default:
                    fromOpenToDone = Stopwatch.GetElapsedTime(started).TotalSeconds;
                    break;
            }
        }

        await (killing ?? Task.CompletedTask);
        await process.WaitForExitAsync(TestBook.Cancellation);
        return new Run(lastWords, untilOpen, fromOpenToDone);
    }

    private static async Task KillAsync(Process process, double seconds)
    {
        await Task.Delay(TimeSpan.FromSeconds(seconds), TestBook.Cancellation);
        try
        {
            process.Kill();
        }
        catch (InvalidOperationException)
        {
            // It was done before.
        }
    }

    private sealed record Run(string LastWords, double UntilOpen, double FromOpenToDone);
}
