namespace Clutchwright.Genetics.Genotypes;

/// <summary>The two haplotypes an animal has at one linkage group, as codes of <see cref="Loci.LinkageGroup"/>.</summary>
/// <remarks>
/// On autosomes, and on two like sex chromosomes, the pair is unordered and kept with the smaller code first. On two different sex
/// chromosomes <see cref="First"/> rides on the one that both sexes have (X, Z) and <see cref="Second"/> on the other (Y, W).
/// Equality is by both codes. <c>default</c> is all wild.
/// </remarks>
/// <param name="First">The smaller code, or the one on X or Z.</param>
/// <param name="Second">The larger code, or the one on Y or W.</param>
public readonly record struct Diplotype(int First, int Second)
{
    /// <summary>Gets whether no mutant allele is carried.</summary>
    public bool IsWild => First == 0 && Second == 0;

    /// <summary>An unordered pair, smaller code first.</summary>
    public static Diplotype Unordered(int a, int b) => a <= b ? new(a, b) : new(b, a);
}
