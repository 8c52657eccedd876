using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Distributions;
using Clutchwright.Proofs.Segregations;
using CsCheck;

namespace Clutchwright.Proofs.Tests.Segregations;

public class BinomialTestTests
{
    private static readonly Probability Sure = Probability.From(0.95);

    /// <summary>No success in n has the upper limit 1 - (0.025)^(1/n); 0 of 10 gives 0.3085 [ClopperPearson1934, value computed].</summary>
    [Theory]
    [InlineData(0, 10, 0.0, 0.30849710781876)]
    [InlineData(10, 10, 0.69150289218124, 1.0)]
    [InlineData(0, 1, 0.0, 0.975)]
    public void Interval_OfNoneOrAll_IsTheClosedForm(int count, int number, double low, double high)
    {
        var interval = ShareInterval.Exact(count, number, Sure);

        Assert.Equal(low, interval.Low, 1e-12);
        Assert.Equal(high, interval.High, 1e-12);
    }

    [Fact]
    public void Interval_AtItsEnds_LeavesHalfTheDoubtOnEachSide() => Gen.Select(Gen.Int[1, 300], Gen.Int[0, 300]).Sample((number, count) =>
    {
        count = Math.Min(count, number);
        var interval = ShareInterval.Exact(count, number, Sure);

        Assert.InRange((double)count / number, interval.Low, interval.High);
        if (count > 0)
        {
            Assert.Equal(0.025, BinomialDistribution.AtLeast(count, number, interval.Low), 1e-9);
        }

        if (count < number)
        {
            Assert.Equal(0.025, BinomialDistribution.AtMost(count, number, interval.High), 1e-9);
        }
    });

    /// <summary>The interval from its definition covers any true share in 95 of 100 cases or more.</summary>
    [Fact]
    public void Interval_WhateverTheTruth_CoversItAtLeastAsOftenAsStated() => Gen.Select(Gen.Int[1, 40], Gen.Double[0.0, 1.0]).Sample((number, truth) =>
    {
        var covered = Enumerable.Range(0, number + 1)
            .Where(k => ShareInterval.Exact(k, number, Sure) is var i && i.Low <= truth && truth <= i.High)
            .Sum(k => BinomialDistribution.Exactly(k, number, truth));

        Assert.True(covered >= 0.95 - 1e-9, $"{covered}");
    }, iter: 100);

    /// <summary>Mendel's F3 plants [Mendel1866]: 193 true-breeding of 565 against 1/3; figures by R's binom.test.</summary>
    [Fact]
    public void Of_MendelsThirdGeneration_FitsOneInThree()
    {
        var test = BinomialTest.Of(193, 565, new(1, 3));

        Assert.Equal(0.688028359014908, test.PValue, 1e-11);
        Assert.Equal(0.30252014051943, test.Interval.Low, 1e-12);
        Assert.Equal(0.382332464086211, test.Interval.High, 1e-12);
    }

    [Fact]
    public void Of_TenOfTenAgainstHalf_IsTwoOutcomesOf1024() => Assert.Equal(2.0 / 1024.0, BinomialTest.Of(10, 10, Fraction.Half).PValue, 1e-12);
}
