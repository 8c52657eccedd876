using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Loci;

/// <summary>The share of gametes in which two places on a chromosome come from different parental strands: 0 (always
/// together) to 0.5 (independent).</summary>
/// <remarks>Equality is exact. <c>default</c> is 0, fully linked.</remarks>
public readonly record struct RecombinationFraction
{
    private RecombinationFraction(double value) => Value = value;

    /// <summary>Gets complete linkage, r = 0.</summary>
    public static RecombinationFraction Complete => default;

    /// <summary>Gets free recombination, r = 1/2.</summary>
    public static RecombinationFraction Free => new(0.5);

    /// <summary>Gets the fraction, in [0, 0.5].</summary>
    public double Value { get; }

    /// <summary>Makes a recombination fraction from a number given by a caller.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is NaN or outside [0, 0.5].</exception>
    public static RecombinationFraction From(double value) => value is >= 0.0 and <= 0.5
        ? new(value)
        : throw new ArgumentOutOfRangeException(nameof(value), value, "A recombination fraction lies in [0, 0.5].");

    /// <summary>The fraction between two places <paramref name="centimorgans"/> apart, by Haldane's function.</summary>
    /// <remarks>r = (1 - exp(-2d)) / 2 with d in morgans: crossings-over without interference. Source:
    /// docs/references.md [Haldane1919].</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The distance is negative or NaN.</exception>
    public static RecombinationFraction AtDistance(double centimorgans) => centimorgans >= 0.0
        ? new((1.0 - Math.Exp(-centimorgans / 50.0)) / 2.0)
        : throw new ArgumentOutOfRangeException(nameof(centimorgans), centimorgans, "A map distance is not negative.");

    /// <summary>The fraction between two places on one arm, given the fractions of both to a third place beyond the nearer.</summary>
    /// <remarks>Without interference r13 = r12 + r23 - 2 r12 r23 (Trow's formula), solved for r23: 1/2 wherever the farther place
    /// recombines freely. Where the nearer one already does, nothing is known of the rest and 1/2 is given too.</remarks>
    /// <exception cref="ArgumentException"><paramref name="farther"/> is smaller than <paramref name="nearer"/>.</exception>
    public static RecombinationFraction Between(RecombinationFraction nearer, RecombinationFraction farther)
    {
        if (farther.Value < nearer.Value)
        {
            throw new ArgumentException("The farther place has the smaller recombination fraction.", nameof(farther));
        }

        return farther.Value >= 0.5 ? Free : new((farther.Value - nearer.Value) / (1.0 - (2.0 * nearer.Value)));
    }

    /// <summary>The chance of a recombinant gamete; exact only for 0 and 1/2.</summary>
    public Probability ToProbability() => Probability.From(Value);
}
