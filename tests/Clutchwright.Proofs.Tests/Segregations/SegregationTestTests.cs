using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Segregations;
using CsCheck;

namespace Clutchwright.Proofs.Tests.Segregations;

public class SegregationTestTests
{
    private static readonly Fraction[] Dihybrid = [9, 3, 3, 1];

    /// <summary>Mendel's seven traits [Mendel1866], counts checked in the English of [Bateson1902]; chi-square and p computed, the exact p by
    /// R's binom.test(recessive, total, 1/4).</summary>
    [Theory]
    [InlineData(5474, 1850, 0.26288, 0.60815, 0.608155387364119)]
    [InlineData(6022, 2001, 0.01500, 0.90253, 0.907641714776814)]
    [InlineData(705, 224, 0.39074, 0.53191, 0.544640261093329)]
    [InlineData(882, 299, 0.06351, 0.80104, 0.81404621338816)]
    [InlineData(428, 152, 0.45057, 0.50206, 0.502170108251837)]
    [InlineData(651, 207, 0.34965, 0.55431, 0.581056210095246)]
    [InlineData(787, 277, 0.60652, 0.43610, 0.436167669872478)]
    public void Of_MendelsSevenTraits_GivesTheKnownFigures(int dominant, int recessive, double chiSquare, double p, double exact)
    {
        var test = SegregationTest.Of([dominant, recessive], [3, 1]);

        Assert.Equal(chiSquare, test.ChiSquare, 5e-6);
        Assert.Equal(p, test.PValue, 5e-6);
        Assert.Equal(1, test.DegreesOfFreedom);
        Assert.True(test.Exact.IsExact);
        Assert.Equal(exact, test.Exact.Value, 1e-11);
    }

    /// <summary>[Mendel1866]: 556 seeds of the dihybrid cross; the exact p value by adding up all outcomes in R.</summary>
    [Fact]
    public void Of_MendelsDihybrid_GivesTheKnownFigures()
    {
        var test = SegregationTest.Of([315, 101, 108, 32], Dihybrid);

        Assert.Equal(0.47002, test.ChiSquare, 5e-6);
        Assert.Equal(3, test.DegreesOfFreedom);
        Assert.Equal(0.92543, test.PValue, 5e-6);
        Assert.True(test.Exact.IsExact);
        Assert.Equal(0.93822202461564, test.Exact.Value, 1e-10);
    }

    /// <summary>[Mendel1866]: nine genotypes of 529 plants. Too many outcomes to add up: drawn, and said so.</summary>
    [Fact]
    public void Of_NineGenotypes_DrawsAndSaysItsError()
    {
        var test = SegregationTest.Of([38, 35, 28, 30, 65, 68, 60, 67, 138], [1, 1, 1, 1, 2, 2, 2, 2, 4], new() { MostBranches = 100_000, Draws = 20_000 });

        Assert.Equal(2.81096, test.ChiSquare, 5e-6);
        Assert.Equal(0.94565, test.PValue, 5e-6);
        Assert.False(test.Exact.IsExact);
        Assert.InRange(test.Exact.StandardError, 1e-4, 5e-3);
        Assert.Equal(0.945, test.Exact.Value, 0.02);
    }

    /// <summary>[Mendel1866]: the trihybrid's 27 genotypes of 639 plants, weights 1, 2, 4 and 8.</summary>
    [Fact]
    public void Of_TwentySevenGenotypes_GivesTheKnownChiSquare()
    {
        int[] counts =
        [
            8, 14, 9, 11, 8, 10, 10, 7,
            22, 17, 25, 20, 15, 18, 19, 24, 14, 18, 20, 16,
            45, 36, 38, 40, 49, 48,
            78,
        ];
        Fraction[] ratio = [.. Enumerable.Repeat((Fraction)1, 8), .. Enumerable.Repeat((Fraction)2, 12), .. Enumerable.Repeat((Fraction)4, 6), 8];

        var test = SegregationTest.Of(counts, ratio, new() { MostBranches = 1000, Draws = 2000 });

        Assert.Equal(639, test.Number);
        Assert.Equal(15.32238, test.ChiSquare, 5e-6);
        Assert.Equal(26, test.DegreesOfFreedom);
        Assert.Equal(0.95115, test.PValue, 5e-6);
    }

