using Clutchwright.Pedigrees.Charts;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Charts;

/// <summary>What must hold of every chart, whoever descends from whom.</summary>
public sealed class PedigreeChartTests
{
    [Fact]
    public void Of_AnyPedigree_SymbolsAndLabelsStandApart() => ChartCase.Any.Sample(sample =>
    {
        var chart = sample.Chart();

        foreach (var row in chart.Symbols.GroupBy(s => s.Row))
        {
            Assert.Single(row.Select(s => s.Y).Distinct());
            foreach (var (left, right) in row.Zip(row.Skip(1)))
            {
                Assert.True(right.X - left.X >= (Room(sample, left) + Room(sample, right)) / 2, $"{left} {right}");
            }
        }

        var rows = chart.Symbols.GroupBy(s => s.Row).OrderBy(r => r.Key)
            .Select(r => (r.First().Y, Bottom: r.Max(s => s.Y + (sample.Symbol / 2) + (s.Animal?.LabelHeight ?? 0)))).ToList();
        Assert.All(rows.Zip(rows.Skip(1)), pair => Assert.True(pair.Second.Y - (sample.Symbol / 2) > pair.First.Bottom));
        Assert.All(chart.Symbols, s => Assert.InRange(s.X, Room(sample, s) / 2, chart.Width - (Room(sample, s) / 2)));
        Assert.All(rows, r => Assert.True(r.Bottom < chart.Height));
    });

    [Fact]
    public void Of_AnyPedigree_DrawsEveryRelationExactlyOnce() => ChartCase.Any.Sample(sample =>
    {
        var chart = sample.Chart();

        var drawn = chart.Symbols.Where(s => s.Kind == ChartSymbolKind.Animal).Select(s => s.Animal!.Key).ToList();
        Assert.Distinct(drawn);
        var lines = new List<(string Parents, string Young)>();
        foreach (var sibship in chart.Sibships)
        {
            var parents = sibship.Descents
                .SelectMany(d => new[] { chart.Matings[d.Mating].Sire, chart.Matings[d.Mating].Dam })
                .Select(s => chart.Symbols[s].Animal?.Key).OfType<string>().Distinct().Order(StringComparer.Ordinal);
            var named = string.Join('+', parents);
            lines.AddRange(sibship.Young.Select(y => chart.Symbols[y.Symbol]).Where(y => y.Kind == ChartSymbolKind.Animal).Select(y => (named, y.Animal!.Key)));
        }

        Assert.Distinct(lines.Select(l => l.Young));
        var expected = sample.Animals
            .Where(a => drawn.Contains(a.Key) && a.NamedParents().Any(drawn.Contains))
            .Select(a => (string.Join('+', a.NamedParents().Distinct().Order(StringComparer.Ordinal)), a.Key));
        Assert.Equal(expected.Order(), lines.Order());
    });

    [Fact]
    public void Of_AnyPedigree_YoungStandOneRowBelowTheirPair() => ChartCase.Any.Sample(sample =>
    {
        var chart = sample.Chart();

        foreach (var sibship in chart.Sibships)
        {
            foreach (var mating in sibship.Descents.Select(d => chart.Matings[d.Mating]))
            {
                Assert.Equal(chart.Symbols[mating.Sire].Row, chart.Symbols[mating.Dam].Row);
                Assert.All(sibship.Young, y => Assert.Equal(chart.Symbols[mating.Sire].Row + 1, chart.Symbols[y.Symbol].Row));
            }
        }

        // A second symbol stands in the row of a mate, never above the animal's own.
        Assert.All(chart.Arcs, a =>
        {
            Assert.Same(chart.Symbols[a.Animal].Animal, chart.Symbols[a.Again].Animal);
            Assert.True(chart.Symbols[a.Again].Row >= chart.Symbols[a.Animal].Row);
        });
        Assert.Equal(chart.Symbols.Count(s => s.Kind == ChartSymbolKind.Again), chart.Arcs.Count);
    });

    [Fact]
    public void Of_AnyPedigree_LinesKeepOutOfSymbolsLabelsAndEachOther() => ChartCase.Any.Sample(sample =>
    {
        var chart = sample.Chart();

        foreach (var sibship in chart.Sibships)
        {
            foreach (var descent in sibship.Descents)
            {
                var row = chart.Symbols[chart.Matings[descent.Mating].Sire].Row;
                Assert.All(chart.Symbols.Where(s => s.Row == row), s => Assert.True(Math.Abs(s.X - descent.From.X) > Room(sample, s) / 2));
                Assert.True(descent.From.Y < sibship.LineY);
            }

            Assert.All(sibship.Young, y => Assert.Equal((chart.Symbols[y.Symbol].X, chart.Symbols[y.Symbol].Y - (sample.Symbol / 2)), (y.To.X, y.To.Y)));
            Assert.All(sibship.Young, y => Assert.True(y.To.Y > sibship.LineY));
        }

        foreach (var height in chart.Sibships.GroupBy(s => s.LineY))
        {
            var ordered = height.OrderBy(s => s.LineFrom).ToList();
            Assert.All(ordered.Zip(ordered.Skip(1)), pair => Assert.True(pair.First.LineTo < pair.Second.LineFrom));
        }
    });

