using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Charts;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Charts;

/// <summary>Small pedigrees whose drawing is known: the symbols of Bennett et al. 1995 (docs/references.md [Bennett1995], [recalled]).</summary>
public sealed class PedigreeChartExampleTests
{
    private static readonly ChartMeasures Measures = new() { Symbol = 20, LabelWidth = 60, Gap = 20, Air = 10, Track = 8, Margin = 5 };

    [Fact]
    public void Of_ParentsAndTwoYoung_IsTheTextbookDrawing()
    {
        var chart = Draw(new("M"), new("F"), new("y1", "M", "F"), new("y2", "M", "F"));

        // Centres 80 apart: 60 of label and 20 of gap. The descent leaves the middle of the pair. 10 of air above and below the sibship line.
        Assert.Equal(
            [("M", 0, 35.0, 15.0), ("F", 0, 115.0, 15.0), ("y1", 1, 35.0, 55.0), ("y2", 1, 115.0, 55.0)],
            chart.Symbols.Select(s => (s.Animal!.Key, s.Row, s.X, s.Y)));
        var mating = Assert.Single(chart.Matings);
        Assert.Equal([new(35, 15), new(115, 15)], mating.Path);
        Assert.False(mating.IsBetweenKin);
        var sibship = Assert.Single(chart.Sibships);
        Assert.Equal(new ChartPoint(75, 15), Assert.Single(sibship.Descents).From);
        Assert.Equal((35.0, 35.0, 115.0), (sibship.LineFrom, sibship.LineY, sibship.LineTo));
        Assert.Equal([new(35, 45), new(115, 45)], sibship.Young.Select(y => y.To));
    }

    [Fact]
    public void Of_YoungListedInAnyOrder_StandInOrderOfHatching()
    {
        var known = new Dictionary<string, ChartAnimal>
        {
            ["a"] = new("a", null) { Hatched = new(2024, 8, 3) },
            ["b"] = new("b", null) { Hatched = new(2024, 8, 1) },
            ["c"] = new("c", null),
            ["d"] = new("d", null) { Hatched = new(2024, 8, 2) },
        };

        var chart = PedigreeChart.Of(
            Pedigree.Of([new("a", "M", "F"), new("b", "M", "F"), new("c", "M", "F"), new("d", "M", "F"), new("M"), new("F")]), known, new("M"), Measures);

        Assert.Equal(["b", "d", "a", "c"], chart.Symbols.Where(s => s.Row == 1).Select(s => s.Animal!.Key));
    }

    [Fact]
    public void Of_DaughterBackToSire_StandsBesideHimASecondTime()
    {
        var chart = Draw(new("S"), new("D"), new("d", "S", "D"), new("y", "S", "d"));

        Assert.Equal([("S", 0), ("D", 0), ("S", 1), ("d", 1), ("y", 2)], chart.Symbols.Select(s => (s.Animal!.Key, s.Row)));
        Assert.Equal(ChartSymbolKind.Again, chart.Symbols[2].Kind);
        Assert.Equal([false, true], chart.Matings.Select(m => m.IsBetweenKin));
        Assert.Equal((0, 2), (Assert.Single(chart.Arcs).Animal, chart.Arcs[0].Again));
    }

    [Fact]
    public void Of_MaleWithTwoMates_StandsBetweenThem()
    {
        var chart = Draw(new("F1"), new("F2"), new("M"), new("y1", "M", "F1"), new("y2", "M", "F2"));

        Assert.Equal(["F1", "M", "F2"], chart.Symbols.Where(s => s.Row == 0).Select(s => s.Animal!.Key));
        Assert.All(chart.Matings, m => Assert.Equal(2, m.Path.Count));
        Assert.Equal(2, chart.Sibships.Count);
    }

    [Fact]
    public void Of_MaleWithFourMates_LinesPassOverTheRowAndNest()
    {
        var chart = Draw(
            new("M"), new("F1"), new("F2"), new("F3"), new("F4"), new("a", "M", "F1"), new("b", "M", "F2"), new("c", "M", "F3"), new("d", "M", "F4"));

        Assert.Equal(["F1", "F2", "M", "F3", "F4"], chart.Symbols.Where(s => s.Row == 0).Select(s => s.Animal!.Key));
        Assert.Equal(2, chart.Matings.Count(m => m.Path.Count == 2));
        Assert.All(chart.Matings.Where(m => m.Path.Count == 4), m => Assert.True(m.Path[1].Y < chart.Symbols[m.Sire].Y - 10));
        Assert.Empty(chart.Arcs);
    }

    [Fact]
    public void Of_TwoPossibleSires_JoinsBothByDashedLines()
    {
        var chart = Draw(new("X"), new("Y"), new("D"), new("y", dam: "D", possibleSires: ["X", "Y"]));

        Assert.Equal(["X", "D", "Y"], chart.Symbols.Where(s => s.Row == 0).Select(s => s.Animal!.Key));
        Assert.All(chart.Matings, m => Assert.True(m.IsPossible));
        var sibship = Assert.Single(chart.Sibships);
        Assert.Equal(2, sibship.Descents.Count);
        Assert.Single(sibship.Young);
    }

    [Fact]
    public void Of_OneParentRecorded_HasAMarkForTheOther()
    {
        var chart = Draw(new("D"), new("y", dam: "D"));

        Assert.Equal([ChartSymbolKind.NotRecorded, ChartSymbolKind.Animal, ChartSymbolKind.Animal], chart.Symbols.Select(s => s.Kind));
        Assert.Equal("D", chart.Symbols[chart.Matings[0].Dam].Animal!.Key);
    }

