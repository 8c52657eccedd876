using Clutchwright.Proofs.Segregations;

namespace Clutchwright.Proofs.Linkages;

/// <summary>Linkage of two loci from double het × double het, when one copy of each allele hides (or shows as two do).</summary>
/// <remarks>
/// Four classes, in this order: both dominant looks, first dominant only, second dominant only, neither; their chances (2 + P)/4,
/// (1 - P)/4, (1 - P)/4, P/4, where P is (1 - r)² if each parent has both mutant alleles on one strand (coupling) and r² if on
/// different ones (repulsion). r is taken as the same in both sexes. Source: docs/references.md [Fisher1925]; counts
/// [BatesonSaundersPunnett1905]. Immutable.
/// </remarks>
public sealed class IntercrossTest
{
    private readonly int[] _counts;

    private IntercrossTest(int[] counts, bool isCoupling)
    {
        _counts = counts;
        IsCoupling = isCoupling;
        Number = counts.Sum();
        var best = BestShare(counts);
        Share = isCoupling ? Math.Max(0.25, best) : Math.Min(0.25, best);
        Curve = LodCurve.Of(Lod, isCoupling ? 1.0 - Math.Sqrt(Share) : Math.Sqrt(Share));
        var variance = Number == 0 ? double.PositiveInfinity : 2.0 * Share * (1.0 - Share) * (2.0 + Share) / (Number * (1.0 + (2.0 * Share)));
        StandardError = Share == 0.0 ? double.PositiveInfinity : Math.Sqrt(variance) / (2.0 * Math.Sqrt(Share));
    }

    /// <summary>Gets whether both mutant alleles lie on one strand of each parent.</summary>
    public bool IsCoupling { get; }

    /// <summary>Gets the number of young.</summary>
    public int Number { get; }

    /// <summary>Gets P at the maximum.</summary>
    public double Share { get; }

    /// <summary>Gets the LOD over the recombination fraction.</summary>
    public LodCurve Curve { get; }

    /// <summary>Gets the large-sample standard error of the recombination fraction at the maximum; infinite where it has none.</summary>
    public double StandardError { get; }

    /// <summary>Tests counts.</summary>
    /// <param name="counts">Four numbers, 0 or more, in the order of the classes.</param>
    /// <param name="isCoupling">The phase of the parents.</param>
    /// <exception cref="ArgumentException">There are not four numbers, one is negative, or they are too many.</exception>
    public static IntercrossTest Of(IReadOnlyList<int> counts, bool isCoupling)
    {
        if (counts.Count != 4 || counts.Any(c => c < 0) || counts.Sum(c => (long)c) > SegregationTest.MostEggs)
        {
            throw new ArgumentException("Four counts, 0 or more.", nameof(counts));
        }

        return new([.. counts], isCoupling);
    }

    /// <summary>The counts' test against 9 : 3 : 3 : 1, which two free loci give.</summary>
    /// <param name="settings">How far the exact p value is pursued.</param>
    public SegregationTest AgainstFree(ExactSettings? settings = null) => SegregationTest.Of(_counts, [9, 3, 3, 1], settings);

    private double Lod(double r)
    {
        var p = IsCoupling ? (1.0 - r) * (1.0 - r) : r * r;
        return (Term(_counts[0], 2.0 + p, 2.25) + Term(_counts[1] + _counts[2], 1.0 - p, 0.75) + Term(_counts[3], p, 0.25)) / Math.Log(10.0);

        static double Term(int count, double share, double free) => count == 0 ? 0.0 : count * Math.Log(share / free);
    }

    // n P² - (a - 2b - 2c - d) P - 2d = 0
    private static double BestShare(int[] counts)
    {
        double n = counts.Sum();
        if (n == 0)
        {
            return 0.25;
        }

        var b = counts[0] - (2.0 * (counts[1] + counts[2])) - counts[3];
        var root = Math.Sqrt((b * b) + (8.0 * n * counts[3]));
        // Without cancellation, whichever sign b has.
        return Math.Clamp(b >= 0.0 ? (b + root) / (2.0 * n) : 4.0 * counts[3] / (root - b), 0.0, 1.0);
    }
}
