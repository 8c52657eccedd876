using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Hets;
using CsCheck;

namespace Clutchwright.Proofs.Tests.Hets;

public class HetProofTests
{
    private static readonly Gen<Probability> Chances = Gen.Select(Gen.Int[0, 12], Gen.Int[0, 12]).Select((a, b) =>
        Probability.Ratio(Math.Min(a, b), Math.Max(1, Math.Max(a, b))));

    private static readonly Gen<TestMate> Mates = Gen.Select(Gen.Int[0, 2], Chances, Gen.Int[0, 6], Gen.Int[0, 1]).Select((kind, carries, normals, visuals) => kind switch
    {
        0 => TestMate.Visual(normals, visuals),
        1 => TestMate.Het(normals, visuals),
        _ => TestMate.PossibleHet(carries, normals, visuals),
    });

    /// <summary>Possible hets after normal young, as carrier risk is reckoned in [Bridge1997]; values computed.</summary>
    [Theory]
    [InlineData(0, "2/3", "1/2", "2/3", "1/2")]
    [InlineData(1, "1/2", "1/3", "3/5", "3/7")]
    [InlineData(2, "1/3", "1/5", "9/17", "9/25")]
    [InlineData(3, "1/5", "1/9", "27/59", "27/91")]
    [InlineData(4, "1/9", "1/17", "81/209", "81/337")]
    [InlineData(5, "1/17", "1/33", "243/755", "243/1267")]
    public void Posterior_AfterNormals_IsTheKnownRatio(int normals, string sixtySixVisual, string fiftyVisual, string sixtySixHet, string fiftyHet)
    {
        var (sixtySix, fifty) = (Probability.Ratio(2, 3), Probability.Half);

        Assert.Equal(sixtySixVisual, HetProof.Of(sixtySix, [TestMate.Visual(normals)]).Posterior.ToString());
        Assert.Equal(fiftyVisual, HetProof.Of(fifty, [TestMate.Visual(normals)]).Posterior.ToString());
        Assert.Equal(sixtySixHet, HetProof.Of(sixtySix, [TestMate.Het(normals)]).Posterior.ToString());
        Assert.Equal(fiftyHet, HetProof.Of(fifty, [TestMate.Het(normals)]).Posterior.ToString());
    }

    /// <summary>The same table, further down [computed].</summary>
    [Theory]
    [InlineData(6, 0.030303, 0.015385, 0.262514, 0.151088)]
    [InlineData(8, 0.007752, 0.003891, 0.166823, 0.091002)]
    [InlineData(10, 0.001949, 0.000976, 0.101226, 0.053311)]
    [InlineData(12, 0.000488, 0.000244, 0.059578, 0.030704)]
    [InlineData(16, 0.000031, 0.000015, 0.019651, 0.009923)]
    [InlineData(20, 0.000002, 0.000001, 0.006302, 0.003161)]
    public void Posterior_AfterManyNormals_IsTheKnownNumber(int normals, double sixtySixVisual, double fiftyVisual, double sixtySixHet, double fiftyHet)
    {
        Assert.Equal(sixtySixVisual, HetProof.Of(Probability.Ratio(2, 3), [TestMate.Visual(normals)]).Posterior.Value, 6e-7);
        Assert.Equal(fiftyVisual, HetProof.Of(Probability.Half, [TestMate.Visual(normals)]).Posterior.Value, 6e-7);
        Assert.Equal(sixtySixHet, HetProof.Of(Probability.Ratio(2, 3), [TestMate.Het(normals)]).Posterior.Value, 6e-7);
        Assert.Equal(fiftyHet, HetProof.Of(Probability.Half, [TestMate.Het(normals)]).Posterior.Value, 6e-7);
    }

    /// <summary>An X-linked carrier's daughter with n normal sons: 1/2, 1/3, 1/5, 1/9 …, formula seen after [Bridge1997]; and own daughters,
    /// each a carrier with 1/2: the chance of n normal young of one is (1 + (3/4)^n)/2, not (7/8)^n.</summary>
    [Fact]
    public void IfHet_OfAPossibleHetMate_IsAMixtureAndNoPowerOfTheMean()
    {
        var proof = HetProof.Of(Probability.Half, [TestMate.PossibleHet(Probability.Half, 4)]);

        Assert.Equal(Probability.Ratio(256 + 81, 512), proof.IfHet);
        Assert.NotEqual(Math.Pow(7.0 / 8.0, 4), proof.IfHet.Value, 1e-3);
    }

    /// <summary>Eggs that a true het would have shown itself in: handbook counts, strict ceilings [computed].</summary>
    [Theory]
    [InlineData(0.90, 4, 9)]
    [InlineData(0.95, 5, 11)]
    [InlineData(0.99, 7, 17)]
    [InlineData(0.999, 10, 25)]
    public void EggsFor_VisualAndHet_IsTheHandbooksCount(double confidence, int visual, int het)
    {
        Assert.Equal(visual, HetProof.EggsFor(TestMate.Visual(0), Probability.From(confidence)));
        Assert.Equal(het, HetProof.EggsFor(TestMate.Het(0), Probability.From(confidence)));
        Assert.Null(HetProof.EggsFor(TestMate.PossibleHet(Probability.Half, 0), Probability.From(confidence)));
    }

