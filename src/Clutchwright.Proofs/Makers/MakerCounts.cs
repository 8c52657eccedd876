using Clutchwright.Genetics.Loci;

namespace Clutchwright.Proofs.Makers;

/// <summary>The young of a carrier of the sex with two different sex chromosomes, by sex and by whether they have the allele. The
/// mate does not carry it.</summary>
/// <param name="MalesWith">Sons that have it, 0 or more.</param>
/// <param name="MalesWithout">Sons that do not.</param>
/// <param name="FemalesWith">Daughters that have it.</param>
/// <param name="FemalesWithout">Daughters that do not.</param>
public sealed record MakerCounts(int MalesWith, int MalesWithout, int FemalesWith, int FemalesWithout)
{
    /// <summary>Gets the number of young.</summary>
    public int Number => MalesWith + MalesWithout + FemalesWith + FemalesWithout;

    /// <summary>The recombinants if the allele rides on the Y (or W); the rest are recombinants if it rides on the X (or Z).</summary>
    /// <param name="system">Which sex has two different sex chromosomes.</param>
    public int RecombinantsOnDiffering(SexSystem system) => system == SexSystem.XY
        ? MalesWithout + FemalesWith
        : FemalesWithout + MalesWith;
}
