using System.Globalization;
using System.Numerics;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Tests.Twin;

/// <summary>The arithmetic the slow twin needs; done exactly or in doubles.</summary>
internal interface ITwinNumber<T>
    where T : struct, ITwinNumber<T>
{
    static abstract T Zero { get; }

    static abstract T One { get; }

    bool IsZero { get; }

    static abstract T operator +(T a, T b);

    static abstract T operator -(T a, T b);

    static abstract T operator *(T a, T b);

    static abstract T operator /(T a, T b);

    static abstract T Of(Probability probability);

    static abstract T Of(double value);

    double ToDouble();
}

/// <summary>A ratio of whole numbers of any size, brought to lowest terms after every step.</summary>
internal readonly record struct ExactNumber : ITwinNumber<ExactNumber>
{
    private readonly BigInteger _over; // the denominator less 1, so that default is 0/1

    public ExactNumber(BigInteger numerator, BigInteger denominator)
    {
        var divisor = BigInteger.GreatestCommonDivisor(numerator, denominator) * denominator.Sign;
        Numerator = numerator / divisor;
        _over = (denominator / divisor) - 1;
    }

    public static ExactNumber Zero => default;

    public static ExactNumber One => new(1, 1);

    public BigInteger Numerator { get; }

    public BigInteger Denominator => _over + 1;

    public bool IsZero => Numerator.IsZero;

    public static ExactNumber operator +(ExactNumber a, ExactNumber b) =>
        new((a.Numerator * b.Denominator) + (b.Numerator * a.Denominator), a.Denominator * b.Denominator);

    public static ExactNumber operator -(ExactNumber a, ExactNumber b) =>
        new((a.Numerator * b.Denominator) - (b.Numerator * a.Denominator), a.Denominator * b.Denominator);

    public static ExactNumber operator *(ExactNumber a, ExactNumber b) =>
        new(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    public static ExactNumber operator /(ExactNumber a, ExactNumber b) =>
        new(a.Numerator * b.Denominator, a.Denominator * b.Numerator);

    public static ExactNumber Of(Probability probability) =>
        probability.Exact is { } exact
            ? new(exact.Numerator, exact.Denominator)
            : throw new ArgumentException($"{probability} is not exact.", nameof(probability));

    public static ExactNumber Of(double value) =>
        value is 0.0 or 0.5 or 1.0
            ? new((int)(2.0 * value), 2)
            : throw new ArgumentException($"{value} is not taken as exact.", nameof(value));

    public double ToDouble() => Math.Exp(BigInteger.Log(Numerator) - BigInteger.Log(Denominator));

    public override string ToString() => $"{Numerator}/{Denominator}";
}

/// <summary>A double.</summary>
internal readonly record struct FloatNumber(double Value) : ITwinNumber<FloatNumber>
{
    public static FloatNumber Zero => default;

    public static FloatNumber One => new(1.0);

    public bool IsZero => Value == 0.0;

    public static FloatNumber operator +(FloatNumber a, FloatNumber b) => new(a.Value + b.Value);

    public static FloatNumber operator -(FloatNumber a, FloatNumber b) => new(a.Value - b.Value);

    public static FloatNumber operator *(FloatNumber a, FloatNumber b) => new(a.Value * b.Value);

    public static FloatNumber operator /(FloatNumber a, FloatNumber b) => new(a.Value / b.Value);

    public static FloatNumber Of(Probability probability) => new(probability.Value);

    public static FloatNumber Of(double value) => new(value);

    public double ToDouble() => Value;

    public override string ToString() => Value.ToString("R", CultureInfo.InvariantCulture);
}
