using Clutchwright.Proofs.Linkages;

namespace Clutchwright.Desk.Proofs;

/// <summary>Do two genes share a chromosome, and how far apart do they lie?</summary>
/// <param name="Families">Recombinants and meioses of each doubly heterozygous parent.</param>
/// <param name="IsPhaseKnown">Whether recombinants can be told from parental types.</param>
public sealed record LinkageQuestion(IReadOnlyList<(int Recombinants, int Meioses)> Families, bool IsPhaseKnown)
{
    /// <summary>Gets the four classes of a double het × double het in place of families: both looks, first only, second only, neither.</summary>
    public string? Intercross { get; init; }

    /// <summary>Gets whether the double hets have both mutant alleles on one strand; only for <see cref="Intercross"/>.</summary>
    public bool IsCoupling { get; init; } = true;
}

/// <summary>What the counts say.</summary>
/// <param name="Test">The reckoning from families; <c>null</c> for an intercross.</param>
/// <param name="Intercross">The reckoning from an intercross; <c>null</c> for families.</param>
/// <param name="Curve">The LOD over the recombination fraction.</param>
/// <param name="LodAt">The LOD at 0, 0.01, 0.05, 0.1, 0.2, 0.3, 0.4 and 0.5; negative infinity where the counts cannot be.</param>
/// <param name="Meioses">How many informative meioses, or young of an intercross.</param>
/// <param name="Verdict">What it means, in a sentence.</param>
/// <param name="Notes">What to mind.</param>
public sealed record LinkageAnswer(
    LinkageTest? Test,
    IntercrossTest? Intercross,
    LodCurve Curve,
    IReadOnlyList<(double R, double Lod)> LodAt,
    int Meioses,
    string Verdict,
    IReadOnlyList<string> Notes);
