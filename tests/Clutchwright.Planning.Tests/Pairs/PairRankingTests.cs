using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Pairs;
using CsCheck;

namespace Clutchwright.Planning.Tests.Pairs;

public class PairRankingTests
{
    // A recessive, and an allele of which two copies die in the egg and one copy hurts.
    private static readonly Species Snake = Species.From(new(
        "made-up",
        SexSystem.XY,
        [
            new("r", "R", new Placement.Autosomal(), [new("r", "Rec", InheritanceMode.Recessive)]),
            new("k", "K", new Placement.Autosomal(), [new("k", "Kill", InheritanceMode.IncompleteDominant)]),
            new("w", "W", new Placement.Autosomal(), [new("w", "Weak", InheritanceMode.IncompleteDominant)]),
        ])
    {
        Dangers =
        [
            new("kill-pair", [new GenotypeCondition.IsPair("k", "k")], Severity.Lethal, "Dies.", Evidence.CommonPractice)
            {
                Viability = new(Probability.Impossible, Probability.Certain, Probability.Certain),
            },
            new("weak-any", [new GenotypeCondition.Carries("w")], Severity.Watch, "Look out.", Evidence.CommonPractice),
            new("weak-pair", [new GenotypeCondition.IsPair("w", "w")], Severity.Suffering, "Suffers.", Evidence.CommonPractice),
        ],
    });

    private static readonly Want Visual = new([new WantedGenotype(null, [WantedPairs.Of(Snake.FindLocus("r")!, [(1, 1)])])]);

    [Fact]
    public void Of_AnyStock_HoldsEveryPairThatCanAndTellsWhyOthersAreLeftOut() => StockScenario.Any.Sample(
        s =>
        {
            var clutch = GoodEggs.Exactly(4);

            var ranking = PairRanking.Of(s.Sires, s.Dams, s.Want.Want, clutch, cancel: TestContext.Current.CancellationToken);

            var found = ranking.Pairs.Select(p => (Pair: p, IsOut: false)).Concat(ranking.LeftOut.Select(p => (Pair: p, IsOut: true)))
                .ToDictionary(p => (p.Pair.Sire, p.Pair.Dam));
            for (var sire = 0; sire < s.Sires.Count; sire++)
            {
                for (var dam = 0; dam < s.Dams.Count; dam++)
                {
                    var cross = Cross.Of(Mating.Of(s.Sires[sire], s.Dams[dam]));
                    var chance = cross.SharedChanceOf(s.Want.Want);
                    Assert.Equal(!chance.PerEgg.IsImpossible, found.Remove((sire, dam), out var ranked));
                    if (!chance.PerEgg.IsImpossible)
                    {
                        var dangers = s.Species.Dangers.Where(d => !cross.ChanceOf(d).IsImpossible).ToArray();
                        Assert.Equal(dangers.Any(d => d.Severity is Severity.Suffering or Severity.Lethal), ranked.IsOut);
                        Assert.Equal(dangers.ToHashSet(), ranked.Pair.Dangers.ToHashSet());
                        Assert.Equal(ranked.Pair.Dangers.OrderByDescending(d => d.Severity), ranked.Pair.Dangers);
                        Assert.Equal(chance.AtLeastOne(4).Value, ranked.Pair.AtLeastOne.Value, 1e-11);
                    }
                }
            }

            Assert.Empty(found);
            AssertInOrder(ranking.Pairs);
            AssertInOrder(ranking.LeftOut);
        },
        iter: 400);

    [Fact]
    public void Of_HetAndVisualMales_PutsTheVisualFirst()
    {
        // Mendel 1866: het x visual 1/2, het x het 1/4, visual x visual all.
        GenotypeBelief[] sires = [Animal(Sex.Male, (0, 1)), Animal(Sex.Male, (1, 1)), Animal(Sex.Male, (0, 0))];
        GenotypeBelief[] dams = [Animal(Sex.Female, (0, 1)), Animal(Sex.Female, (1, 1))];

        var ranking = PairRanking.Of(sires, dams, Visual, GoodEggs.Exactly(1), cancel: TestContext.Current.CancellationToken);

        Assert.Equal(
            [(1, 1, "1"), (0, 1, "1/2"), (1, 0, "1/2"), (0, 0, "1/4")],
            ranking.Pairs.Select(p => (p.Sire, p.Dam, p.PerEgg.PerEgg.ToString())));
        Assert.Empty(ranking.LeftOut);
    }

