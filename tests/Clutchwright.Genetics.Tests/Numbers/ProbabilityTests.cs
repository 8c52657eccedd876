using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Tests.Numbers;

public class ProbabilityTests
{
    [Theory]
    [InlineData(-0.001)]
    [InlineData(1.001)]
    [InlineData(double.NaN)]
    public void From_OutsideZeroToOne_Throws(double value)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Probability.From(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Probability.Rounded(value));
    }

    [Fact]
    public void Ratio_OutsideZeroToOne_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Probability.Ratio(3, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Probability.Ratio(-1, 2));
        Assert.Throws<DivideByZeroException>(() => Probability.Ratio(1, 0));
    }

    [Fact]
    public void Operators_ExactOperands_StayExact()
    {
        var (third, quarter) = (Probability.Ratio(1, 3), Probability.Ratio(1, 4));

        Assert.Equal(new Fraction(7, 12), (third + quarter).Exact);
        Assert.Equal(new Fraction(1, 12), (third * quarter).Exact);
        Assert.Equal(new Fraction(3, 4), quarter.Given(third).Exact);
        Assert.Equal(new Fraction(2, 3), third.Complement.Exact);
        Assert.Equal(new Fraction(1, 81), third.Power(4).Exact);
    }

    [Fact]
    public void Operators_OneInexactOperand_AreInexact()
    {
        var (third, inexact) = (Probability.Ratio(1, 3), Probability.From(0.08));

        Assert.Null((third + inexact).Exact);
        Assert.Null((third * inexact).Exact);
        Assert.Null(inexact.Given(third).Exact);
        Assert.Null(inexact.Complement.Exact);
        Assert.Equal(0.92, inexact.Complement.Value, 1e-15);
    }

    [Fact]
    public void Multiply_ByTheImpossible_IsExactlyImpossible()
    {
        Assert.Equal(Probability.Impossible, Probability.From(0.3) * Probability.Impossible);
        Assert.Equal(Probability.Impossible, Probability.Impossible * Probability.From(0.3));
    }

    [Fact]
    public void Add_BeyondOne_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Probability.Ratio(2, 3) + Probability.Half);

    [Fact]
    public void Given_TheImpossible_Throws() =>
        Assert.Throws<DivideByZeroException>(() => Probability.Half.Given(Probability.Impossible));

    [Fact]
    public void Rounded_OffByRoundingAlone_IsTheNearerEnd()
    {
        Assert.Equal(1.0, Probability.Rounded(1.0 + 1e-12).Value);
        Assert.Equal(0.0, Probability.Rounded(-1e-12).Value);
    }

    [Fact]
    public void Default_IsImpossibleAndExact()
    {
        Assert.True(default(Probability).IsImpossible);
        Assert.Equal(Fraction.Zero, default(Probability).Exact);
    }
}
