using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Numbers;
using CsCheck;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using Binomial = MathNet.Numerics.Distributions.Binomial;

namespace Clutchwright.Genetics.Tests.Clutches;

public class GoodEggsTests
{
    private static readonly Gen<double[]> EggNumbers = Gen.Double[0.01, 1.0].Array[1, 6].Select(w => Array.ConvertAll(w, x => x / w.Sum()));

    private static readonly Gen<double> Shares = Gen.OneOf(Gen.Double[0.0, 1.0], Gen.Int[0, 2].Select(i => i / 2.0));

    /// <summary>Every number of eggs, and for every egg whether it is fertile, whether it hatches, and whether it is what is wanted.</summary>
    [Fact]
    public void Of_FixedRates_EqualsWritingOutEveryClutch() => Gen.Select(EggNumbers, Shares, Shares, Shares, Shares).Sample((eggs, laying, fertile, hatches, wanted) =>
    {
        var (good, hits) = (new double[eggs.Length], new double[eggs.Length]);
        good[0] = hits[0] = 1.0 - laying;
        for (var laid = 0; laid < eggs.Length; laid++)
        {
            for (var fates = 0; fates < Math.Pow(4, laid); fates++)
            {
                var (chance, alive, hit) = (laying * eggs[laid], 0, 0);
                for (var egg = 0; egg < laid; egg++)
                {
                    // 0 not fertile, 1 fertile but dead, 2 hatched and not wanted, 3 hatched and wanted
                    var fate = (fates >> (2 * egg)) & 3;
                    chance *= fate switch
                    {
                        0 => 1.0 - fertile,
                        1 => fertile * (1.0 - hatches),
                        2 => fertile * hatches * (1.0 - wanted),
                        _ => fertile * hatches * wanted,
                    };
                    alive += fate >= 2 ? 1 : 0;
                    hit += fate == 3 ? 1 : 0;
                }

                good[alive] += chance;
                hits[hit] += chance;
            }
        }

        var clutch = GoodEggs.Of(eggs, Probability.From(laying), ClutchRate.Fixed(fertile), ClutchRate.Fixed(hatches));
        var perEgg = Probability.From(wanted);

        Close(good, clutch.Chances.Select(p => p.Value));
        Close(hits, clutch.NumberOf(perEgg));
        Assert.Equal(hits[0], clutch.NoneOf(perEgg).Value, 1e-12);
        Assert.Equal(good.Select((p, n) => p * n).Sum(), clutch.Mean, 1e-12);
        for (var count = 0; count < eggs.Length; count++)
        {
            Assert.Equal(hits.Skip(count).Sum(), clutch.AtLeast(count, perEgg).Value, 1e-12);
        }
    }, iter: 150);

    // Reference: MathNet.Numerics, binomial distribution.
    [Fact]
    public void NumberOf_ExactlySoManyEggs_IsBinomial() => Gen.Select(Gen.Int[0, 60], Gen.Double[0.0, 1.0]).Sample((eggs, chance) =>
    {
        var clutch = GoodEggs.Exactly(eggs);
        var perEgg = Probability.From(chance);

        Close(Enumerable.Range(0, eggs + 1).Select(k => Binomial.PMF(chance, eggs, k)), clutch.NumberOf(perEgg));
        for (var k = 1; k <= eggs; k += 7)
        {
            Assert.Equal(1.0 - Binomial.CDF(chance, eggs, k - 1), clutch.AtLeast(k, perEgg).Value, 1e-10);
        }
    }, iter: 200);

    // Reference: the beta density of MathNet.Numerics, integrated by its Gauss-Legendre rule over the share of a clutch.
    [Theory]
    [InlineData(8, 0.9, 0.05)]
    [InlineData(8, 0.75, 0.2)]
    [InlineData(12, 0.5, 0.25)]
    [InlineData(5, 0.3, 0.1)]
    public void Of_RateThatVariesFromClutchToClutch_IsBetaBinomial(int eggs, double mean, double deviation)
    {
        var concentration = (mean * (1.0 - mean) / (deviation * deviation)) - 1.0;
        var (a, b) = (mean * concentration, (1.0 - mean) * concentration);
        var number = new double[eggs + 1];
        number[eggs] = 1.0;
        var expected = Enumerable.Range(0, eggs + 1).Select(k => GaussLegendreRule.Integrate(
            share => Beta.PDF(a, b, share) * Binomial.PMF(share, eggs, k), 0.0, 1.0, 128)).ToArray();

        var clutch = GoodEggs.Of(number, Probability.Certain, ClutchRate.Of(mean, deviation), ClutchRate.Fixed(1.0));

        for (var k = 0; k <= eggs; k++)
        {
            Assert.Equal(expected[k], clutch.Chances[k].Value, 1e-4);
        }

        // Closed form by the beta function: C(n, k) B(k + a, n - k + b) / B(a, b).
        Close(
            Enumerable.Range(0, eggs + 1).Select(k =>
                SpecialFunctions.Binomial(eggs, k) * SpecialFunctions.Beta(k + a, eggs - k + b) / SpecialFunctions.Beta(a, b)),
            clutch.Chances.Select(p => p.Value),
            1e-9);
    }

    [Fact]
    public void Of_NumbersThatNeverComeUp_AreLeftOut()
    {
        var none = GoodEggs.Of([0.0, 0.0, 1.0], Probability.Certain, ClutchRate.Fixed(0.0), ClutchRate.Fixed(0.9));
        var two = GoodEggs.Of([0.0, 0.0, 1.0, 0.0, 0.0], Probability.Certain, ClutchRate.Fixed(1.0), ClutchRate.Fixed(1.0));

        Assert.True(none.IsAlwaysEmpty);
        Assert.Equal(2, two.Most);
        Assert.Null(SharedChance.Certain(Probability.Half).ClutchesFor(Probability.From(0.9), none));
    }

    [Fact]
    public void Exactly_ExactChance_GivesExactFigures()
    {
        var clutch = GoodEggs.Exactly(3);
        var quarter = Probability.Ratio(1, 4);

        Assert.Equal(new Fraction(27, 64), clutch.NoneOf(quarter).Exact);
        Assert.Equal(new Fraction(10, 64), clutch.AtLeast(2, quarter).Exact);
    }

    [Fact]
    public void Of_ChancesThatDoNotSumToOne_Throws()
    {
        Assert.Throws<ArgumentException>(() => GoodEggs.Of([0.5, 0.4], Probability.Certain, ClutchRate.Fixed(1.0), ClutchRate.Fixed(1.0)));
        Assert.Throws<ArgumentException>(() => GoodEggs.Of([], Probability.Certain, ClutchRate.Fixed(1.0), ClutchRate.Fixed(1.0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => GoodEggs.Exactly(-1));
    }

    [Fact]
    public void ClutchRate_OutOfRange_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ClutchRate.Fixed(1.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ClutchRate.Of(0.5, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ClutchRate.Of(0.5, -0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ClutchRate.Of(double.NaN, 0.1));
    }

    private static void Close(IEnumerable<double> expected, IEnumerable<double> actual, double tolerance = 1e-12)
    {
        var (x, y) = (expected.ToList(), actual.ToList());
        while (y.Count < x.Count)
        {
            y.Add(0.0);
        }

        Assert.Equal(x.Count, y.Count);
        Assert.All(x.Zip(y), p => Assert.Equal(p.First, p.Second, tolerance));
    }
}