    [Fact]
    public void Of_MoreYoungThanAreDrawn_CountsTheOthersInADiamond()
    {
        PedigreeAnimal[] animals = [new("M"), new("F"), .. Enumerable.Range(0, 9).Select(i => new PedigreeAnimal($"y{i}", "M", "F"))];

        var chart = PedigreeChart.Of(Pedigree.Of(animals), new Dictionary<string, ChartAnimal>(), new("M") { MostYoung = 2 }, Measures);

        var diamond = Assert.Single(chart.Symbols, s => s.Kind == ChartSymbolKind.SeveralYoung);
        Assert.Equal(7, diamond.Young);
        Assert.Equal(["y0", "y1", null], chart.Symbols.Where(s => s.Row == 1).Select(s => s.Animal?.Key));
        Assert.Equal(7, chart.NotDrawn);
    }

    [Fact]
    public void Of_OneGenerationUpAndDown_MarksWhatLiesBeyond()
    {
        var chart = PedigreeChart.Of(
            Pedigree.Of([new("gs"), new("gd"), new("s", "gs", "gd"), new("d"), new("x", "s", "d"), new("m"), new("y", "x", "m"), new("q"), new("z", "y", "q"), new("h", "s", "m")]),
            new Dictionary<string, ChartAnimal>(),
            new("x") { GenerationsUp = 1, GenerationsDown = 1 },
            Measures);

        var drawn = chart.Symbols.Where(s => s.Kind == ChartSymbolKind.Animal).ToDictionary(s => s.Animal!.Key);
        Assert.Equal(["d", "m", "s", "x", "y"], drawn.Keys.Order(StringComparer.Ordinal));
        Assert.True(drawn["s"].HasMoreParents);
        Assert.False(drawn["d"].HasMoreParents);
        Assert.True(drawn["x"].IsAskedAbout);
        Assert.Equal((0, 1), (drawn["s"].MoreYoung, drawn["y"].MoreYoung));

        // h is young of two that are drawn, and so is counted under them.
        Assert.Equal(1, Assert.Single(chart.Symbols, s => s.Kind == ChartSymbolKind.SeveralYoung).Young);
    }

    [Fact]
    public void Of_FounderWhoCameLate_StandsBesideTheMate()
    {
        var chart = Draw(new("A"), new("B"), new("c", "A", "B"), new("late"), new("d", "late", "c"));

        Assert.Equal(1, chart.Symbols.Single(s => s.Animal!.Key == "late").Row);
        Assert.Empty(chart.Arcs);
    }

    [Fact]
    public void Of_AncestorsWithoutLoops_HasNoCrossing()
    {
        // Five generations, every ancestor once: such a pedigree can always be drawn flat.
        var animals = new List<PedigreeAnimal>();
        for (var i = 1; i < 32; i++)
        {
            animals.Add(i < 16 ? new($"n{i:00}", $"n{2 * i:00}", $"n{(2 * i) + 1:00}") : new($"n{i:00}"));
        }

        var chart = PedigreeChart.Of(Pedigree.Of(animals), new Dictionary<string, ChartAnimal>(), new("n01") { GenerationsUp = 4 }, Measures);

        Assert.Equal(31, chart.Symbols.Count);
        Assert.Equal(16 + 8 + 4 + 2 + 1, chart.Symbols.Count);
        foreach (var row in chart.Sibships.GroupBy(s => chart.Symbols[s.Young[0].Symbol].Row))
        {
            // One height is enough where nothing crosses.
            Assert.Single(row.Select(s => s.LineY).Distinct());
        }
    }

    [Fact]
    public void FilledShare_ShownCarriedAndPossible_AreWholeHalfAndLess()
    {
        Assert.Equal(1, new ChartMark("Clown", true, Probability.Certain).FilledShare);
        Assert.Equal(0.5, new ChartMark("Clown", false, Probability.Certain).FilledShare);
        Assert.Equal(1.0 / 3, new ChartMark("Clown", false, Probability.Ratio(2, 3)).FilledShare, 12);
        Assert.Equal(0, new ChartMark("Clown", false, Probability.Impossible).FilledShare);
    }

    [Fact]
    public void Of_NobodyOfThatKey_Throws() => Assert.Throws<ArgumentException>(() =>
        PedigreeChart.Of(Pedigree.Of([new("A")]), new Dictionary<string, ChartAnimal>(), new("B")));

    [Theory]
    [InlineData(-1, 1, 1, 1)]
    [InlineData(1, -1, 1, 1)]
    [InlineData(1, 1, 0, 1)]
    [InlineData(1, 1, 1, -1)]
    public void Of_ScopeBelowItsLeast_Throws(int up, int down, int most, int young) => Assert.Throws<ArgumentOutOfRangeException>(() =>
        PedigreeChart.Of(
            Pedigree.Of([new("A")]),
            new Dictionary<string, ChartAnimal>(),
            new("A") { GenerationsUp = up, GenerationsDown = down, Most = most, MostYoung = young }));

    [Fact]
    public void Of_EmptyPedigree_IsEmpty() =>
        Assert.Empty(PedigreeChart.Of(Pedigree.Of([]), new Dictionary<string, ChartAnimal>(), new(null)).Symbols);

    private static PedigreeChart Draw(params PedigreeAnimal[] animals) =>
        PedigreeChart.Of(Pedigree.Of(animals), new Dictionary<string, ChartAnimal>(), new(animals[0].Key) { IsWhole = true }, Measures);
}
