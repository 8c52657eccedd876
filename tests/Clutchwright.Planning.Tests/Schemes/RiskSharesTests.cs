using Clutchwright.Planning.Schemes;
using CsCheck;

namespace Clutchwright.Planning.Tests.Schemes;

public class RiskSharesTests
{
    private static readonly Gen<double[]> Chances = Gen.Double[0.05, 0.95].Array[1, 3];

    // The pepper's steps (Canzar and El-Kebir 2011) at 0.95 over all: equal shares of the risk need 31 + 814 + 15 = 860 plants;
    // the least was worked out apart from this code.
    [Fact]
    public void Least_Pepper_Needs681InsteadOf860()
    {
        double[] chances = [0.12375, 0.005, 0.25];

        var shares = RiskShares.Least(chances, 0.95);

        Assert.Equal([48, 608, 25], shares.Tries);
        Assert.Equal(681, shares.Total);
        Assert.InRange(shares.Success, 0.95, 0.951);
        Assert.Equal([31, 814, 15], chances.Select(p => (int)Math.Ceiling(Math.Log(1.0 - Math.Pow(0.95, 1.0 / 3.0)) / Math.Log(1.0 - p))));
    }

    // Servin's four loci at 0.99 over all: 325 plants by equal shares, 323 at least.
    [Fact]
    public void Least_ServinFourLoci_Needs323InsteadOf325()
    {
        var scheme = TreeSchemes.ParentsOnce(PublishedSchemes.Servin(4), Selfing.LastStep)!;
        var chances = scheme.Crossings.Select(c => c.Chance).ToArray();
        var equal = 1.0 - Math.Pow(0.99, 1.0 / chances.Count(p => p < 1.0));

        Assert.Equal(325, chances.Sum(p => p < 1.0 ? (int)Math.Ceiling(Math.Log(equal) / Math.Log(1.0 - p)) : 1));
        Assert.Equal(323, RiskShares.Least(chances, 0.99).Total);
    }

    [Fact]
    public void Least_AnyChances_IsTheLeastOfAll() => Chances.Select(Gen.Double[0.3, 0.95]).Sample(
        (chances, overall) =>
        {
            var shares = RiskShares.Least(chances, overall);

            Assert.True(SuccessOf(chances, shares.Tries) >= overall - 1e-9);
            Assert.Equal(SuccessOf(chances, shares.Tries), shares.Success, 1e-12);
            Assert.True(shares.Total == chances.Length || MostOf(chances, shares.Total - 1) < overall);
        },
        iter: 300);

    [Fact]
    public void Best_AnyTotal_IsTheLikeliestOfAll() => Chances.Select(Gen.Int[0, 25]).Sample(
        (chances, more) =>
        {
            var total = chances.Length + more;

            var shares = RiskShares.Best(chances, total);

            Assert.Equal(total, shares.Total);
            Assert.Equal(MostOf(chances, total), shares.Success, 1e-12);
        },
        iter: 300);

    [Fact]
    public void Best_CertainSteps_TakeOneTryEach() => Assert.Equal([1, 1], RiskShares.Best([1.0, 1.0], 10).Tries);

    [Fact]
    public void LeastOfFailures_Clutches_CountClutches()
    {
        // 1 - (1/8)^N: 0.875 after one, 0.984 after two [computed].
        Assert.Equal([2], RiskShares.LeastOfFailures([0.125], 0.95).Tries);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(1.5)]
    [InlineData(double.NaN)]
    public void Least_ChanceOutOfRange_Throws(double chance) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RiskShares.Least([chance], 0.9));

    [Fact]
    public void Shares_WrongBounds_Throw()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RiskShares.Least([0.5], 1.0));
        Assert.Throws<ArgumentOutOfRangeException>(() => RiskShares.Best([0.5, 0.5], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RiskShares.LeastOfFailures([1.0], 0.5));
    }

    private static double SuccessOf(IEnumerable<double> chances, IEnumerable<int> tries) =>
        chances.Zip(tries, (p, n) => 1.0 - Math.Pow(1.0 - p, n)).Aggregate(1.0, (all, p) => all * p);

    // Every way to share out.
    private static double MostOf(double[] chances, int total)
    {
        return Try(0, total);

        double Try(int step, int left) => step == chances.Length
            ? 1.0
            : Enumerable.Range(1, Math.Max(0, left - (chances.Length - step - 1)))
                .Max(n => (1.0 - Math.Pow(1.0 - chances[step], n)) * Try(step + 1, left - n));
    }
}