    [Fact]
    public void Of_SamePedigreeInAnyOrder_IsTheSameChart() => Gen.Select(ChartCase.Any, Gen.Int).Sample((sample, seed) =>
        Assert.Equal(ChartCase.Describe(sample.Chart()), ChartCase.Describe(sample.Shuffled(seed).Chart())));

    [Fact]
    public void Of_PairOfWhichOneComesFromOutside_HasTheMaleOnTheLeft() => ChartCase.Certain.Sample(sample =>
    {
        var chart = sample.Chart();

        var mates = chart.Matings.SelectMany(m => new[] { m.Sire, m.Dam }).CountBy(s => s).ToDictionary();
        var hanging = chart.Sibships.SelectMany(s => s.Young).Select(y => y.Symbol).ToHashSet();
        foreach (var mating in chart.Matings.Where(m => mates[m.Sire] == 1 && mates[m.Dam] == 1 && !(hanging.Contains(m.Sire) && hanging.Contains(m.Dam))))
        {
            Assert.True(chart.Symbols[mating.Sire].X < chart.Symbols[mating.Dam].X);
        }
    });

    [Fact]
    public void Of_AnyPedigree_DoubleLineWhereKinshipIsAboveZero() => ChartCase.Certain.Sample(sample =>
    {
        var chart = sample.Chart();

        var parents = sample.Animals.ToDictionary(a => a.Key);
        foreach (var mating in chart.Matings.Where(m => chart.Symbols[m.Sire].Animal is not null && chart.Symbols[m.Dam].Animal is not null))
        {
            var kinship = Kinship(parents, chart.Symbols[mating.Sire].Animal!.Key, chart.Symbols[mating.Dam].Animal!.Key, []);
            Assert.Equal(kinship > 0, mating.IsBetweenKin);
        }
    }, iter: 300);

    [Theory]
    [InlineData(100)]
    [InlineData(500)]
    public void Of_LineBredStock_DrawsEveryAnimal(int animals)
    {
        var chart = ChartCase.LineBred(animals, seed: 1).Chart();

        // A founder that was never paired is no kin of anyone.
        Assert.InRange(chart.Symbols.Count(s => s.Kind == ChartSymbolKind.Animal), animals * 9 / 10, animals);
    }

    [Fact]
    public void Of_TwoThousandAnimals_ClipsToTheNearestKin()
    {
        var sample = ChartCase.LineBred(2000, seed: 2);
        var scope = sample.Scope with { Most = 150, MostYoung = 12 };

        var chart = PedigreeChart.Of(Pedigree.Of(sample.Animals), sample.Known, scope);

        Assert.InRange(chart.Symbols.Count(s => s.Kind == ChartSymbolKind.Animal), 150, 400);
        Assert.True(chart.NotDrawn > 1000);
        Assert.Contains(chart.Symbols, s => s.HasMoreParents);
        Assert.Contains(chart.Symbols, s => s.MoreYoung > 0);
    }

    private static double Room(ChartCase sample, ChartSymbol symbol) =>
        symbol.Kind is ChartSymbolKind.Animal or ChartSymbolKind.Again ? sample.LabelWidth : sample.Symbol;

    /// <summary>The slow twin: the definition by recursion (Emik and Terrill 1949, docs/references.md), the younger of the two taken apart.</summary>
    private static double Kinship(Dictionary<string, PedigreeAnimal> animals, string a, string b, Dictionary<(string, string), double> known)
    {
        // Keys here are in order of birth.
        var (old, young) = string.CompareOrdinal(a, b) < 0 ? (a, b) : (b, a);
        if (known.TryGetValue((old, young), out var found))
        {
            return found;
        }

        var (sire, dam) = (animals[young].Sire, animals[young].Dam);
        var value = string.Equals(a, b, StringComparison.Ordinal)
            ? 0.5 * (1 + (sire is not null && dam is not null ? Kinship(animals, sire, dam, known) : 0))
            : 0.5 * ((sire is null ? 0 : Kinship(animals, old, sire, known)) + (dam is null ? 0 : Kinship(animals, old, dam, known)));
        known[(old, young)] = value;
        return value;
    }
}
