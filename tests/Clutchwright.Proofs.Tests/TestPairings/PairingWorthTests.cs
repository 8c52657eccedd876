using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Allelisms;
using Clutchwright.Proofs.Linkages;
using Clutchwright.Proofs.TestPairings;
using CsCheck;

namespace Clutchwright.Proofs.Tests.TestPairings;

public class PairingWorthTests
{
    private static readonly Probability Sure = Probability.From(0.95);

    private static readonly Gen<TestPairing> Pairings = Gen.Select(Gen.Int[0, 3], Gen.Int[0, 10], Gen.Int[0, 10]).Select((kind, a, b) => kind switch
    {
        0 => TestPairing.OfHet("mate", Probability.Ratio(Math.Min(a, 10 - b), 10), Probability.Ratio(b, 10)),
        1 => TestPairing.OfAllelism("cross", (AllelismPairing)((a % 4) + 1), Probability.Ratio(b, 10)),
        2 => TestPairing.OfLinkage("cross", a / 25.0, 1.0, LinkagePhase.Known),
        _ => TestPairing.OfLinkage("cross", a / 25.0, 0.5, LinkagePhase.Unknown),
    });

    /// <summary>One egg of a 50 % possible het with a visual: 1/4 a visual, else the posterior is 1/3. The drop is 1 - 3/4 H(1/3) = 0.3113 bits [computed].</summary>
    [Fact]
    public void EntropyDrop_OfOneEggWithAVisual_IsAsByHand()
    {
        var worth = PairingWorth.Of(TestPairing.OfHet("v", Probability.Certain, Probability.Impossible), Probability.Half, GoodEggs.Exactly(1), Sure);

        Assert.Equal(0.311278, worth.EntropyDrop, 5e-7);
        Assert.Equal(0.25, worth.ChanceOfYes, 1e-12);
        Assert.Equal(0.0, worth.ChanceOfNo, 1e-12);
    }

    /// <summary>Of a 50 % possible het five normals from a visual leave 1/33, four leave 1/17: settled at 95 % by the fifth [Bridge1997].</summary>
    [Fact]
    public void SettledBy_WithAVisual_EndsWithTheFifthEgg()
    {
        var worth = PairingWorth.Of(TestPairing.OfHet("v", Probability.Certain, Probability.Impossible), Probability.Half, GoodEggs.Exactly(5), Sure);

        Assert.Equal(0.25, worth.SettledBy[1], 1e-12);
        Assert.Equal(0.5 * 15.0 / 16.0, worth.SettledBy[4], 1e-12);
        Assert.Equal(1.0, worth.SettledBy[5], 1e-12);
        Assert.Equal(1.0, worth.ChanceOfAnswer, 1e-12);
        // Not het: 5 eggs. Het: 1 + 1/2 + 1/4 + 1/8 + 1/16.
        Assert.Equal((0.5 * 5.0) + (0.5 * 31.0 / 16.0), worth.MeanEggs!.Value, 1e-12);
    }

    [Fact]
    public void MeanEggs_OfAMateThatMayNotCarry_IsNotKnown() =>
        Assert.Null(PairingWorth.Of(TestPairing.OfHet("m", Probability.Impossible, Probability.Half), Probability.Half, GoodEggs.Exactly(6), Sure).MeanEggs);

    /// <summary>What one clutch tells, from its definition: every sequence of eggs.</summary>
    [Fact]
    public void Of_AnyPairing_EqualsWritingOutEverySequence() => Gen.Select(Pairings, Gen.Int[1, 19], Gen.Int[0, 6]).Sample((pairing, p, eggs) =>
    {
        var prior = p / 20.0;
        var worth = PairingWorth.Of(pairing, Probability.Ratio(p, 20), GoodEggs.Exactly(eggs), Sure);
        var (expected, yes, no, settled) = (0.0, 0.0, 0.0, 0.0);
        var classes = pairing.Classes.Count;
        for (var code = 0; code < Math.Pow(classes, eggs); code++)
        {
            var sequence = Enumerable.Range(0, eggs).Select(i => code / (int)Math.Pow(classes, i) % classes).ToArray();
            var (so, not) = (prior * Chance(pairing.IfSo, sequence), (1.0 - prior) * Chance(pairing.IfNot, sequence));
            if (so + not == 0.0)
            {
                continue;
            }

            var posterior = so / (so + not);
            expected += (so + not) * (posterior is 0.0 or 1.0 ? 0.0 : -((posterior * Math.Log2(posterior)) + ((1 - posterior) * Math.Log2(1 - posterior))));
            yes += posterior >= Sure.Value ? so + not : 0.0;
            no += 1.0 - posterior >= Sure.Value ? so + not : 0.0;
            settled += Enumerable.Range(0, eggs + 1).Any(n => IsSettled([.. sequence.Take(n)])) ? so + not : 0.0;
        }

        var before = -((prior * Math.Log2(prior)) + ((1 - prior) * Math.Log2(1 - prior)));
        Assert.Equal(before - expected, worth.EntropyDrop, 1e-9);
        Assert.Equal(yes, worth.ChanceOfYes, 1e-9);
        Assert.Equal(no, worth.ChanceOfNo, 1e-9);
        Assert.Equal(settled, worth.SettledBy[eggs], 1e-9);

        bool IsSettled(int[] sequence)
        {
            var (so, not) = (prior * Chance(pairing.IfSo, sequence), (1.0 - prior) * Chance(pairing.IfNot, sequence));
            return Math.Max(so, not) >= Sure.Value * (so + not);
        }
    }, iter: 200);

    [Fact]
    public void EntropyDrop_OnAnyPairing_IsNoLossAndGrowsWithTheClutch() => Gen.Select(Pairings, Gen.Int[1, 19], Gen.Int[0, 8]).Sample((pairing, p, eggs) =>
    {
        var prior = Probability.Ratio(p, 20);
        var smaller = PairingWorth.Of(pairing, prior, GoodEggs.Exactly(eggs), Sure);
        var larger = PairingWorth.Of(pairing, prior, GoodEggs.Exactly(eggs + 1), Sure);

        Assert.InRange(smaller.EntropyDrop, 0.0, 1.0);
        Assert.True(larger.EntropyDrop >= smaller.EntropyDrop - 1e-12);
        Assert.All(Enumerable.Range(1, PairingWorth.MostEggs), n => Assert.True(smaller.SettledBy[n] >= smaller.SettledBy[n - 1]));
    }, iter: 100);

    [Fact]
    public void Rank_OfAVisualAHetAndAPossibleHet_SetsTheVisualFirst()
    {
        var clutch = GoodEggs.Exactly(6);
        var ranked = PairingWorth.Rank(
        [
            (TestPairing.OfHet("possible", Probability.Impossible, Probability.Half), clutch),
            (TestPairing.OfHet("het", Probability.Impossible, Probability.Certain), clutch),
            (TestPairing.OfHet("visual", Probability.Certain, Probability.Impossible), clutch),
        ], Probability.Ratio(2, 3), Sure);

        Assert.Equal(["visual", "het", "possible"], ranked.Select(w => w.Pairing.Name));
    }

    private static double Chance(IReadOnlyList<PairingCase> cases, int[] sequence) =>
        cases.Sum(c => sequence.Aggregate(c.Weight, (product, egg) => product * c.Classes[egg]));
}
