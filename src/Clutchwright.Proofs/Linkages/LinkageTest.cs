using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Distributions;
using Clutchwright.Proofs.Segregations;

namespace Clutchwright.Proofs.Linkages;

/// <summary>Do two loci lie on one chromosome, and how far apart? From counts of recombinants in one or several families.</summary>
/// <remarks>Assumes full penetrance, both sexes of parents alike, no selection of families for their result. Source: docs/references.md
/// [Morton1955]. Immutable.</remarks>
public sealed class LinkageTest
{
    private LinkageTest(IReadOnlyList<LinkageFamily> families, Probability confidence)
    {
        Families = families;
        Meioses = families.Sum(f => f.Meioses);
        Curve = families.Count == 1
            ? LodCurve.Of(families[0].Lod, BestOf(families[0]))
            : LodCurve.Search(Lod);
        Interval = families.All(f => f.Phase == LinkagePhase.Known)
            ? KnownInterval(families.Sum(f => f.Recombinants), Meioses, confidence)
            : families.Count == 1 ? FoldedInterval(families[0], confidence) : null;
        Credible = new LinkagePosterior(Lod, families).Interval(confidence);
        Heterogeneity = families.Count < 2 ? null : HeterogeneityOf(families, Curve.Most);
    }

    /// <summary>Gets the families.</summary>
    public IReadOnlyList<LinkageFamily> Families { get; }

    /// <summary>Gets the informative meioses of all families.</summary>
    public int Meioses { get; }

    /// <summary>Gets the LOD over the recombination fraction, with its maximum and support interval.</summary>
    public LodCurve Curve { get; }

    /// <summary>Gets the exact confidence interval, within [0, 0.5]; <c>null</c> for several families of which some have an unknown phase.</summary>
    /// <remarks>Phase known: Clopper and Pearson's. Phase unknown: the same construction on the smaller of the two kinds, whose number
    /// is k or n - k.</remarks>
    public ShareInterval? Interval { get; }

    /// <summary>Gets the interval that holds the fraction with the confidence when every fraction from 0 to 0.5 was held equally likely
    /// before counting; half the doubt on each side.</summary>
    public ShareInterval Credible { get; }

    /// <summary>Gets whether the families agree; <c>null</c> for one family.</summary>
    public LinkageHeterogeneity? Heterogeneity { get; }

    /// <summary>Tests families.</summary>
    /// <param name="families">At least one.</param>
    /// <param name="confidence">Inside (0, 1), for the intervals; <c>null</c> for 0.95.</param>
    /// <exception cref="ArgumentException">There is no family, or there are more than a million meioses.</exception>
    public static LinkageTest Of(IReadOnlyList<LinkageFamily> families, Probability? confidence = null)
    {
        if (families.Count == 0 || families.Sum(f => (long)f.Meioses) > LinkageFamily.MostMeioses)
        {
            throw new ArgumentException($"At least one family and at most {LinkageFamily.MostMeioses} meioses.", nameof(families));
        }

        return new([.. families], confidence ?? Probability.From(0.95));
    }

    /// <summary>The LOD of all families at a recombination fraction.</summary>
    /// <param name="r">In [0, 0.5].</param>
    public double Lod(double r) => Families.Sum(f => f.Lod(r));

    // Phase known: the share of recombinants. Unknown: in L the slope is tilt tanh(tilt L) - n/2 tanh(L/2), whose ratio of terms only falls,
    // so a maximum off 1/2 exists exactly where (n - 2k)² > n, and there is one.
    private static double BestOf(LinkageFamily family)
    {
        var n = family.Meioses;
        if (n == 0)
        {
            return 0.5;
        }

        if (family.Phase == LinkagePhase.Known)
        {
            return Math.Min(0.5, (double)family.Recombinants / n);
        }

        var tilt = family.Tilt;
        if (4.0 * tilt * tilt <= n)
        {
            return 0.5;
        }

        if (2.0 * tilt == n)
        {
            return 0.0;
        }

        // The sum of cosh is at least the larger exponential, so the maximum lies at or above the known-phase one in r.
        var nearest = ((n / 2.0) - tilt) / n;
        return ShareInterval.Solve(nearest, 0.5, r =>
        {
            var l = Math.Log((1.0 - r) / r);
            return tilt * Math.Tanh(tilt * l) >= n / 2.0 * Math.Tanh(l / 2.0);
        });
    }

    private static ShareInterval KnownInterval(int recombinants, int meioses, Probability confidence)
    {
        if (meioses == 0)
        {
            return new(0.0, 0.5);
        }

        var exact = ShareInterval.Exact(recombinants, meioses, confidence);
        return new(Math.Min(0.5, exact.Low), Math.Min(0.5, exact.High));
    }

    // The number of the rarer kind grows with r, so each end is the fraction at which so extreme a number has half the doubt.
    private static ShareInterval FoldedInterval(LinkageFamily family, Probability confidence)
    {
        var n = family.Meioses;
        var rarer = Math.Min(family.Recombinants, n - family.Recombinants);
        var doubt = ShareInterval.Doubt(confidence) / 2.0;
        if (n == 0)
        {
            return new(0.0, 0.5);
        }

        double AtMost(int k, double r) => 2 * k >= n ? 1.0 : BinomialDistribution.AtMost(k, n, r) + BinomialDistribution.AtLeast(n - k, n, r);
        double AtLeast(int k, double r) => k <= 0 ? 1.0 : BinomialDistribution.AtLeast(k, n, r) - BinomialDistribution.AtLeast(n - k + 1, n, r);
        var low = rarer == 0 ? 0.0
            : AtLeast(rarer, 0.5) < doubt ? 0.5
            : ShareInterval.Solve(0.0, 0.5, r => AtLeast(rarer, r) >= doubt);
        var high = AtMost(rarer, 0.5) >= doubt ? 0.5 : ShareInterval.Solve(0.0, 0.5, r => AtMost(rarer, r) < doubt);
        return new(low, high);
    }

    private static LinkageHeterogeneity HeterogeneityOf(IReadOnlyList<LinkageFamily> families, double together)
    {
        var told = families.Where(f => f.Meioses > 0).ToArray();
        var apart = told.Sum(f => f.Lod(BestOf(f)));
        var chiSquare = Math.Max(0.0, 2.0 * Math.Log(10.0) * (apart - together));
        var degrees = Math.Max(0, told.Length - 1);
        return new(chiSquare, degrees, degrees == 0 ? 1.0 : ChiSquareDistribution.UpperTail(chiSquare, degrees));
    }
}

/// <summary>Whether families agree on one recombination fraction.</summary>
/// <param name="ChiSquare">2 ln 10 times what the families' own best LODs sum to beyond the common best.</param>
/// <param name="DegreesOfFreedom">Families that were counted, less one.</param>
/// <param name="PValue">The chance of so large a chi-square if they agree; an approximation that needs families of some size.</param>
/// <remarks>Source: docs/references.md [Morton1956].</remarks>
public sealed record LinkageHeterogeneity(double ChiSquare, int DegreesOfFreedom, double PValue);
