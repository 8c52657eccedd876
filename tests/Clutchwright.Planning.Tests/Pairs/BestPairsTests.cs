using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Pairs;
using Clutchwright.Testing;

namespace Clutchwright.Planning.Tests.Pairs;

/// <summary>The best pairs by bounds, against the ranking that reckons every pair.</summary>
public class BestPairsTests(ITestOutputHelper output)
{
    private const int Pedigrees = 150;
    private static readonly GoodEggs Clutch = GoodEggs.Of([0.0, 0.1, 0.2, 0.3, 0.4], Probability.From(0.75), ClutchRate.Fixed(0.9), ClutchRate.Fixed(0.9));
    private static readonly Species Snake = Describe.Species(SexSystem.XY, Describe.Free("r", Describe.Recessive("r")));
    private static readonly Want Visual = Describe.Want(Snake, "r/r");

    [Fact]
    public void Of_SmallPedigrees_IsTheRankingOfEveryPairReckonedTogether()
    {
        var (shared, reckoned) = (0, 0);
        for (var seed = 1; seed <= Pedigrees; seed++)
        {
            var stock = KinStock.Of(seed);
            var all = PairRanking.Of(stock.Sires, stock.Dams, stock.Want, Clutch, (s, d) => stock.Ties.AreTied(s, d) ? stock.Ties.Together(s, d) : null, TestContext.Current.CancellationToken);
            foreach (var most in new[] { 1, 4, 1_000 })
            {
                var best = BestPairs.Of(stock.Sires, stock.Dams, stock.Want, Clutch, most, stock.Ties, TestContext.Current.CancellationToken);

                Same(all.Pairs.Take(most), best.Pairs, seed);
                Same(all.LeftOut.Take(most), best.LeftOut, seed);
                Assert.Equal(0, best.Apart);
                Assert.True(best.PairsThatCan >= all.Pairs.Count, $"Seed {seed}.");
                if (most == 1_000)
                {
                    Assert.Equal((all.Pairs.Count, all.LeftOut.Count), (best.PairsThatCan, best.LeftOutCount));
                    shared += best.Reckoned;
                }
                else if (most == 1)
                {
                    reckoned += best.Reckoned;
                }
            }
        }

        output.WriteLine($"{Pedigrees} pedigrees: {shared} pairs share a doubt; for the best pair alone {reckoned} of them were reckoned.");
        Assert.True(shared > 400 && reckoned < shared / 3, $"{reckoned} of {shared}");
    }

    [Fact]
    public void Of_AnyStockWithoutTies_IsTheRankingOfEveryPair()
    {
        StockScenario.Any.SampleCounted(
            400,
            s =>
            {
                var all = PairRanking.Of(s.Sires, s.Dams, s.Want.Want, Clutch);
                foreach (var most in new[] { 1, 3, 1_000 })
                {
                    var best = BestPairs.Of(s.Sires, s.Dams, s.Want.Want, Clutch, most);

                    Same(all.Pairs.Take(most), best.Pairs, most);
                    Same(all.LeftOut.Take(most), best.LeftOut, most);
                    Assert.Equal((all.Pairs.Count, all.LeftOut.Count, 0), (best.PairsThatCan, best.LeftOutCount, best.Reckoned));
                }
            });
    }

    [Fact]
    public void Of_AnyStock_NoChancePassesItsBound() => StockScenario.Any.SampleCounted(
        400,
        s =>
        {
            var table = new PairTable(s.Sires, s.Dams, s.Want.Want);
            for (var sire = 0; sire < s.Sires.Count; sire++)
            {
                for (var dam = 0; dam < s.Dams.Count; dam++)
                {
                    var chance = Cross.Of(Mating.Of(s.Sires[sire], s.Dams[dam])).SharedChanceOf(s.Want.Want);
                    var (apart, tied) = (table.BoundOf(sire, dam, areTied: false), table.BoundOf(sire, dam, areTied: true));
                    Assert.True(apart.PerEgg >= chance.PerEgg.Value - 1e-12 && apart.Ceiling >= chance.Ceiling.Value - 1e-12);
                    Assert.True(tied.PerEgg >= apart.PerEgg - 1e-12 && tied.Ceiling >= apart.Ceiling - 1e-12);
                }
            }
        });

