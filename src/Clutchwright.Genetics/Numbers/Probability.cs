using System.Globalization;

namespace Clutchwright.Genetics.Numbers;

/// <summary>A probability: a number from 0 to 1, both included, which keeps its exact ratio as long as everything it
/// was made from was exact.</summary>
/// <remarks>
/// The sum, product or quotient of exact values is exact; one inexact value (a recombination fraction strictly between 0
/// and 1/2, a measured rate) makes the result a double. Equality compares exact ratios exactly and doubles bit for bit; compare
/// computed values with <see cref="IsCloseTo"/>. The order is that of <see cref="Value"/>. <c>default</c> is Impossible.
/// </remarks>
public readonly record struct Probability : IComparable<Probability>
{
    /// <summary>The tolerance within which two computed probabilities count as the same.</summary>
    public const double RoundingTolerance = 1e-12;

    private readonly double _value;
    private readonly Fraction _exact;
    private readonly bool _isInexact; // so that default is an exact zero

    private Probability(double value)
    {
        _value = value;
        _isInexact = true;
    }

    private Probability(Fraction exact) => _exact = exact;

    /// <summary>Gets probability 0.</summary>
    public static Probability Impossible => default;

    /// <summary>Gets probability 1.</summary>
    public static Probability Certain => new(Fraction.One);

    /// <summary>Gets probability 1/2.</summary>
    public static Probability Half => new(Fraction.Half);

    /// <summary>Gets the number, in [0, 1].</summary>
    public double Value => _isInexact ? _value : _exact.ToDouble();

    /// <summary>Gets the exact ratio, or <c>null</c> where the number is only known as a double.</summary>
    public Fraction? Exact => _isInexact ? null : _exact;

    /// <summary>Gets whether the number is exactly 0.</summary>
    public bool IsImpossible => _isInexact ? _value == 0.0 : _exact.IsZero;

    /// <summary>Gets whether the number is exactly 1.</summary>
    public bool IsCertain => _isInexact ? _value == 1.0 : _exact.IsOne;

    /// <summary>Gets the probability that the event does not happen.</summary>
    public Probability Complement => _isInexact ? Rounded(1.0 - _value) : new(Fraction.One - _exact);

    /// <summary>The chance of two independent events together.</summary>
    /// <remarks>What is impossible stays exactly so, whatever it is multiplied with.</remarks>
    public static Probability operator *(Probability a, Probability b)
    {
        if (!a._isInexact && !b._isInexact)
        {
            return new(a._exact * b._exact);
        }

        return (!a._isInexact && a._exact.IsZero) || (!b._isInexact && b._exact.IsZero) ? default : new(a.Value * b.Value);
    }

    /// <summary>The chance of one or the other of two events that exclude each other.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The sum passes 1 by more than rounding.</exception>
    public static Probability operator +(Probability a, Probability b) =>
        a._isInexact || b._isInexact ? Rounded(a.Value + b.Value) : From(a._exact + b._exact);

    /// <summary>Makes a probability from a number given by a caller; it counts as inexact unless it is 0, 1/2 or 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is NaN or outside [0, 1].</exception>
    public static Probability From(double value) => value switch
    {
        0.0 => Impossible,
        0.5 => Half,
        1.0 => Certain,
        > 0.0 and < 1.0 => new(value),
        _ => throw new ArgumentOutOfRangeException(nameof(value), value, "A probability lies in [0, 1]."),
    };

    /// <summary>Makes a probability from an exact ratio.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is outside [0, 1].</exception>
    public static Probability From(Fraction value) => value >= Fraction.Zero && value <= Fraction.One
        ? new(value)
        : throw new ArgumentOutOfRangeException(nameof(value), value, "A probability lies in [0, 1].");

    /// <summary>Makes the exact probability <paramref name="numerator"/> / <paramref name="denominator"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is outside [0, 1].</exception>
    /// <exception cref="DivideByZeroException"><paramref name="denominator"/> is zero.</exception>
    public static Probability Ratio(long numerator, long denominator) => From(new Fraction(numerator, denominator));

    /// <summary>Takes a computed number as a probability: a value outside [0, 1] by rounding alone is set to the nearer end.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is NaN or off by more than 1e-9.</exception>
    public static Probability Rounded(double value) => value switch
    {
        >= 0.0 and <= 1.0 => new(value),
        > 1.0 and < 1.0 + 1e-9 => new(1.0),
        < 0.0 and > -1e-9 => new(0.0),
        _ => throw new ArgumentOutOfRangeException(nameof(value), value, "A probability lies in [0, 1]."),
    };

    /// <summary>The share of <paramref name="whole"/> that this is: a conditional probability.</summary>
    /// <exception cref="DivideByZeroException"><paramref name="whole"/> is impossible.</exception>
    /// <exception cref="ArgumentOutOfRangeException">This is larger than <paramref name="whole"/>.</exception>
    public Probability Given(Probability whole)
    {
        if (whole.IsImpossible)
        {
            throw new DivideByZeroException("Nothing can be given an event that cannot happen.");
        }

        if (!whole._isInexact && whole._exact.IsOne)
        {
            return this;
        }

        return _isInexact || whole._isInexact ? Rounded(Value / whole.Value) : From(_exact / whole._exact);
    }

    /// <summary>The chance that <paramref name="times"/> independent repeats all give the event.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> is negative.</exception>
    public Probability Power(int times)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(times);
        return _isInexact ? new(Math.Pow(_value, times)) : new(_exact.Power(times));
    }

    /// <summary>Says whether two computed values agree within <see cref="RoundingTolerance"/>.</summary>
    public bool IsCloseTo(Probability other) => Math.Abs(Value - other.Value) <= RoundingTolerance;

    /// <inheritdoc/>
    public int CompareTo(Probability other) =>
        _isInexact || other._isInexact ? Value.CompareTo(other.Value) : _exact.CompareTo(other._exact);

    /// <summary>Says whether <paramref name="a"/> is less likely.</summary>
    public static bool operator <(Probability a, Probability b) => a.CompareTo(b) < 0;

    /// <summary>Says whether <paramref name="a"/> is likelier.</summary>
    public static bool operator >(Probability a, Probability b) => a.CompareTo(b) > 0;

    /// <summary>Says whether <paramref name="a"/> is not likelier.</summary>
    public static bool operator <=(Probability a, Probability b) => a.CompareTo(b) <= 0;

    /// <summary>Says whether <paramref name="a"/> is not less likely.</summary>
    public static bool operator >=(Probability a, Probability b) => a.CompareTo(b) >= 0;

    /// <summary>Writes the exact ratio, or else the number, in the invariant culture.</summary>
    public override string ToString() =>
        Exact is { } exact ? exact.ToString() : Value.ToString("R", CultureInfo.InvariantCulture);
}
