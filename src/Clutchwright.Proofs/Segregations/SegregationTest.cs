using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Distributions;

namespace Clutchwright.Proofs.Segregations;

/// <summary>Do these counts fit the ratio that a hypothesis expects?</summary>
/// <remarks>Immutable. Source: chi-square [Pearson1900]; exact test, the sum over outcomes no likelier than the one observed [Radlow1975],
/// docs/references.md.</remarks>
public sealed class SegregationTest
{
    /// <summary>The largest number of eggs taken.</summary>
    public const int MostEggs = 1_000_000;

    private SegregationTest(IReadOnlyList<int> observed, IReadOnlyList<Fraction> shares, ExactSettings settings)
    {
        Observed = [.. observed];
        Shares = shares;
        Number = observed.Sum();
        Expected = [.. shares.Select(s => s.ToDouble() * Number)];
        Contributions = [.. observed.Select((o, i) => Number == 0 ? 0.0 : (o - Expected[i]) * (o - Expected[i]) / Expected[i])];
        ChiSquare = Contributions.Sum();
        DegreesOfFreedom = observed.Count - 1;
        PValue = DegreesOfFreedom == 0 ? 1.0 : ChiSquareDistribution.UpperTail(ChiSquare, DegreesOfFreedom);
        Exact = ExactMultinomial.Of(Observed, [.. shares.Select(s => s.ToDouble())], settings);
    }

    /// <summary>Gets the number observed in each class.</summary>
    public IReadOnlyList<int> Observed { get; }

    /// <summary>Gets the share expected in each class, in sum exactly 1.</summary>
    public IReadOnlyList<Fraction> Shares { get; }

    /// <summary>Gets the number observed in all.</summary>
    public int Number { get; }

    /// <summary>Gets the number expected in each class, in the order of the classes.</summary>
    public IReadOnlyList<double> Expected { get; }

    /// <summary>Gets what each class adds to chi-square.</summary>
    public IReadOnlyList<double> Contributions { get; }

    /// <summary>Gets Pearson's chi-square, without a correction for continuity.</summary>
    public double ChiSquare { get; }

    /// <summary>Gets the degrees of freedom: classes less one.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Gets the chance of a chi-square at least so large if the hypothesis holds, by the chi-square distribution: good where every
    /// expected number is 5 or more.</summary>
    public double PValue { get; }

    /// <summary>Gets the exact multinomial p value.</summary>
    public ExactChance Exact { get; }

    /// <summary>Gets whether some class expects fewer than 5, so that only <see cref="Exact"/> should be read.</summary>
    public bool IsSparse => Expected.Any(e => e < 5.0);

    /// <summary>Tests counts against a ratio.</summary>
    /// <param name="observed">The number in each class, 0 or more, in sum at most <see cref="MostEggs"/>; at least one class.</param>
    /// <param name="ratio">As many numbers above 0, of any sum, for example 9, 3, 3, 1.</param>
    /// <param name="settings">How far the exact p value is pursued; <c>null</c> for the default.</param>
    /// <returns>The test. With n eggs in k classes the exact part looks at no more than about n^(k-2) branches, and far fewer where whole
    /// branches are settled at once.</returns>
    /// <exception cref="ArgumentException">The two lists differ in length or are empty, or a number is out of its range.</exception>
    public static SegregationTest Of(IReadOnlyList<int> observed, IReadOnlyList<Fraction> ratio, ExactSettings? settings = null)
    {
        if (observed.Count == 0 || observed.Count != ratio.Count)
        {
            throw new ArgumentException("Every class has one count and one share.", nameof(ratio));
        }

        if (observed.Any(o => o < 0) || observed.Sum(o => (long)o) > MostEggs)
        {
            throw new ArgumentException($"Counts are 0 or more, in sum at most {MostEggs}.", nameof(observed));
        }

        return new(observed, Normalised(ratio), settings ?? ExactSettings.Default);
    }

    /// <summary>Divides a ratio by its sum.</summary>
    /// <exception cref="ArgumentException">A number is not above 0.</exception>
    internal static IReadOnlyList<Fraction> Normalised(IReadOnlyList<Fraction> ratio)
    {
        if (ratio.Any(r => r <= Fraction.Zero))
        {
            throw new ArgumentException("Every number of a ratio is above 0.", nameof(ratio));
        }

        var sum = ratio.Aggregate(Fraction.Zero, (a, b) => a + b);
        return [.. ratio.Select(r => r / sum)];
    }
}
