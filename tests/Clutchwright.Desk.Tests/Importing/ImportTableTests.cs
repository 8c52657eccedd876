using System.Text;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Clutches;
using Clutchwright.Desk.Importing;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Importing;

public class ImportTableTests
{
    private const string Stock = "id,sex\nF1,f\nM1,m\n";

    [Fact]
    public async Task RunAsync_MappingChosen_IsThereForTheNextFileOfTheSameHeadings()
    {
        using var desk = await TestDesk.WithAsync(Stock);
        var mapping = new Dictionary<string, string?> { ["Tier"] = "animal", ["tag"] = "date", ["was"] = "kind" };
        await Take(desk, "Tier,Tag,was\nF1,2025-01-02,shed\n", mapping);

        // Another order and another case of the headings, other rows.
        var next = await Preview(desk, "WAS,tier,tag\nfed,F1,2025-02-03\n", null);

        Assert.Equal(new DateOnly(2026, 5, 1), next.MappedAsOn);
        Assert.Empty(next.Problems);
        Assert.Equal(["kind", "animal", "date"], next.Columns.Select(c => c.Field));
        Assert.Equal("2025-02-03, fed", Assert.Single(next.Rows).Text);
    }

    [Fact]
    public async Task PreviewAsync_MappingKept_CanBeChangedAndIsKeptAnew()
    {
        using var desk = await TestDesk.WithAsync(Stock);
        await Take(desk, "animal,date,kind,x\nF1,2025-01-02,shed,a\n", new() { ["x"] = "leave out" });

        var changed = await Preview(desk, "animal,date,kind,x\nF1,2025-01-03,shed,a\n", new() { ["x"] = "text" });
        await Take(desk, "animal,date,kind,x\nF1,2025-01-03,shed,a\n", new() { ["x"] = "text" });
        var next = await Preview(desk, "animal,date,kind,x\nF1,2025-01-04,shed,b\n", null);

        Assert.Null(changed.MappedAsOn);
        Assert.Equal(["text", "text"], new[] { changed, next }.Select(p => p.Columns[3].Field));
    }

    [Fact]
    public async Task RunAsync_HeadingsThatSayItThemselves_NothingIsRemembered()
    {
        using var desk = await TestDesk.WithAsync(Stock);

        await Take(desk, "animal,date,kind\nF1,2025-01-02,shed\n", null);

        Assert.Equal(["Imported 1 entry of the log from x.csv", "Imported 2 animals from test.csv"], (await desk.Get<ListDeeds>().RunAsync(null, 10, TestDesk.Cancel)).Select(d => d.Words));
        Assert.Null((await Preview(desk, "animal,date,kind\nF1,2025-01-03,shed\n", null)).MappedAsOn);
    }

    [Fact]
    public async Task PreviewAsync_HeadingTwice_EachCanBeNamed()
    {
        using var desk = await TestDesk.WithAsync(Stock);

        var preview = await Preview(desk, "animal,date,kind,note,note,\nF1,2025-01-02,shed,a,b,c\n", new() { ["note (2)"] = "leave out", ["column 6"] = "" });

        Assert.Empty(preview.Problems);
        Assert.Equal([("note", "text"), ("note (2)", "leave out"), ("column 6", null)], preview.Columns.Skip(3).Select(c => (c.Header, c.Field)));
        Assert.Equal("2025-01-02, shed: a; column 6: c", Assert.Single(preview.Rows).Text);
    }

    [Fact]
    public async Task RunAsync_ClutchesWithoutId_AreCalledByTheScheme()
    {
        using var desk = await TestDesk.WithAsync(Stock);

        var done = await desk.Get<ImportTable>().RunAsync(
            ImportKind.Clutches, new(Encoding.UTF8.GetBytes("dam,laid,sire\nF1,2024-05-01,M1\nF1,2025-05-01,M1\n"), "c.csv"), TestDesk.Who, TestDesk.Cancel);

        Assert.Equal(2, done.Value!.Added);
        Assert.Equal(["25-01", "24-01"], (await desk.Get<ListClutches>().RunAsync(inBin: false, TestDesk.Cancel)).Select(c => c.Tag));
    }

    private static Task<ImportPreview> Preview(TestDesk desk, string csv, Dictionary<string, string?>? mapping) =>
        desk.Get<ImportTable>().PreviewAsync(ImportKind.Log, new(Encoding.UTF8.GetBytes(csv), "x.csv", mapping), TestDesk.Cancel);

    private static async Task Take(TestDesk desk, string csv, Dictionary<string, string?>? mapping) =>
        Assert.Empty((await desk.Get<ImportTable>().RunAsync(ImportKind.Log, new(Encoding.UTF8.GetBytes(csv), "x.csv", mapping), TestDesk.Who, TestDesk.Cancel)).Problems);
}
