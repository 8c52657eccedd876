using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Numerics;

namespace Clutchwright.Genetics.Numbers;

/// <summary>An exact ratio of two whole numbers of any size, always in lowest terms with a positive denominator.</summary>
/// <remarks>
/// Equality and order are those of the numbers themselves. <c>default</c> is zero. Small ratios (both parts within
/// 64 bits) are kept without allocation; larger ones fall back to <see cref="BigInteger"/>.
/// </remarks>
public readonly struct Fraction : IEquatable<Fraction>, IComparable<Fraction>
{
    private readonly long _numerator;
    private readonly long _denominatorLessOne; // so that default is 0/1
    private readonly Large? _large;

    /// <summary>Makes the ratio <paramref name="numerator"/> / <paramref name="denominator"/> in lowest terms.</summary>
    /// <exception cref="DivideByZeroException"><paramref name="denominator"/> is zero.</exception>
    public Fraction(long numerator, long denominator = 1)
        : this(Reduce((Int128)numerator, (Int128)denominator))
    {
    }

    /// <summary>Makes the ratio <paramref name="numerator"/> / <paramref name="denominator"/> in lowest terms.</summary>
    /// <exception cref="DivideByZeroException"><paramref name="denominator"/> is zero.</exception>
    public Fraction(BigInteger numerator, BigInteger denominator)
        : this(Reduce(numerator, denominator))
    {
    }

    private Fraction(Fraction other) => this = other;

    private Fraction(long numerator, long denominator, Large? large)
    {
        _numerator = numerator;
        _denominatorLessOne = denominator - 1;
        _large = large;
    }

    /// <summary>Gets the number 0.</summary>
    public static Fraction Zero => default;

    /// <summary>Gets the number 1.</summary>
    public static Fraction One => new(1, 1, null);

    /// <summary>Gets the ratio 1/2.</summary>
    public static Fraction Half => new(1, 2, null);

    /// <summary>Gets the numerator in lowest terms; it carries the sign.</summary>
    public BigInteger Numerator => _large is { } large ? large.Numerator : _numerator;

    /// <summary>Gets the denominator in lowest terms; at least 1.</summary>
    public BigInteger Denominator => _large is { } large ? large.Denominator : Denominator64;

    /// <summary>Gets whether the number is exactly 0.</summary>
    public bool IsZero => _large is null && _numerator == 0;

    /// <summary>Gets whether the number is exactly 1.</summary>
    public bool IsOne => _large is null && _numerator == 1 && _denominatorLessOne == 0;

    private long Denominator64 => _denominatorLessOne + 1;

    /// <summary>Multiplies two ratios.</summary>
    public static Fraction operator *(Fraction a, Fraction b)
    {
        if (a._large is null && b._large is null)
        {
            // Nearly all odds are small and positive, and 64-bit division is many times faster than 128-bit.
            if ((a._numerator | b._numerator) >= 0
                && Math.BigMul(a._numerator, b._numerator, out var numerator) == 0 && numerator >= 0
                && Math.BigMul(a.Denominator64, b.Denominator64, out var denominator) == 0 && denominator >= 0)
            {
                return ReduceSmall(numerator, denominator);
            }

            return Reduce((Int128)a._numerator * b._numerator, (Int128)a.Denominator64 * b.Denominator64);
        }

        return Reduce(a.Numerator * b.Numerator, a.Denominator * b.Denominator);
    }

    /// <summary>Divides one ratio by another.</summary>
    /// <exception cref="DivideByZeroException"><paramref name="b"/> is zero.</exception>
    public static Fraction operator /(Fraction a, Fraction b) =>
        Reduce(a.Numerator * b.Denominator, a.Denominator * b.Numerator);

    /// <summary>Adds two ratios.</summary>
    public static Fraction operator +(Fraction a, Fraction b)
    {
        if (a._large is null && b._large is null && FitsHalf(a) && FitsHalf(b))
        {
            return ReduceSmall(
                (a._numerator * b.Denominator64) + (b._numerator * a.Denominator64), a.Denominator64 * b.Denominator64);
        }

        if (a._large is null && b._large is null && Fits(a) && Fits(b))
        {
            return Reduce(
                ((Int128)a._numerator * b.Denominator64) + ((Int128)b._numerator * a.Denominator64),
                (Int128)a.Denominator64 * b.Denominator64);
        }

        return Reduce((a.Numerator * b.Denominator) + (b.Numerator * a.Denominator), a.Denominator * b.Denominator);
    }

    /// <summary>Subtracts one ratio from another.</summary>
    public static Fraction operator -(Fraction a, Fraction b) => a + (-b);

    /// <summary>Changes the sign.</summary>
    public static Fraction operator -(Fraction a) => new(-a.Numerator, a.Denominator);

    /// <summary>Says whether two ratios are the same number.</summary>
    public static bool operator ==(Fraction a, Fraction b) => a.Equals(b);

    /// <summary>Says whether two ratios differ.</summary>
    public static bool operator !=(Fraction a, Fraction b) => !a.Equals(b);

    /// <summary>Says whether <paramref name="a"/> is the smaller number.</summary>
    public static bool operator <(Fraction a, Fraction b) => a.CompareTo(b) < 0;

    /// <summary>Says whether <paramref name="a"/> is the larger number.</summary>
    public static bool operator >(Fraction a, Fraction b) => a.CompareTo(b) > 0;

    /// <summary>Says whether <paramref name="a"/> is not the larger number.</summary>
    public static bool operator <=(Fraction a, Fraction b) => a.CompareTo(b) <= 0;

    /// <summary>Says whether <paramref name="a"/> is not the smaller number.</summary>
    public static bool operator >=(Fraction a, Fraction b) => a.CompareTo(b) >= 0;

    /// <summary>Takes a whole number as a ratio.</summary>
    public static implicit operator Fraction(int value) => new(value, 1, null);

    /// <summary>Takes the whole number of this value as a ratio.</summary>
    public static Fraction FromInt32(int value) => value;

    /// <summary>Raises to a whole power.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="exponent"/> is negative.</exception>
    public Fraction Power(int exponent)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(exponent);
        return Reduce(BigInteger.Pow(Numerator, exponent), BigInteger.Pow(Denominator, exponent));
    }

    /// <summary>Rounds to a double: exact for ratios whose parts are below 2^53, else within two units in the last place; infinite where the
    /// number is too large for a double, and 0 where it is too small.</summary>
    public double ToDouble() =>
        _large is { } large
            ? Math.ScaleB(Leading(large.Numerator, out var up) / Leading(large.Denominator, out var down), up - down)
            : (double)_numerator / Denominator64;

    /// <inheritdoc/>
    public int CompareTo(Fraction other) =>
        _large is null && other._large is null
            ? ((Int128)_numerator * other.Denominator64).CompareTo((Int128)other._numerator * Denominator64)
            : (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    /// <inheritdoc/>
    public bool Equals(Fraction other) =>
        _large is null
            ? other._large is null && _numerator == other._numerator && _denominatorLessOne == other._denominatorLessOne
            : other._large is not null && Numerator == other.Numerator && Denominator == other.Denominator;

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is Fraction other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Numerator, Denominator);

    /// <summary>Writes <c>3/16</c>, or a whole number alone, in the invariant culture.</summary>
    public override string ToString() =>
        Denominator.IsOne
            ? Numerator.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{Numerator}/{Denominator}");

    // The leading bits of a number, and how many were left off.
    private static double Leading(BigInteger number, out int shift)
    {
        shift = (int)Math.Max(0, number.GetBitLength() - 64);
        return (double)(number >> shift);
    }

    private static bool Fits(Fraction f) => Int128.Abs((Int128)f._numerator) < (1L << 62) && f.Denominator64 < (1L << 62);

    private static bool FitsHalf(Fraction f) => f._numerator is >= 0 and < (1L << 31) && f._denominatorLessOne < (1L << 31) - 1;

    // Neither part negative, the denominator not 0.
    private static Fraction ReduceSmall(long numerator, long denominator)
    {
        var divisor = GreatestCommonDivisor(numerator, denominator);
        return divisor == 1 ? new(numerator, denominator, null) : new(numerator / divisor, denominator / divisor, null);
    }

    private static long GreatestCommonDivisor(long a, long b)
    {
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return a;
    }

    private static Fraction Reduce(Int128 numerator, Int128 denominator)
    {
        if (denominator == 0)
        {
            throw new DivideByZeroException("A fraction's denominator is zero.");
        }

        if (denominator < 0)
        {
            (numerator, denominator) = (-numerator, -denominator);
        }

        var divisor = GreatestCommonDivisor(numerator < 0 ? -numerator : numerator, denominator);
        numerator /= divisor;
        denominator /= divisor;
        return numerator >= -long.MaxValue && numerator <= long.MaxValue && denominator <= long.MaxValue
            ? new Fraction((long)numerator, (long)denominator, null)
            : new Fraction(0, 1, new Large((BigInteger)numerator, (BigInteger)denominator));
    }

    private static Fraction Reduce(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.IsZero)
        {
            throw new DivideByZeroException("A fraction's denominator is zero.");
        }

        if (denominator.Sign < 0)
        {
            (numerator, denominator) = (-numerator, -denominator);
        }

        var divisor = BigInteger.GreatestCommonDivisor(numerator, denominator);
        numerator /= divisor;
        denominator /= divisor;
        return BigInteger.Abs(numerator) <= long.MaxValue && denominator <= long.MaxValue
            ? new Fraction((long)numerator, (long)denominator, null)
            : new Fraction(0, 1, new Large(numerator, denominator));
    }

    private static Int128 GreatestCommonDivisor(Int128 a, Int128 b)
    {
        if (a <= long.MaxValue && b <= long.MaxValue)
        {
            return GreatestCommonDivisor((long)a, (long)b) is var divisor && divisor == 0 ? 1 : divisor;
        }

        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return a == 0 ? 1 : a;
    }

    private sealed class Large(BigInteger numerator, BigInteger denominator)
    {
        public BigInteger Numerator { get; } = numerator;

        public BigInteger Denominator { get; } = denominator;
    }
}
