using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>Numbers given back as the ratios they are.</summary>
public class ExactRatioTests
{
    [Fact]
    public void Weigh_AnyRatioOfAtMostAThousand_IsFound() => Gen.Int[1, 1000].SelectMany(d => Gen.Select(Gen.Int[0, d], Gen.Const(d))).Sample((n, d) =>
    {
        var found = ExactRatio.Weigh(["a", "b"], [(double)n / d, (double)(d - n) / d], isRatio: true);

        Assert.Equal(
            new[] { ("a", new Fraction(n, d)), ("b", new Fraction(d - n, d)) }.Where(p => !p.Item2.IsZero),
            found.Select(w => (w.Value, w.Weight.Exact!.Value)));
    });

    [Fact]
    public void Weigh_RatioWithALargerDenominator_IsANumber() =>
        Assert.Null(ExactRatio.Weigh(["a", "b"], [1.0 / 1009.0, 1008.0 / 1009.0], isRatio: true)[0].Weight.Exact);

    [Fact]
    public void Weigh_ANumberNextToARatio_IsANumber() =>
        Assert.Null(ExactRatio.Weigh(["a", "b"], [(1.0 / 3.0) + 1e-9, (2.0 / 3.0) - 1e-9], isRatio: true)[0].Weight.Exact);

    [Fact]
    public void Weigh_NotMadeOfRatios_IsANumber() =>
        Assert.Null(ExactRatio.Weigh(["a", "b"], [1.0 / 3.0, 2.0 / 3.0], isRatio: false)[0].Weight.Exact);

    [Fact]
    public void Weigh_EqualValues_ArePutTogether() =>
        Assert.Equal([new("a", Probability.Ratio(2, 3)), new("b", Probability.Ratio(1, 3))], ExactRatio.Weigh(["a", "b", "a"], [0.5, 1.0 / 3.0, 1.0 / 6.0], isRatio: true));

    [Fact]
    public void Weigh_WhatIsNegligible_IsLeftOut() =>
        Assert.Equal([new("a", Probability.Certain)], ExactRatio.Weigh(["a", "b"], [1.0, 1e-15], isRatio: false));
}
