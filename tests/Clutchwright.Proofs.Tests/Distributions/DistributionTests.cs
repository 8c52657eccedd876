using Clutchwright.Proofs.Distributions;
using CsCheck;
using MathNet.Numerics;

namespace Clutchwright.Proofs.Tests.Distributions;

public class DistributionTests
{
    /// <summary>Half-integer and integer orders have closed forms: sums of a Poisson, and of the normal's tail.</summary>
    [Theory]
    [InlineData(2, 3.0)]
    [InlineData(4, 0.01)]
    [InlineData(8, 12.5)]
    [InlineData(20, 3.0)]
    [InlineData(20, 60.0)]
    public void UpperTail_EvenDegrees_IsThePoissonSum(int degrees, double x)
    {
        var (sum, term) = (0.0, Math.Exp(-x / 2.0));
        for (var j = 0; j < degrees / 2; j++)
        {
            sum += term;
            term *= x / 2.0 / (j + 1);
        }

        Assert.Equal(1.0, ChiSquareDistribution.UpperTail(x, degrees) / sum, 1e-13);
    }

    /// <summary>Values of the chi-square table that every textbook prints: 3.841458820694124 and so on at 5 % [computed by R's qchisq, recalled].</summary>
    [Theory]
    [InlineData(1, 3.841458820694124, 0.05)]
    [InlineData(2, 5.991464547107979, 0.05)]
    [InlineData(3, 7.814727903251179, 0.05)]
    [InlineData(9, 21.665994333461924, 0.01)]
    public void UpperTail_OfTheTablesLimits_IsTheirLevel(int degrees, double x, double level) =>
        Assert.Equal(level, ChiSquareDistribution.UpperTail(x, degrees), 1e-14);

    [Fact]
    public void UpperGamma_OnAnyNumbers_AgreesWithAnotherLibrary() => Gen.Select(Gen.Double[0.5, 400.0], Gen.Double[0.001, 3.0]).Sample((a, share) =>
    {
        var x = a * share;

        Assert.Equal(SpecialFunctions.GammaUpperRegularized(a, x), ChiSquareDistribution.UpperGamma(a, x), 2e-12);
    });

    [Fact]
    public void IncompleteBeta_OnAnyNumbers_AgreesWithAnotherLibrary() => Gen.Select(Gen.Double[0.5, 300.0], Gen.Double[0.5, 300.0], Gen.Double[0.0, 1.0]).Sample((a, b, x) =>
        Assert.Equal(SpecialFunctions.BetaRegularized(a, b, x), BinomialDistribution.IncompleteBeta(a, b, x, 1.0 - x), 2e-12));

    /// <summary>The binomial written from its definition, in whole numbers of any size.</summary>
    [Fact]
    public void Exactly_OnAnyNumbers_EqualsTheDefinition() => Gen.Select(Gen.Int[0, 60], Gen.Int[0, 60], Gen.Int[1, 31]).Sample((a, b, share) =>
    {
        var (n, k) = (Math.Max(a, b), Math.Min(a, b));
        var ways = System.Numerics.BigInteger.One;
        for (var i = 1; i <= k; i++)
        {
            ways = ways * (n - i + 1) / i;
        }

        var slow = Math.Exp(System.Numerics.BigInteger.Log(
            ways * System.Numerics.BigInteger.Pow(share, k) * System.Numerics.BigInteger.Pow(32 - share, n - k)) - (n * Math.Log(32.0)));

        Assert.Equal(1.0, BinomialDistribution.Exactly(k, n, share / 32.0) / slow, 1e-12);
    });

    [Fact]
    public void Tails_OfABinomial_AreTheSumsOfItsParts() => Gen.Select(Gen.Int[1, 80], Gen.Int[0, 80], Gen.Double[0.0, 1.0]).Sample((n, k, p) =>
    {
        k = Math.Min(k, n);

        Assert.Equal(Enumerable.Range(0, k + 1).Sum(i => BinomialDistribution.Exactly(i, n, p)), BinomialDistribution.AtMost(k, n, p), 1e-12);
        Assert.Equal(Enumerable.Range(k, n - k + 1).Sum(i => BinomialDistribution.Exactly(i, n, p)), BinomialDistribution.AtLeast(k, n, p), 1e-12);
    });

    [Fact]
    public void StirlingError_OfSmallNumbers_GivesTheirFactorials()
    {
        var factorial = 1.0;
        for (var n = 1; n <= 20; n++)
        {
            factorial *= n;
            var log = SaddlePoint.StirlingError(n) + ((n + 0.5) * Math.Log(n)) - n + (0.5 * Math.Log(2.0 * Math.PI));

            Assert.Equal(Math.Log(factorial), log, 1e-13);
        }
    }

    [Fact]
    public void Binomial_DrawnOftenEnough_HasItsMeanAndSpread()
    {
        var chance = new SplitMix(7);
        var draws = Enumerable.Range(0, 100_000).Select(_ => (double)chance.Binomial(40, 0.3)).ToArray();

        // Six standard errors: sd sqrt(8.4) of one draw.
        Assert.Equal(12.0, draws.Average(), 6.0 * Math.Sqrt(8.4 / draws.Length));
        Assert.Equal(8.4, draws.Select(d => (d - 12.0) * (d - 12.0)).Average(), 6.0 * 8.4 * Math.Sqrt(2.0 / draws.Length));
    }

    [Fact]
    public void GaussLegendre_OnPolynomials_IsExact()
    {
        var rule = GaussLegendre.On(0.0, 0.5, 12);

        Assert.Equal(1.0, rule.Sum(p => p.Weight), 1e-14);
        for (var degree = 0; degree < 24; degree++)
        {
            var mean = Math.Pow(0.5, degree) / (degree + 1);
            Assert.Equal(1.0, rule.Sum(p => p.Weight * Math.Pow(p.At, degree)) / mean, 1e-12);
        }
    }
}
