using System.Diagnostics;
using System.Text;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Importing;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Desk.Words;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Desk.Tests.Importing;

/// <summary>Takes one spoilt file after another into a small book, and holds what came of it against what must hold of every import.</summary>
internal sealed class ImportFuzz : IDisposable
{
    private const int CasesOfOneBook = 2_000;
    private const int DeepEvery = 3;
    private const string Starts = "=+-@\t\r\n＝＋－＠";

    private const string Stock =
        """
        id,sex,hatched
        F1,f,2018
        F2,f,2018
        F3,f,2018
        F4,f,
        M1,m,2018
        M2,m,2018
        M3,m,
        M4,m,2018
        """;

    private TestDesk _desk = new();
    private BookDigest? _digest;
    private int _cases;

    /// <summary>By what was imported and what came of it, how many; and of each the longest time in milliseconds with what took it.</summary>
    public SortedDictionary<string, (int Count, long Longest, string How)> Tally { get; } = new(StringComparer.Ordinal);

    /// <summary>Tries the case of a seed.</summary>
    public async Task TryAsync(int seed)
    {
        _cases++;
        if (_digest is null || _cases % CasesOfOneBook == 0)
        {
            await RenewAsync();
        }

        var random = new SplitMix64((ulong)seed);
        var what = random.Below(4);
        var (bytes, how) = what == 3 ? FuzzSet.Make(random) : FuzzTable.Make((ImportKind)(what + 1), random);
        var name = what == 3 ? "photos" : ((ImportKind)(what + 1)).ToString().ToLowerInvariant();
        var clock = Stopwatch.StartNew();
        try
        {
            var fate = what == 3 ? await SetAsync(bytes) : await TableAsync((ImportKind)(what + 1), bytes);
            var key = $"{name} {fate}";
            var (count, longest, which) = Tally.GetValueOrDefault(key);
            var took = clock.ElapsedMilliseconds;
            Tally[key] = took >= longest ? (count + 1, took, $"seed {seed}, {how}") : (count + 1, longest, which);
        }
        catch (Exception problem) when (problem is not OperationCanceledException)
        {
            throw new InvalidOperationException($"Seed {seed}, {name}, {how}, {bytes.Length} bytes: {problem.GetType().Name}: {problem.Message}", problem);
        }
    }

    public void Dispose()
    {
        _digest?.Dispose();
        _desk.Dispose();
    }

    private async Task RenewAsync()
    {
        if (_digest is not null)
        {
            Dispose();
            _desk = new();
        }

        await _desk.ImportAsync(Stock);
        _digest = new(_desk.Folder);
    }

    private async Task<string> TableAsync(ImportKind kind, byte[] bytes)
    {
        var import = _desk.Get<ImportTable>();
        var file = new ImportFile(bytes, "fuzz.csv");
        var before = _digest!.Version();
        var preview = await import.PreviewAsync(kind, file, TestDesk.Cancel);
        Assert.Equal(before, _digest.Version());
        Assert.All(preview.Problems, p => Assert.True(p.Text.Length > 5 && p.Row >= 0));
        var records = preview.Problems.Count == 0 ? _digest.Records() : string.Empty;
        var done = await import.RunAsync(kind, file, TestDesk.Who, TestDesk.Cancel);
        if (preview.Problems.Count > 0 || preview.Rows.All(r => r.IsSkipped))
        {
            AssertRefused(done, before);
            Assert.True(preview.Problems.Count == 0 || done.Problems.Count == preview.Problems.Count);
            return preview.Problems.Count > 0 ? "refused" : "nothing new";
        }

        Assert.Empty(done.Problems);
        var exported = await ExportAsync(kind);
        AssertSafe(exported);
        await AssertAllThereAsync(kind, exported);
        await UndoAsync(done.Value!.Deed, records);
        if (_cases % DeepEvery != 0)
        {
            return "taken";
        }

        // What was written out, taken in again, is written out the same.
        var again = await import.RunAsync(kind, new(Encoding.UTF8.GetBytes(exported), "again.csv"), TestDesk.Who, TestDesk.Cancel);
        Assert.Empty(again.Problems);
        Assert.Equal(done.Value.Added, again.Value!.Added);
        Assert.Equal(exported, await ExportAsync(kind));
        await UndoAsync(again.Value.Deed, records);
        return "taken";
    }

    private async Task<string> SetAsync(byte[] bytes)
    {
        var import = _desk.Get<ImportPhotoSet>();
        using var content = new MemoryStream(bytes, writable: false);
        var set = new PhotoSet(content, "fuzz.zip");
        var before = _digest!.Version();
        var preview = await import.PreviewAsync(set, TestDesk.Cancel);
        Assert.Equal(before, _digest.Version());
        Assert.All(preview.Problems, p => Assert.True(p.Text.Length > 5 && p.Where.Length > 0));
        var records = preview.Problems.Count == 0 ? _digest.Records() : string.Empty;
        var done = await import.RunAsync(set, TestDesk.Who, TestDesk.Cancel);
        if (preview.Problems.Count > 0 || preview.Photos.All(p => p.IsSkipped))
        {
            AssertRefused(done, before);
            return preview.Problems.Count > 0 ? "refused" : "nothing new";
        }

        Assert.Empty(done.Problems);
        var after = await import.PreviewAsync(set, TestDesk.Cancel);
        Assert.Empty(after.Problems);
        Assert.All(after.Photos, p => Assert.True(p.IsSkipped));
        await UndoAsync(done.Value!.Deed, records);
        return "taken";
    }

    private void AssertRefused(Answer<ImportDone> done, string before)
    {
        Assert.Null(done.Value);
        Assert.NotEmpty(done.Problems);
        Assert.All(done.Problems, p => Assert.True(p.Where.Length > 0 && p.Text.Length > 5));
        Assert.Equal(before, _digest!.Version());
    }

    // No cell is a formula to a spreadsheet.
    private static void AssertSafe(string exported) =>
        Assert.All(FuzzTable.Read(exported).SelectMany(row => row), cell => Assert.False(cell.Length > 0 && Starts.Contains(cell[0], StringComparison.Ordinal), cell));

    private async Task AssertAllThereAsync(ImportKind kind, string exported)
    {
        var preview = await _desk.Get<ImportTable>().PreviewAsync(kind, new(Encoding.UTF8.GetBytes(exported), "again.csv"), TestDesk.Cancel);
        Assert.Empty(preview.Problems);
        Assert.All(preview.Rows, r => Assert.True(r.IsSkipped, r.Text));
    }

    private async Task<string> ExportAsync(ImportKind kind) => Encoding.UTF8.GetString(await _desk.Get<ExportTable>().RunAsync(kind, TestDesk.Cancel));

    private async Task UndoAsync(long deed, string records)
    {
        Assert.Empty((await _desk.Get<UndoDeed>().RunAsync(deed, TestDesk.Who, TestDesk.Cancel)).Problems);
        Assert.Equal(records, _digest!.Records());
    }
}
