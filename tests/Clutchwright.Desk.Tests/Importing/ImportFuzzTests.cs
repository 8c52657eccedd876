using System.Diagnostics;
using System.Globalization;

namespace Clutchwright.Desk.Tests.Importing;

/// <summary>Spoilt files of every kind, from counted seeds: never a crash, never a part written, each refusal with its place and reason, and what is taken comes back the same.
/// A long run is asked for by CLUTCHWRIGHT_FUZZ=N, and begins at CLUTCHWRIGHT_FUZZ_FROM; see build/fuzz-imports.sh.</summary>
public sealed class ImportFuzzTests
{
    private const int Usual = 300;

    private static readonly int Count = Number("CLUTCHWRIGHT_FUZZ") ?? Usual;

    private static readonly int First = Number("CLUTCHWRIGHT_FUZZ_FROM") ?? 1;

    [Fact]
    public async Task Import_SpoiltFiles_AreTakenWholeOrRefusedWithReasons()
    {
        var clock = Stopwatch.StartNew();
        using var fuzz = new ImportFuzz();
        for (var i = 0; i < Count; i++)
        {
            await fuzz.TryAsync(First + i);
            if ((i + 1) % 5_000 == 0 || i + 1 == Count)
            {
                TestContext.Current.TestOutputHelper!.WriteLine($"{i + 1} cases, {clock.Elapsed.TotalSeconds:0} s: {string.Join(", ", fuzz.Tally.Select(t => $"{t.Key} {t.Value.Count} (at most {t.Value.Longest} ms, {t.Value.How})"))}");
            }
        }

        Assert.All(new[] { "animals", "clutches", "log", "photos" }, kind => Assert.All(new[] { "refused", "taken" }, fate => Assert.Contains($"{kind} {fate}", fuzz.Tally.Keys)));
    }

    private static int? Number(string variable) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
}
