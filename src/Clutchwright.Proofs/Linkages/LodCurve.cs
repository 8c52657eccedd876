using Clutchwright.Proofs.Segregations;

namespace Clutchwright.Proofs.Linkages;

/// <summary>A log-likelihood ratio over the recombination fraction, with its maximum and support interval.</summary>
/// <remarks>Works on any curve over [0, 0.5] that is 0 at 0.5; a curve of several humps is searched on a grid first.</remarks>
public sealed class LodCurve
{
    /// <summary>The LOD from which two loci count as linked.</summary>
    /// <remarks>Source: docs/references.md [Morton1955].</remarks>
    public const double Linked = 3.0;

    /// <summary>The LOD down to which a recombination fraction counts as ruled out.</summary>
    /// <remarks>Source: docs/references.md [Morton1955].</remarks>
    public const double Excluded = -2.0;

    private const int GridSteps = 500;

    private readonly Func<double, double> _lod;

    private readonly double _tolerance;

    private LodCurve(Func<double, double> lod, double best, double tolerance = 0.0)
    {
        _lod = lod;
        _tolerance = tolerance;
        Best = best;
        Most = lod(best);
        Support = new(
            lod(0.0) >= Most - 1.0 ? 0.0 : Turn(0.0, best),
            lod(0.5) >= Most - 1.0 ? 0.5 : Turn(0.5, best));
    }

    /// <summary>Gets the recombination fraction of the highest LOD, in [0, 0.5].</summary>
    public double Best { get; }

    /// <summary>Gets the highest LOD; at least 0.</summary>
    public double Most { get; }

    /// <summary>Gets the support interval: where the LOD is within 1 of its highest.</summary>
    public ShareInterval Support { get; }

    /// <summary>Gets the largest fraction such that all smaller ones have a LOD of <see cref="Excluded"/> or less; <c>null</c> where none is excluded.</summary>
    public double? ExcludedBelow => _lod(0.0) > Excluded ? null
        : Best == 0.0 ? null
        : ShareInterval.Solve(0.0, Best, r => _lod(r) > Excluded, _tolerance);

    /// <summary>The LOD at a recombination fraction.</summary>
    /// <param name="r">In [0, 0.5].</param>
    public double At(double r) => _lod(r);

    /// <summary>A curve with its maximum where the caller found it.</summary>
    internal static LodCurve Of(Func<double, double> lod, double best) => new(lod, best);

    /// <summary>A curve whose maximum is searched: a grid, then golden sections round its best point.</summary>
    /// <param name="lod">The curve.</param>
    /// <param name="steps">Steps of the grid.</param>
    /// <param name="tolerance">How near in r the maximum and the ends of support are to be, where each place costs much.</param>
    internal static LodCurve Search(Func<double, double> lod, int steps = GridSteps, double tolerance = 0.0)
    {
        var at = 0;
        var most = double.NegativeInfinity;
        for (var i = 0; i <= steps; i++)
        {
            var here = lod(0.5 * i / steps);
            if (here > most)
            {
                (at, most) = (i, here);
            }
        }

        var (low, high) = (0.5 * Math.Max(0, at - 1) / steps, 0.5 * Math.Min(steps, at + 1) / steps);
        var golden = (Math.Sqrt(5.0) - 1.0) / 2.0;
        var (left, right) = (high - (golden * (high - low)), low + (golden * (high - low)));
        var (atLeft, atRight) = (lod(left), lod(right));
        while (high - low > Math.Max(1e-12, tolerance))
        {
            if (atLeft >= atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - (golden * (high - low));
                atLeft = lod(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + (golden * (high - low));
                atRight = lod(right);
            }
        }

        // The ends of the range are points of their own.
        var best = (low + high) / 2.0;
        foreach (var end in new[] { 0.0, 0.5 })
        {
            best = lod(end) >= lod(best) ? end : best;
        }

        return new(lod, best, tolerance);
    }

    // From a place that is out of support to one that is in it.
    private double Turn(double outside, double inside)
    {
        var span = inside - outside;
        return outside + (span * ShareInterval.Solve(0.0, 1.0, share => _lod(outside + (span * share)) >= Most - 1.0, _tolerance / Math.Abs(span)));
    }
}