    [Fact]
    public void Of_PairThatGivesALethalGenotype_IsLeftOutWithTheReason()
    {
        GenotypeBelief[] sires = [Animal(Sex.Male, (1, 1), kill: true), Animal(Sex.Male, (1, 1))];
        GenotypeBelief[] dams = [Animal(Sex.Female, (1, 1), kill: true)];

        var ranking = PairRanking.Of(sires, dams, Visual, GoodEggs.Exactly(2), cancel: TestContext.Current.CancellationToken);

        Assert.Equal([(1, 0)], ranking.Pairs.Select(p => (p.Sire, p.Dam)));
        var left = Assert.Single(ranking.LeftOut);
        Assert.Equal((0, 0), (left.Sire, left.Dam));
        Assert.Equal(["kill-pair"], left.Dangers.Select(d => d.Id));
        Assert.Equal("3/4", left.PerEgg.PerEgg.ToString()); // a quarter of the eggs dies
    }

    [Fact]
    public void Of_DangerThatIsOnlyToWatch_KeepsThePairAndTellsIt()
    {
        var ranking = PairRanking.Of(
            [Animal(Sex.Male, (1, 1), weak: true)], [Animal(Sex.Female, (1, 1))], Visual, GoodEggs.Exactly(2), cancel: TestContext.Current.CancellationToken);

        Assert.Equal(["weak-any"], Assert.Single(ranking.Pairs).Dangers.Select(d => d.Id));
        Assert.Empty(ranking.LeftOut);
    }

    [Fact]
    public void Of_DangerThatOnlyADoubtfulParentCouldGive_IsLeftOutToo()
    {
        var doubtful = Animal(Sex.Male, (1, 1)).With(
            Snake.FindLocus("w")!.Group, [new(new(0, 1), Probability.Ratio(1, 100)), new(default, Probability.Ratio(99, 100))]);

        var ranking = PairRanking.Of(
            [doubtful], [Animal(Sex.Female, (1, 1), weak: true)], Visual, GoodEggs.Exactly(2), cancel: TestContext.Current.CancellationToken);

        Assert.Equal(["weak-pair", "weak-any"], Assert.Single(ranking.LeftOut).Dangers.Select(d => d.Id));
    }

    [Fact]
    public void Of_PossibleHet_IsAMixtureOverWhatItMayBe()
    {
        // 1 - (1/3 + 2/3 (1/2)^5) = 0.645833 [computed from the stated model: eggs share their parents].
        var doubtful = Animal(Sex.Male, (0, 0)).With(
            Snake.FindLocus("r")!.Group, [new(new(0, 1), Probability.Ratio(2, 3)), new(default, Probability.Ratio(1, 3))]);

        var ranking = PairRanking.Of(
            [doubtful], [Animal(Sex.Female, (1, 1))], Visual, GoodEggs.Exactly(5), cancel: TestContext.Current.CancellationToken);

        var pair = Assert.Single(ranking.Pairs);
        Assert.Equal("31/48", pair.AtLeastOne.ToString());
        Assert.Equal("2/3", pair.PerEgg.Ceiling.ToString());
    }

    [Fact]
    public void Of_NoMalesOrNoFemales_IsEmpty()
    {
        var none = PairRanking.Of([], [Animal(Sex.Female, (1, 1))], Visual, GoodEggs.Exactly(5), cancel: TestContext.Current.CancellationToken);
        var alone = PairRanking.Of([Animal(Sex.Male, (1, 1))], [], Visual, GoodEggs.Exactly(5), cancel: TestContext.Current.CancellationToken);

        Assert.Empty(none.Pairs.Concat(none.LeftOut).Concat(alone.Pairs).Concat(alone.LeftOut));
    }

    [Fact]
    public void Of_Cancelled_Throws()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();

        Assert.Throws<OperationCanceledException>(() => PairRanking.Of(
            [Animal(Sex.Male, (1, 1))], [Animal(Sex.Female, (1, 1))], Visual, GoodEggs.Exactly(5), cancel: cancel.Token));
    }

    private static GenotypeBelief Animal(Sex sex, (int, int) pair, bool kill = false, bool weak = false) => GenotypeBelief.Certain(
        Genotype.Wild(Snake, sex)
            .With(Snake.FindLocus("r")!, pair.Item1, pair.Item2)
            .With(Snake.FindLocus("k")!, 0, kill ? 1 : 0)
            .With(Snake.FindLocus("w")!, 0, weak ? 1 : 0));

    private static void AssertInOrder(IReadOnlyList<RankedPair> pairs)
    {
        foreach (var (first, second) in pairs.Zip(pairs.Skip(1)))
        {
            var (a, b) = (Key(first), Key(second));
            Assert.True(a.CompareTo(b) < 0, $"{first.Sire}x{first.Dam} before {second.Sire}x{second.Dam}");
        }

        static (double, double, int, int) Key(RankedPair p) => (-p.AtLeastOne.Value, -p.PerEgg.PerEgg.Value, p.Sire, p.Dam);
    }
}
