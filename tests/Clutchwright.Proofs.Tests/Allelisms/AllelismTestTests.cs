using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Allelisms;
using CsCheck;

namespace Clutchwright.Proofs.Tests.Allelisms;

public class AllelismTestTests
{
    private static readonly Gen<Probability> Chances = Gen.Int[0, 20].Select(n => Probability.Ratio(n, 20));

    [Fact]
    public void Of_VisualByVisual_IsSettledByTheFirstEgg()
    {
        Assert.True(AllelismTest.Of(Probability.Half, [new(AllelismPairing.VisualByVisual, 1, 0)], Probability.Impossible).Posterior.IsCertain);
        Assert.True(AllelismTest.Of(Probability.Half, [new(AllelismPairing.VisualByVisual, 0, 1)], Probability.Impossible).Posterior.IsImpossible);
    }

    /// <summary>Each normal egg halves the odds with a visual and takes a quarter off them with a het: as a het proof does [Bridge1997].</summary>
    [Theory]
    [InlineData(AllelismPairing.VisualByHet, 3, "1/9")]
    [InlineData(AllelismPairing.HetByHet, 3, "27/91")]
    [InlineData(AllelismPairing.BothByNeither, 3, "8/9")]
    public void Posterior_AfterOthers_IsTheKnownRatio(AllelismPairing pairing, int others, string posterior) =>
        Assert.Equal(posterior, AllelismTest.Of(Probability.Half, [new(pairing, 0, others)], Probability.Impossible).Posterior.ToString());

    [Theory]
    [InlineData(AllelismPairing.VisualByVisual, 1)]
    [InlineData(AllelismPairing.VisualByHet, 5)]
    [InlineData(AllelismPairing.HetByHet, 11)]
    [InlineData(AllelismPairing.BothByNeither, 5)]
    public void EggsFor_NinetyFivePercent_IsTheHandbooksCount(AllelismPairing pairing, int eggs) =>
        Assert.Equal(eggs, AllelismTest.EggsFor(pairing, Probability.Ratio(95, 100)));

    [Fact]
    public void Of_AnyClutches_EqualsReadingEveryEgg() =>
        Gen.Select(Chances, Gen.Select(Gen.Enum<AllelismPairing>(), Gen.Int[0, 4], Gen.Int[0, 4], Chances).Array[1, 3], Gen.Int[0, 10]).Sample((prior, asked, error) =>
        {
            var misread = new Fraction(error, 20);
            var clutches = asked.Select(c => new AllelismClutch(c.Item1, c.Item2, c.Item3) { Carries = c.Item4 }).ToArray();

            var test = AllelismTest.Of(prior, clutches, Probability.From(misread));
            var (one, two) = (Slow(true), Slow(false));
            var all = (prior.Exact!.Value * one) + ((1 - prior.Exact!.Value) * two);

            Assert.Equal(all.IsZero, test.IsContradiction);
            if (!all.IsZero)
            {
                Assert.Equal(prior.Exact!.Value * one / all, test.Posterior.Exact);
            }

            Fraction Slow(bool isOneLocus) => clutches.Aggregate(Fraction.One, (product, c) =>
            {
                var carries = c.Carries.Exact!.Value;
                return product * ((carries * Run(c, Telling(c.Pairing, isOneLocus, true))) + ((1 - carries) * Run(c, Telling(c.Pairing, isOneLocus, false))));
            });

            Fraction Run(AllelismClutch c, Fraction telling)
            {
                var chance = Fraction.One;
                for (var egg = 0; egg < c.Telling + c.Others; egg++)
                {
                    var read = (telling * (1 - misread)) + ((1 - telling) * misread);
                    chance *= egg < c.Telling ? read : 1 - read;
                }

                return chance;
            }
        }, iter: 300);

    [Fact]
    public void BayesFactor_TimesTheOdds_IsThePosteriorOdds() => Gen.Select(Gen.Int[0, 6], Gen.Int[0, 6], Gen.Int[1, 9]).Sample((telling, others, error) =>
    {
        var misread = Probability.Ratio(error, 100);
        var test = AllelismTest.Of(Probability.Ratio(1, 5), [new(AllelismPairing.VisualByHet, telling, others)], misread);

        Assert.Equal(test.Posterior.Value / test.Posterior.Complement.Value, test.BayesFactor!.Value * 0.25, 1e-9 * test.BayesFactor.Value);
        Assert.Equal(
            Math.Pow(AllelismTest.PerEgg(AllelismPairing.VisualByHet, true, misread), telling)
            * Math.Pow(AllelismTest.PerEgg(AllelismPairing.VisualByHet, false, misread), others),
            test.BayesFactor.Value,
            1e-9 * test.BayesFactor.Value);
    });

    [Fact]
    public void Of_BothOrNeitherAndAVisualFromOneLocus_IsAContradiction() => Assert.True(AllelismTest.Of(
        Probability.Half,
        [new(AllelismPairing.VisualByVisual, 1, 0), new(AllelismPairing.VisualByVisual, 0, 1)],
        Probability.Impossible).IsContradiction);

    private static Fraction Telling(AllelismPairing pairing, bool isOneLocus, bool areAsSaid) => (pairing, isOneLocus, areAsSaid) switch
    {
        (AllelismPairing.BothByNeither, false, _) => Fraction.Half,
        (AllelismPairing.VisualByVisual, true, true) => 1,
        (AllelismPairing.VisualByHet, true, true) => Fraction.Half,
        (AllelismPairing.HetByHet, true, true) => new(1, 4),
        _ => 0,
    };
}