    // Taken apart the first pair has 1/2 x 1/2 and the second 2/3 x 1/2; but the first two carry together or not at all.
    [Fact]
    public void Of_TwoThatCarryTogetherOrNotAtAll_PutsThemBeforeALikelierPairTakenApart()
    {
        GenotypeBelief[] sires = [Perhaps(Sex.Male, Probability.Half)];
        GenotypeBelief[] dams = [Perhaps(Sex.Female, Probability.Half), Perhaps(Sex.Female, Probability.Ratio(2, 3))];
        var group = Snake.FindLocus("r")!.Group;
        var both = new Dictionary<LinkageGroup, IReadOnlyList<Weighted<(Diplotype Sire, Diplotype Dam)>>>
        {
            [group] = [new((new(0, 1), new(0, 1)), Probability.Half), new((default, default), Probability.Half)],
        };

        var best = BestPairs.Of(
            sires, dams, Visual, GoodEggs.Exactly(4), 1, new((_, d) => d == 0, (_, _) => Mating.Of(sires[0], dams[0], both)), TestContext.Current.CancellationToken);
        var without = BestPairs.Of(sires, dams, Visual, GoodEggs.Exactly(4), 1, new((_, d) => d == 0, (_, _) => null), TestContext.Current.CancellationToken);

        var first = Assert.Single(best.Pairs);
        Assert.Equal((0, 0, "1/2", 1, 0), (first.Sire, first.Dam, first.PerEgg.Ceiling.ToString(), best.Reckoned, best.Apart));
        Assert.Equal((1, "1/3", 0, 1), (without.Pairs[0].Dam, without.Pairs[0].PerEgg.Ceiling.ToString(), without.Reckoned, without.Apart));
    }

    // One of the two carries, and nobody knows which: together they can give nothing.
    [Fact]
    public void Of_TwoOfWhichOneAloneCarries_HaveNoChance()
    {
        GenotypeBelief[] sires = [Perhaps(Sex.Male, Probability.Half)];
        GenotypeBelief[] dams = [Perhaps(Sex.Female, Probability.Half)];
        var either = new Dictionary<LinkageGroup, IReadOnlyList<Weighted<(Diplotype Sire, Diplotype Dam)>>>
        {
            [Snake.FindLocus("r")!.Group] = [new((new(0, 1), default), Probability.Half), new((default, new(0, 1)), Probability.Half)],
        };

        var best = BestPairs.Of(
            sires, dams, Visual, Clutch, 5, new((_, _) => true, (_, _) => Mating.Of(sires[0], dams[0], either)), TestContext.Current.CancellationToken);

        Assert.Empty(best.Pairs);
        Assert.Equal((0, 1), (best.PairsThatCan, best.Reckoned));
    }

    [Fact]
    public void Of_Cancelled_Throws()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();

        Assert.Throws<OperationCanceledException>(() => BestPairs.Of(
            [Perhaps(Sex.Male, Probability.Half)], [Perhaps(Sex.Female, Probability.Half)], Visual, Clutch, 1, cancel: cancel.Token));
        Assert.Throws<ArgumentOutOfRangeException>(() => BestPairs.Of([], [], Visual, Clutch, 0, cancel: TestContext.Current.CancellationToken));
    }

    private static GenotypeBelief Perhaps(Sex sex, Probability chance) =>
        GenotypeBelief.Wild(Snake, sex).With(Snake.FindLocus("r")!.Group, [new(new(0, 1), chance), new(default, chance.Complement)]);

    private static void Same(IEnumerable<RankedPair> expected, IReadOnlyList<RankedPair> actual, int seed) => Assert.Equal(
        expected.Select(p => (seed, p.Sire, p.Dam, p.AtLeastOne, p.PerEgg.PerEgg, Dangers: string.Join(' ', p.Dangers.Select(d => d.Id)))),
        actual.Select(p => (seed, p.Sire, p.Dam, p.AtLeastOne, p.PerEgg.PerEgg, string.Join(' ', p.Dangers.Select(d => d.Id)))));
}
