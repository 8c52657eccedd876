using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Gives weights reckoned in floating point back as ratios, where all that went into them were ratios.</summary>
/// <remarks>A ratio is taken where one with a denominator of at most 1,000 lies within 10⁻¹²: fractions so small lie a million times farther
/// apart than that, so that a wrong one is met by chance less than once in a million, and is then wrong by less than 10⁻¹².</remarks>
internal static class ExactRatio
{
    private const int LargestDenominator = 1_000;
    private const double Closeness = 1e-12;

    /// <summary>Puts equal values together, leaves out what is negligible, and scales to a sum of 1.</summary>
    /// <param name="values">The values.</param>
    /// <param name="weights">Their weights.</param>
    /// <param name="isRatio">Whether all that went into the weights were ratios.</param>
    public static IReadOnlyList<Weighted<T>> Weigh<T>(IReadOnlyList<T> values, IReadOnlyList<double> weights, bool isRatio)
        where T : notnull
    {
        var sum = new Dictionary<T, double>();
        for (var i = 0; i < values.Count; i++)
        {
            sum[values[i]] = sum.GetValueOrDefault(values[i]) + weights[i];
        }

        var kept = sum.Where(p => p.Value > Closeness).ToArray();
        var total = kept.Sum(p => p.Value);
        if (isRatio)
        {
            var ratios = kept.Select(p => Find(p.Value / total)).ToArray();
            if (Array.TrueForAll(ratios, r => r is not null) && ratios.Aggregate(Fraction.Zero, (s, r) => s + r!.Value).IsOne)
            {
                return [.. kept.Select((p, i) => new Weighted<T>(p.Key, Probability.From(ratios[i]!.Value)))];
            }
        }

        return [.. kept.Select(p => new Weighted<T>(p.Key, kept.Length == 1 ? Probability.Certain : Probability.Rounded(p.Value / total)))];
    }

    // The first of the continued fraction's convergents that is close enough.
    private static Fraction? Find(double value)
    {
        long n0 = 0, d0 = 1, n1 = 1, d1 = 0;
        var rest = value;
        for (var i = 0; i < 32; i++)
        {
            var whole = (long)Math.Floor(rest);
            (n0, n1) = (n1, (whole * n1) + n0);
            (d0, d1) = (d1, (whole * d1) + d0);
            if (d1 > LargestDenominator)
            {
                return null;
            }

            if (Math.Abs(((double)n1 / d1) - value) <= Closeness)
            {
                return new Fraction(n1, d1);
            }

            rest = 1.0 / (rest - whole);
        }

        return null;
    }
}
