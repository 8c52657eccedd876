using Clutchwright.Desk.Charts;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Tests.Charts;

public class DrawChartTests
{
    // Two certain hets give normal-looking young that carry it in 2 of 3; a visual put to a normal gives certain hets.
    private const string Room = """
        id,name,sex,sire,dam,hatched,seen,told,status
        S1,Old one,m,,,2015,normal,het Clown,Died
        D1,,f,,,2015,normal,het Clown,Kept
        Y1,,f,S1,D1,2019-08-01,normal,,Kept
        Y2,,m,S1,D1,2019-08-01,Clown,,Kept
        Y3,,u,S1,D1,2019-08-01,normal,,Sold
        G1,,f,S1,Y1,2022-08-01,,,Kept
        P1,,f,Y2|S1,D1,2022-08-01,,,Kept
        L1,,m,,,2015,Pastel,,Kept
        """;

    [Fact]
    public async Task RunAsync_NoAnimalAsked_DrawsAllThatHaveKin()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var chart = await AskAsync(desk, new(null));

        Assert.Equal(["D1", "G1", "P1", "S1", "Y1", "Y2", "Y3"], chart.List.Select(l => l.Tag).Order(StringComparer.Ordinal));
        Assert.Null(chart.Tag);
        Assert.Equal("Clown", Assert.Single(chart.Marked).Name);
        Assert.Equal(["Clown"], chart.Genes.Select(g => g.Name));
    }

    [Fact]
    public async Task RunAsync_CarriersAndVisuals_AreFilledByBelief()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var chart = await AskAsync(desk, new("S1") { Genes = ["clown"] });

        Assert.Equal(0.5, Of(chart, "S1").Filled.Single());
        Assert.Equal(1, Of(chart, "Y2").Filled.Single());
        Assert.Equal(1.0 / 3, Of(chart, "Y1").Filled.Single(), 9);
        Assert.Equal(Probability.Ratio(2, 3), chart.List.Single(l => l.Tag == "Y1").Chances.Single());
    }

    [Fact]
    public async Task RunAsync_AnimalAsked_HasTheArrowAndItsState()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var chart = await AskAsync(desk, new("s1"));

        var asked = Of(chart, "S1");
        Assert.Equal(("S1", "Old one"), (chart.Tag, chart.Name));
        Assert.True(asked is { IsAskedAbout: true, IsDead: true, IsHere: false });
        Assert.False(Of(chart, "Y3").IsHere);
        Assert.Equal("S1 Old one, male, het Clown, died", asked.Description);
        Assert.Equal(["S1", "Old one", "het Clown"], asked.Label.Select(l => l.Text));
    }

    [Fact]
    public async Task RunAsync_DaughterBackToSireAndPossibleSires_AreDrawnAsSuch()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var chart = await AskAsync(desk, new("S1") { IsWhole = true });

        Assert.Contains(chart.Strokes, s => s is { Use: StrokeUse.Mating, IsDouble: true });
        Assert.Contains(chart.Strokes, s => s is { Use: StrokeUse.Mating, IsDashed: true });
        Assert.Contains(chart.Strokes, s => s.Use == StrokeUse.Again);
        Assert.Contains(chart.Symbols, s => s is { Meaning: SymbolMeaning.Again, Description: "S1 Old one, here a second time" });
        Assert.True(chart.List.Single(l => l.Tag == "G1").AreParentsKin);
        Assert.Equal(["S1", "Y2"], chart.List.Single(l => l.Tag == "P1").Sires.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task RunAsync_GeneMarked_LabelsTellOfWhatIsCarriedOnlyThat()
    {
        using var desk = await TestDesk.WithAsync("id,sex,sire,dam,seen,told\nS,m,,,normal,het Clown het Piebald\nD,f,,,normal,\nY,m,S,D,normal,\n");

        var chart = await AskAsync(desk, new("Y") { Genes = ["piebald"] });

        Assert.Equal(["S", "het Piebald"], Of(chart, "S").Label.Select(l => l.Text));
        Assert.Equal(["Y", "50% het Piebald"], Of(chart, "Y").Label.Select(l => l.Text));
        Assert.Contains("50% het Clown", Of(chart, "Y").Description, StringComparison.Ordinal);
    }

    [Fact]
    public async Task RunAsync_NoGenesAsked_FillsNothing()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var chart = await AskAsync(desk, new("S1") { Genes = [] });

        Assert.Empty(chart.Marked);
        Assert.All(chart.Symbols, s => Assert.Empty(s.Filled));
    }

    [Fact]
    public async Task RunAsync_AskedWrongly_NamesEverything()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var answer = await desk.Get<DrawChart>().RunAsync(new("Y9") { Up = -1, Most = 0, Genes = ["Clwn"] }, TestDesk.Cancel);

        Assert.Null(answer.Value);
        Assert.Equal(["up", "most", "gene", "animal"], answer.Problems.Select(p => p.Where));
        Assert.Contains("Clown", answer.Problems[2].DidYouMean!);
        Assert.NotEmpty(answer.Problems[3].DidYouMean!);
    }

    [Fact]
    public async Task RunAsync_EmptyBook_IsAnEmptyChart()
    {
        using var desk = new TestDesk();

        var chart = await AskAsync(desk, new(null));

        Assert.Empty(chart.Symbols);
        Assert.Empty(chart.List);
    }

    [Fact]
    public async Task RunAsync_Demo_NoLineOfALabelIsLeftOutUntold()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var chart = await AskAsync(desk, new(null) { Genes = [] });

        // Labels may be cut, and then say so, and chances below 1 % are not on them; the description holds all.
        foreach (var symbol in chart.Symbols.Where(s => s.Meaning == SymbolMeaning.Animal && !s.Label.Any(l => l.Text.EndsWith('…'))))
        {
            var words = chart.List.Single(l => l.Tag == symbol.Tag).Words.Parts.Where(p => p.Chance?.Value is not < 0.01).SelectMany(p => p.Text.Split(' ')).Order(StringComparer.Ordinal);
            var label = symbol.Label.Where(l => l.Style is LabelStyle.Seen or LabelStyle.Carried).SelectMany(l => l.Text.Split(' ')).Select(w => w.TrimEnd(',')).Order(StringComparer.Ordinal);
            Assert.Equal(words, label);
        }
    }

    private static ChartSymbolLine Of(ChartAnswer chart, string tag) => chart.Symbols.Single(s => s.Tag == tag && s.Meaning == SymbolMeaning.Animal);

    private static async Task<ChartAnswer> AskAsync(TestDesk desk, ChartQuestion question)
    {
        var answer = await desk.Get<DrawChart>().RunAsync(question, TestDesk.Cancel);
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }
}