    /// <summary>Test crosses [Mendel1866] and yellow mice [CastleLittle1910, counts recalled].</summary>
    [Theory]
    [InlineData(new[] { 31, 26, 27, 26 }, new[] { 1, 1, 1, 1 }, 0.61818)]
    [InlineData(new[] { 24, 25, 22, 27 }, new[] { 1, 1, 1, 1 }, 0.53061)]
    [InlineData(new[] { 47, 40, 38, 41 }, new[] { 1, 1, 1, 1 }, 1.08434)]
    [InlineData(new[] { 800, 435 }, new[] { 2, 1 }, 1.98381)]
    public void Of_OtherPublishedCounts_GivesTheKnownChiSquare(int[] counts, int[] ratio, double chiSquare) =>
        Assert.Equal(chiSquare, SegregationTest.Of(counts, [.. ratio.Select(r => (Fraction)r)]).ChiSquare, 5e-6);

    /// <summary>The exact p value from its definition: every outcome, in whole numbers of any size.</summary>
    [Fact]
    public void Exact_OnAnyCounts_EqualsAddingUpEveryOutcome() =>
        Gen.Select(Gen.Int[0, 9].Array[2, 4], Gen.Int[1, 9].Array[4]).Sample((counts, weights) =>
        {
            var ratio = weights.Take(counts.Length).Select(w => (Fraction)w).ToArray();

            var test = SegregationTest.Of(counts, ratio);

            Assert.True(test.Exact.IsExact);
            Assert.Equal(SlowExact(counts, ratio), test.Exact.Value, 1e-9);
        }, iter: 300);

    [Fact]
    public void Exact_WhenDrawn_IsWithinSixStandardErrors() => Gen.Select(Gen.Int[2, 12].Array[3], Gen.Int[1, 4].Array[3], Gen.ULong).Sample((counts, weights, seed) =>
    {
        Fraction[] ratio = [.. weights.Select(w => (Fraction)w)];
        var exact = SegregationTest.Of(counts, ratio).Exact.Value;

        var drawn = SegregationTest.Of(counts, ratio, new() { MostBranches = 0, Draws = 4000, Seed = seed }).Exact;

        Assert.True(drawn.IsExact || Math.Abs(exact - drawn.Value) < 6.0 * Math.Max(drawn.StandardError, 1.0 / 4000), $"{exact} {drawn}");
    }, iter: 100);

    [Fact]
    public void Of_ClassesInAnotherOrder_IsTheSame() => Gen.Select(Gen.Int[0, 30].Array[3], Gen.Int[1, 5].Array[3]).Sample((counts, weights) =>
    {
        Fraction[] ratio = [.. weights.Select(w => (Fraction)w)];

        var one = SegregationTest.Of(counts, ratio);
        var other = SegregationTest.Of([.. counts.Reverse()], [.. ratio.Reverse()]);

        Assert.Equal(one.ChiSquare, other.ChiSquare, 1e-9);
        Assert.Equal(one.Exact.Value, other.Exact.Value, 1e-9);
        Assert.InRange(one.Exact.Value, 0.0, 1.0);
    }, iter: 300);

    [Fact]
    public void Of_CountsExactlyAsExpected_FitsPerfectly()
    {
        var test = SegregationTest.Of([9, 3, 3, 1], Dihybrid);

        Assert.Equal(0.0, test.ChiSquare);
        Assert.Equal(1.0, test.PValue);
        Assert.Equal(1.0, test.Exact.Value, 1e-12);
        Assert.True(test.IsSparse);
    }

    [Theory]
    [InlineData(new[] { 1, 2 }, new[] { 1 })]
    [InlineData(new[] { -1, 2 }, new[] { 1, 1 })]
    [InlineData(new[] { 1, 2 }, new[] { 1, 0 })]
    [InlineData(new int[0], new int[0])]
    public void Of_ImpossibleQuestions_Throws(int[] counts, int[] ratio) =>
        Assert.Throws<ArgumentException>(() => SegregationTest.Of(counts, [.. ratio.Select(r => (Fraction)r)]));

    private static double SlowExact(int[] observed, Fraction[] ratio)
    {
        var total = ratio.Aggregate(Fraction.Zero, (a, b) => a + b);
        var shares = ratio.Select(r => r / total).ToArray();
        var limit = Chance(observed);
        return Outcomes(observed.Sum(), observed.Length).Select(Chance).Where(c => c <= limit)
            .Aggregate(Fraction.Zero, (a, b) => a + b).ToDouble();

        Fraction Chance(int[] counts)
        {
            var chance = Fraction.One;
            var placed = 0;
            for (var c = 0; c < counts.Length; c++)
            {
                for (var i = 1; i <= counts[c]; i++)
                {
                    chance = chance * shares[c] * ++placed / i;
                }
            }

            return chance;
        }
    }

    private static IEnumerable<int[]> Outcomes(int n, int classes) => classes == 1
        ? [[n]]
        : from first in Enumerable.Range(0, n + 1)
          from rest in Outcomes(n - first, classes - 1)
          select (int[])[first, .. rest];
}
