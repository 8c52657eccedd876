namespace Clutchwright.Proofs.Linkages;

/// <summary>The informative meioses of one doubly heterozygous parent.</summary>
/// <remarks>With L = ln((1 - r) / r), n meioses and k recombinants the chance of the counts is (2 cosh(L/2))^-n e^(L (n - 2k) / 2) where
/// the phase is known, and the mean over both ways round, with a cosh in place of the exponential, where it is not. Everything is
/// computed in L, where nothing cancels.</remarks>
public sealed record LinkageFamily
{
    /// <summary>The most meioses taken.</summary>
    public const int MostMeioses = 1_000_000;

    /// <summary>Makes a family.</summary>
    /// <param name="recombinants">k, from 0 to <paramref name="meioses"/>; where the phase is unknown, either of the two kinds.</param>
    /// <param name="meioses">n, from 0 to <see cref="MostMeioses"/>.</param>
    /// <param name="phase">Whether the recombinants are known to be such.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public LinkageFamily(int recombinants, int meioses, LinkagePhase phase)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(recombinants);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(recombinants, meioses);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(meioses, MostMeioses);
        Recombinants = recombinants;
        Meioses = meioses;
        Phase = phase;
    }

    /// <summary>Gets the recombinants, or one of the two kinds where the phase is unknown.</summary>
    public int Recombinants { get; }

    /// <summary>Gets the informative meioses: young in which it can be seen what the parent passed on at both loci.</summary>
    public int Meioses { get; }

    /// <summary>Gets whether the recombinants are known to be such.</summary>
    public LinkagePhase Phase { get; }

    /// <summary>Gets (n - 2k) / 2, of either sign where the phase is known.</summary>
    internal double Tilt => Phase == LinkagePhase.Known
        ? (Meioses - (2.0 * Recombinants)) / 2.0
        : Math.Abs(Meioses - (2.0 * Recombinants)) / 2.0;

    /// <summary>The LOD score at a recombination fraction: log10 of the chance of the counts there over that at 1/2.</summary>
    /// <param name="r">In [0, 0.5].</param>
    /// <returns>The score; negative infinity where the counts cannot be.</returns>
    /// <remarks>Source: docs/references.md [Morton1955].</remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="r"/> is outside [0, 0.5].</exception>
    public double Lod(double r)
    {
        if (r is not (>= 0.0 and <= 0.5))
        {
            throw new ArgumentOutOfRangeException(nameof(r), r, "A recombination fraction lies in [0, 0.5].");
        }

        if (r == 0.0)
        {
            return AtZero();
        }

        // ln(2r), ln(2(1-r)); the phase unknown adds ln((1 + e^-2ΔL)/2).
        var (more, fewer) = Phase == LinkagePhase.Known
            ? (Meioses - Recombinants, Recombinants)
            : (Math.Max(Recombinants, Meioses - Recombinants), Math.Min(Recombinants, Meioses - Recombinants));
        var log = (more * Math.Log(2.0 * (1.0 - r))) + (fewer * Math.Log(2.0 * r));
        if (Phase == LinkagePhase.Unknown)
        {
            log += Math.Log((1.0 + Math.Exp((more - fewer) * Math.Log(r / (1.0 - r)))) / 2.0);
        }

        return log / Math.Log(10.0);
    }

    private double AtZero()
    {
        if (Meioses == 0)
        {
            return 0.0;
        }

        return Phase == LinkagePhase.Known
            ? Recombinants == 0 ? Meioses * Math.Log10(2.0) : double.NegativeInfinity
            : Recombinants == 0 || Recombinants == Meioses ? (Meioses - 1) * Math.Log10(2.0) : double.NegativeInfinity;
    }
}
