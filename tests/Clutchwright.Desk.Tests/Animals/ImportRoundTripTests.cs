using System.Text;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Importing;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Animals;

public class ImportRoundTripTests
{
    private const string Good = """
        id,sex,sire,dam,hatched,seen,told,ruled_out,rack
        A1,m,,,2020,Clown,,,3
        A2,f,,,2020-05-01,normal,66% het Clown,Piebald,
        A3,f,A1|A4,A2,2023,normal,,,
        A4,m,,,,Pastel,,,"three, or four"
        """;

    [Fact]
    public async Task RunAsync_GoodFile_IsPreviewedImportedUndoneAndImportedAgain()
    {
        using var desk = new TestDesk();
        var file = Encoding.UTF8.GetBytes(Good);

        var preview = await desk.Get<ImportTable>().PreviewAsync(ImportKind.Animals, new(file, "x.csv"), TestDesk.Cancel);
        Assert.Empty(preview.Problems);
        Assert.Equal(["A1", "A2", "A3", "A4"], preview.Rows.Select(r => r.Tag));
        Assert.Equal([2, 3, 4, 5], preview.Rows.Select(r => r.Row));
        Assert.Equal(("rack", null, "3"), preview.Columns.Where(c => c.Header == "rack").Select(c => (c.Header, c.Field, c.Sample)).Single());
        Assert.Empty(await desk.AllAsync()); // nothing written yet

        var done = (await desk.Get<ImportStock>().RunAsync(file, null, "good.csv", TestDesk.Who, TestDesk.Cancel)).Value!;
        Assert.Equal((4, 0), (done.Added, done.Skipped));
        var exported = await desk.ExportAsync();

        Assert.Empty((await desk.Get<UndoDeed>().RunAsync(done.Deed, TestDesk.Who, TestDesk.Cancel)).Problems);
        Assert.Empty(await desk.AllAsync());
        Assert.Empty((await desk.StateAsync()).Animals);

        Assert.Equal(4, (await desk.ImportAsync(exported)).Added);
        Assert.Equal(exported, await desk.ExportAsync());
    }

    [Fact]
    public async Task ExportAsync_Demo_RoundTripsIntoAnotherBookWithTheSameBeliefs()
    {
        using var desk = await TestDesk.WithDemoAsync();
        var exported = await desk.ExportAsync();

        using var other = await TestDesk.WithAsync(exported);

        Assert.Equal(exported, await other.ExportAsync());
        Assert.Equal((await desk.AllAsync()).Select(a => (a.Tag, a.Words.Text)), (await other.AllAsync()).Select(a => (a.Tag, a.Words.Text)));
    }

    [Fact]
    public async Task RunAsync_FileWithManyFaults_NamesEachRowAndWritesNothing()
    {
        using var desk = new TestDesk();
        var file = Encoding.UTF8.GetBytes("""
            id,sex,sire,dam,hatched,seen,told
            B1,x,,,2020,Clown,
            B2,f,,,2020,Clwn,
            B3,m,B2,,2021,normal,het Pastel
            B4,f,,NOBODY,the other day,Clown,
            B4,f,,,2020,Clown,
            B5,m,,,2020,Clown,
            """);

        var preview = await desk.Get<ImportTable>().PreviewAsync(ImportKind.Animals, new(file, "x.csv"), TestDesk.Cancel);
        var refused = await desk.Get<ImportStock>().RunAsync(file, null, "bad.csv", TestDesk.Who, TestDesk.Cancel);

        // A row that cannot be read is not held against the others: its unknown dam is told once its date is mended.
        Assert.Equal([2, 3, 3, 4, 5, 6], preview.Problems.Select(p => p.Row).Order());
        Assert.Contains(preview.Problems, p => p.Row == 3 && p.Text.Contains("Clown", StringComparison.Ordinal)); // the nearest spelling
        Assert.Equal(preview.Problems.Count, refused.Problems.Count);
        Assert.All(refused.Problems, p => Assert.StartsWith("row ", p.Where, StringComparison.Ordinal));
        Assert.Empty(await desk.AllAsync());
    }

    [Fact]
    public async Task RunAsync_MappingChosenByHeader_IsFollowed()
    {
        using var desk = new TestDesk();
        var file = Encoding.UTF8.GetBytes("Nummer;Tier;Gene\nC1;m;Pastel\n");
        var mapping = new Dictionary<string, string?> { ["nummer"] = "id", ["TIER"] = "sex", ["Gene"] = "seen" };

        Assert.Empty((await desk.Get<ImportStock>().RunAsync(file, mapping, "x.csv", TestDesk.Who, TestDesk.Cancel)).Problems);

        Assert.Equal("Pastel", await desk.TextAsync("C1"));
        var wrong = await desk.Get<ImportTable>().PreviewAsync(
            ImportKind.Animals, new(file, "x.csv", new Dictionary<string, string?> { ["Sexe"] = "sex", ["Gene"] = "gene" }), TestDesk.Cancel);
        Assert.Contains(wrong.Problems, p => p.Text.Contains("Sexe", StringComparison.Ordinal));
        Assert.Contains(wrong.Problems, p => p.Text.Contains("\"gene\" is no field", StringComparison.Ordinal));
    }

    [Fact]
    public async Task RunAsync_RowsThatAreThereAlready_AreSkippedAndSaid()
    {
        using var desk = await TestDesk.WithAsync(Good);
        var more = Encoding.UTF8.GetBytes(Good + "\nA5,f,,,2021,Clown,,,\n");

        var preview = await desk.Get<ImportTable>().PreviewAsync(ImportKind.Animals, new(more, "x.csv"), TestDesk.Cancel);
        var done = await desk.Get<ImportStock>().RunAsync(more, null, "more.csv", TestDesk.Who, TestDesk.Cancel);

        Assert.Equal(["A5"], preview.Rows.Where(r => !r.IsSkipped).Select(r => r.Tag));
        Assert.Equal((1, 4), (done.Value!.Added, done.Value.Skipped));
    }
}
