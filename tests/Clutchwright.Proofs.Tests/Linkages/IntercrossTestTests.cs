using Clutchwright.Proofs.Linkages;
using CsCheck;

namespace Clutchwright.Proofs.Tests.Linkages;

public class IntercrossTestTests
{
    /// <summary>Sweet pea, purple and long in coupling [BatesonSaundersPunnett1905]: counts checked in later texts, figures computed.</summary>
    [Fact]
    public void Of_TheSweetPea_GivesTheKnownFigures()
    {
        var test = IntercrossTest.Of([284, 21, 21, 55], isCoupling: true);

        Assert.Equal(0.7603095, test.Share, 5e-8);
        Assert.Equal(0.12804, test.Curve.Best, 5e-6);
        Assert.Equal(0.01856, test.StandardError, 5e-6);
        Assert.Equal(134.728, test.AgainstFree().ChiSquare, 5e-4);
        Assert.Equal(30.973, test.Curve.Most, 5e-4);
    }

    /// <summary>Punnett's gametic series n : 1 : 1 : n, r = 1/(n + 1) [Punnett1911, rows checked].</summary>
    [Theory]
    [InlineData(new[] { 41, 7, 7, 9 }, 3)]
    [InlineData(new[] { 177, 15, 15, 49 }, 7)]
    [InlineData(new[] { 737, 31, 31, 225 }, 15)]
    [InlineData(new[] { 3009, 63, 63, 961 }, 31)]
    [InlineData(new[] { 12161, 127, 127, 3969 }, 63)]
    public void Best_OfPunnettsSeries_IsOneInNPlusOne(int[] counts, int n) =>
        Assert.Equal(1.0 / (n + 1), IntercrossTest.Of(counts, isCoupling: true).Curve.Best, 1e-12);

    [Fact]
    public void Best_OnAnyCounts_IsNoLowerThanAnyPlaceOfAFineGrid() => Gen.Select(Gen.Int[0, 40].Array[4], Gen.Bool).Sample((counts, coupling) =>
    {
        var curve = IntercrossTest.Of(counts, coupling).Curve;

        for (var i = 0; i <= 1000; i++)
        {
            var r = i / 2000.0;
            var p = coupling ? (1.0 - r) * (1.0 - r) : r * r;
            double[] shares = [(2.0 + p) / 4.0, (1.0 - p) / 4.0, (1.0 - p) / 4.0, p / 4.0];
            double[] free = [9.0 / 16.0, 3.0 / 16.0, 3.0 / 16.0, 1.0 / 16.0];
            var slow = counts.Select((c, k) => c == 0 ? 0.0 : c * Math.Log10(shares[k] / free[k])).Sum();

            Assert.True(double.IsNegativeInfinity(slow) ? double.IsNegativeInfinity(curve.At(r)) : Math.Abs(slow - curve.At(r)) < 1e-9);
            Assert.True(slow <= curve.Most + 1e-9);
        }
    }, iter: 100);
}
