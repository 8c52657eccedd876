using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Numbers;
using CsCheck;

namespace Clutchwright.Planning.Tests.Pairs;

/// <summary>The table over many pairs against a cross of each pair: what pairs have in common must change no figure.</summary>
public class PairTableTests
{
    [Fact]
    public void ChanceOf_AnyStock_EqualsTheCrossOfEachPair() => StockScenario.Any.Sample(
        s =>
        {
            var table = new PairTable(s.Sires, s.Dams, s.Want.Want);
            ForEachPair(s, (sire, dam, cross) => Same(cross.SharedChanceOf(s.Want.Want), table.ChanceOf(sire, dam)));
        },
        iter: 800);

    [Fact]
    public void DangersOf_AnyStock_AreThoseWithAChanceInTheCross() => StockScenario.Any.Sample(
        s =>
        {
            var table = new PairTable(s.Sires, s.Dams, s.Want.Want);
            ForEachPair(s, (sire, dam, cross) => Assert.Equal(
                s.Species.Dangers.Where(d => !cross.ChanceOf(d).IsImpossible), table.DangersOf(sire, dam)));
        },
        iter: 800);

    [Fact]
    public void ChanceOf_AskedInAnotherOrder_IsTheSame() => StockScenario.Any.Sample(
        s =>
        {
            var (forward, backward) = (new PairTable(s.Sires, s.Dams, s.Want.Want), new PairTable(s.Sires, s.Dams, s.Want.Want));
            var pairs = Enumerable.Range(0, s.Sires.Count).SelectMany(_ => Enumerable.Range(0, s.Dams.Count), (x, y) => (x, y)).ToArray();

            var first = pairs.Select(p => forward.ChanceOf(p.x, p.y).PerEgg).ToArray();
            var last = pairs.Reverse().Select(p => backward.ChanceOf(p.x, p.y).PerEgg).Reverse().ToArray();

            Assert.Equal(first, last);
        },
        iter: 200);

    private static void ForEachPair(StockScenario s, Action<int, int, Cross> check)
    {
        for (var sire = 0; sire < s.Sires.Count; sire++)
        {
            for (var dam = 0; dam < s.Dams.Count; dam++)
            {
                check(sire, dam, Cross.Of(Mating.Of(s.Sires[sire], s.Dams[dam])));
            }
        }
    }

    private static void Same(SharedChance expected, SharedChance actual)
    {
        Same(expected.PerEgg, actual.PerEgg);
        Same(expected.Ceiling, actual.Ceiling);
        Same(expected.AtLeastOne(1), actual.AtLeastOne(1));
        Same(expected.AtLeastOne(7), actual.AtLeastOne(7));
        Same(expected.AtLeast(2, GoodEggs.Exactly(5)), actual.AtLeast(2, GoodEggs.Exactly(5)));
        if (IsExact(expected) && IsExact(actual))
        {
            Assert.Equal(expected.Cases, actual.Cases);
        }
    }

    private static bool IsExact(SharedChance chance) => chance.Cases.All(c => c.Value.Exact is not null && c.Weight.Exact is not null);

    private static void Same(Probability expected, Probability actual)
    {
        if (expected.Exact is { } exact && actual.Exact is { } other)
        {
            Assert.Equal(exact, other);
        }

        Assert.Equal(expected.Value, actual.Value, 1e-11);
    }
}
