using System.Numerics;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Tests.Twin;
using CsCheck;

namespace Clutchwright.Genetics.Tests.Numbers;

/// <summary>Against arithmetic done in <see cref="BigInteger"/> throughout, brought to lowest terms after every step.</summary>
public class FractionTests
{
    private static readonly BigInteger[] Limits =
        [long.MaxValue, long.MinValue, long.MaxValue - 1, 1L << 31, (1L << 31) - 1, (1L << 32) - 1, 1L << 62, (1L << 62) - 1, BigInteger.One << 64];

    // Small parts, parts near the limits of 64 bits, and parts far beyond.
    private static readonly Gen<BigInteger> Parts = Gen.OneOf(
        Gen.Int[-12, 12].Select(i => (BigInteger)i),
        Gen.Long.Select(i => (BigInteger)i),
        Gen.Int[0, Limits.Length - 1].Select(i => Limits[i]),
        Gen.Select(Gen.Long, Gen.Int[1, 200]).Select((i, shift) => (BigInteger)i << shift));

    private static readonly Gen<(BigInteger Numerator, BigInteger Denominator)> Ratios =
        Gen.Select(Parts, Parts.Where(d => !d.IsZero));

    [Fact]
    public void Operators_AnyRatios_EqualBigIntegerArithmetic() => Gen.Select(Ratios, Ratios).Sample((a, b) =>
    {
        var (x, y) = (new Fraction(a.Numerator, a.Denominator), new Fraction(b.Numerator, b.Denominator));
        var (u, v) = (new ExactNumber(a.Numerator, a.Denominator), new ExactNumber(b.Numerator, b.Denominator));

        Same(u + v, x + y);
        Same(u - v, x - y);
        Same(u * v, x * y);
        if (!v.IsZero)
        {
            Same(u / v, x / y);
        }

        Assert.Equal((a.Numerator * b.Denominator * a.Denominator.Sign * b.Denominator.Sign)
            .CompareTo(b.Numerator * a.Denominator * a.Denominator.Sign * b.Denominator.Sign), Math.Sign(x.CompareTo(y)));
        Assert.Equal(u == v, x == y);
        Assert.Equal(u == v, x.GetHashCode() == y.GetHashCode() && x.Equals(y));
    });

    [Fact]
    public void Power_AnyRatio_IsRepeatedMultiplication() => Gen.Select(Ratios, Gen.Int[0, 9]).Sample((a, exponent) =>
    {
        var expected = ExactNumber.One;
        for (var i = 0; i < exponent; i++)
        {
            expected *= new ExactNumber(a.Numerator, a.Denominator);
        }

        Same(expected, new Fraction(a.Numerator, a.Denominator).Power(exponent));
    });

    [Fact]
    public void Constructor_LongParts_IsInLowestTermsWithPositiveDenominator() => Gen.Select(Gen.Long, Gen.Long.Where(d => d != 0)).Sample((n, d) =>
        Same(new(n, d), new Fraction(n, d)));

    [Fact]
    public void Constructor_ZeroDenominator_Throws()
    {
        Assert.Throws<DivideByZeroException>(() => new Fraction(1, 0));
        Assert.Throws<DivideByZeroException>(() => new Fraction(BigInteger.One, BigInteger.Zero));
        Assert.Throws<DivideByZeroException>(() => Fraction.One / Fraction.Zero);
    }

    [Fact]
    public void Default_IsZero()
    {
        Assert.Equal(Fraction.Zero, default);
        Assert.Equal("0", default(Fraction).ToString());
        Assert.True(default(Fraction).IsZero);
    }

    [Fact]
    public void ToString_WritesLowestTerms()
    {
        Assert.Equal("3/16", new Fraction(-6, -32).ToString());
        Assert.Equal("-1/2", new Fraction(4, -8).ToString());
        Assert.Equal("7", new Fraction(7).ToString());
    }

    // IEEE 754: the double nearest to a ratio of two doubles is their quotient.
    [Fact]
    public void ToDouble_PartsBelow2To53_IsTheNearestDouble() =>
        Gen.Select(Gen.Long[-(1L << 53), 1L << 53], Gen.Long[1, 1L << 53]).Sample((n, d) =>
            Assert.Equal((double)n / d, new Fraction(n, d).ToDouble()));

    // 3^-640 = 10^(-640 log10 3); a power of two is exact at any size.
    [Fact]
    public void ToDouble_PartsBeyondTheRangeOfADouble_KeepsItsSize()
    {
        Assert.Equal(-305.3576, Math.Log10(new Fraction(1, 3).Power(640).ToDouble()), 4);
        Assert.Equal(Math.ScaleB(1.0, -1000), new Fraction(1, 2).Power(1000).ToDouble());
        Assert.Equal(Math.ScaleB(1.0, 1000), new Fraction(2).Power(1000).ToDouble());
        Assert.Equal(1.0 / 3.0, (new Fraction(2).Power(2000) / (new Fraction(2).Power(2000) * 3)).ToDouble());
        Assert.Equal(1.0, ((new Fraction(2).Power(3000) + 1) / new Fraction(2).Power(3000)).ToDouble());
        Assert.Equal(double.PositiveInfinity, new Fraction(2).Power(2000).ToDouble());
        Assert.Equal(0.0, new Fraction(1, 2).Power(2000).ToDouble());
    }

    [Fact]
    public void ToDouble_AnyRatio_IsCloseToTheTwin() => Gen.Select(Ratios, Ratios).Sample((a, b) =>
    {
        var ratio = new Fraction(BigInteger.Abs(a.Numerator) + 1, BigInteger.Abs(b.Denominator));
        var expected = Math.Exp(BigInteger.Log(ratio.Numerator) - BigInteger.Log(ratio.Denominator));

        Assert.Equal(1.0, ratio.ToDouble() / expected, 1e-12);
    });

    private static void Same(ExactNumber expected, Fraction actual)
    {
        Assert.Equal(expected.Numerator, actual.Numerator);
        Assert.Equal(expected.Denominator, actual.Denominator);
    }
}