    [Fact]
    public void Posterior_OnAnyMates_EqualsSummingOverEveryState() => Gen.Select(Chances, Mates.Array[0, 3]).Sample((prior, mates) =>
    {
        var proof = HetProof.Of(prior, mates);
        var (het, not) = (Fraction.Zero, Fraction.Zero);
        for (var state = 0; state < 1 << (mates.Length + 1); state++)
        {
            var isHet = (state & 1) == 1;
            var chance = isHet ? prior.Exact!.Value : Fraction.One - prior.Exact!.Value;
            for (var m = 0; m < mates.Length; m++)
            {
                var carries = (state >> (m + 1) & 1) == 1;
                chance *= carries ? mates[m].Carries.Exact!.Value : Fraction.One - mates[m].Carries.Exact!.Value;
                for (var egg = 0; egg < mates[m].Normals + mates[m].Visuals; egg++)
                {
                    var visual = isHet && carries ? (mates[m].IsVisual ? Fraction.Half : new Fraction(1, 4)) : Fraction.Zero;
                    chance *= egg < mates[m].Normals ? Fraction.One - visual : visual;
                }
            }

            (het, not) = isHet ? (het + chance, not) : (het, not + chance);
        }

        Assert.Equal((het + not).IsZero, proof.IsContradiction);
        if (!proof.IsContradiction)
        {
            Assert.Equal(het / (het + not), proof.Posterior.Exact);
        }
    });

    [Fact]
    public void MateCarries_OnAnyMates_EqualsSummingOverEveryState() => Gen.Select(Chances, Chances, Gen.Int[0, 5], Gen.Int[0, 5], Gen.Int[0, 1]).Sample((prior, carries, a, b, visuals) =>
    {
        var proof = HetProof.Of(prior, [TestMate.PossibleHet(carries, a, visuals), TestMate.Het(b)]);
        var (p, q) = (prior.Exact!.Value, carries.Exact!.Value);
        var quarter = new Fraction(1, 4);
        var other = new Fraction(3, 4).Power(b);
        var hit = quarter.Power(visuals);
        var both = p * q * new Fraction(3, 4).Power(a) * hit * other;
        var onlyAnimal = visuals > 0 ? Fraction.Zero : p * (1 - q) * other;
        var onlyMate = visuals > 0 ? Fraction.Zero : (1 - p) * q;
        var neither = visuals > 0 ? Fraction.Zero : (1 - p) * (1 - q);
        var all = both + onlyAnimal + onlyMate + neither;

        Assert.Equal(all.IsZero, proof.IsContradiction);
        if (!proof.IsContradiction)
        {
            Assert.Equal((both + onlyMate) / all, proof.MateCarries(0).Exact);
        }
    });

    [Fact]
    public void Posterior_OneMateInTwoLists_MattersAndTheOrderDoesNot()
    {
        var q = Probability.Half;
        var shared = HetProof.Of(q, [TestMate.PossibleHet(q, 6)]).Posterior;
        var apart = HetProof.Of(q, [TestMate.PossibleHet(q, 3), TestMate.PossibleHet(q, 3)]).Posterior;

        Assert.True(apart < shared);
        Assert.Equal(
            HetProof.Of(q, [TestMate.Visual(2), TestMate.Het(5)]).Posterior,
            HetProof.Of(q, [TestMate.Het(5), TestMate.Visual(2)]).Posterior);
    }

    [Fact]
    public void NormalsUntil_OnAnyPrior_IsTheFirstToReachTheBound() => Gen.Select(Gen.Int[1, 19], Gen.Int[1, 19], Gen.Bool).Sample((prior, bound, visual) =>
    {
        var proof = HetProof.Of(Probability.Ratio(prior, 20), [visual ? TestMate.Visual(1) : TestMate.Het(1)]);
        var limit = Probability.Ratio(bound, 20);

        var eggs = proof.NormalsUntil(0, limit)!.Value;
        var after = proof.AfterNormals(0, eggs);

        Assert.True(after[eggs] <= limit);
        Assert.All(after.Take(eggs), p => Assert.True(p > limit));
    });

    [Fact]
    public void NormalsUntil_AMateThatMayNotCarry_MayNeverBeReached()
    {
        // However many normals, the mate may be no carrier: the posterior only falls to 1/2 · 1/2 / (1/2 · 1/2 + 1/2) = 1/3.
        var proof = HetProof.Of(Probability.Half, [TestMate.PossibleHet(Probability.Half, 0)]);

        Assert.Null(proof.NormalsUntil(0, Probability.Ratio(1, 3)));
        Assert.NotNull(proof.NormalsUntil(0, Probability.Ratio(35, 100)));
    }

    [Fact]
    public void Of_AVisual_ProvesTheAnimalAndTheMate()
    {
        var proof = HetProof.Of(Probability.Ratio(1, 10), [TestMate.PossibleHet(Probability.Half, 5, 1)]);

        Assert.True(proof.Posterior.IsCertain);
        Assert.True(proof.MateCarries(0).IsCertain);
        Assert.Null(proof.NormalsUntil(0, Probability.Half));
    }

    [Fact]
    public void Of_AVisualFromAnAnimalRuledOut_IsAContradiction() =>
        Assert.True(HetProof.Of(Probability.Impossible, [TestMate.Visual(3, 1)]).IsContradiction);
}
