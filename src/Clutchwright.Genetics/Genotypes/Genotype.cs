using Clutchwright.Genetics.Loci;

namespace Clutchwright.Genetics.Genotypes;

/// <summary>The alleles an animal carries at every locus of its species, phase kept, and its sex.</summary>
/// <remarks>Equal when species, sex and all diplotypes are equal.</remarks>
public sealed class Genotype : IEquatable<Genotype>
{
    private readonly Diplotype[] _diplotypes;

    private Genotype(Species species, Sex sex, Diplotype[] diplotypes)
    {
        Species = species;
        Sex = sex;
        _diplotypes = diplotypes;
    }

    /// <summary>Gets the species.</summary>
    public Species Species { get; }

    /// <summary>Gets the sex.</summary>
    public Sex Sex { get; }

    /// <summary>Gets whether the animal has two different sex chromosomes.</summary>
    public bool IsHeterogametic => Sex == Species.SexSystem.Heterogametic();

    /// <summary>The haplotypes at a linkage group.</summary>
    public Diplotype this[LinkageGroup group] => _diplotypes[group.Index];

    /// <summary>A genotype without any mutant allele.</summary>
    public static Genotype Wild(Species species, Sex sex) => new(species, sex, new Diplotype[species.Groups.Count]);

    /// <summary>The same genotype with other haplotypes at one linkage group; an unordered pair may be given in any order.</summary>
    /// <param name="group">A group of the species.</param>
    /// <param name="diplotype">The haplotypes; on two different sex chromosomes in order (X or Z first).</param>
    /// <exception cref="ArgumentOutOfRangeException">A code is not one of the group's haplotypes.</exception>
    public Genotype With(LinkageGroup group, Diplotype diplotype)
    {
        if (diplotype.First < 0 || diplotype.Second < 0
            || diplotype.First >= group.HaplotypeCount || diplotype.Second >= group.HaplotypeCount)
        {
            throw new ArgumentOutOfRangeException(nameof(diplotype), diplotype, $"Not haplotypes of {group.Id}.");
        }

        var diplotypes = (Diplotype[])_diplotypes.Clone();
        diplotypes[group.Index] = Ordered(group, IsHeterogametic)
            ? diplotype
            : Diplotype.Unordered(diplotype.First, diplotype.Second);
        return new(Species, Sex, diplotypes);
    }

    /// <summary>The same genotype with a pair of alleles at one free or sex-linked locus, other loci of its group left wild or as they are.</summary>
    /// <param name="locus">A locus of the species.</param>
    /// <param name="first">The index of the allele put on the first haplotype (X or Z where the order counts).</param>
    /// <param name="second">The index of the allele put on the second haplotype.</param>
    public Genotype With(Locus locus, int first, int second)
    {
        var old = this[locus.Group];
        return With(locus.Group, new(
            locus.Group.With(old.First, locus.IndexInGroup, first),
            locus.Group.With(old.Second, locus.IndexInGroup, second)));
    }

    /// <summary>The indices of the two alleles at a locus: the smaller first, or that on X or Z where the order counts.</summary>
    public (int First, int Second) AllelesAt(Locus locus)
    {
        var (a, b) = locus.PairOf(this[locus.Group]);
        return Ordered(locus.Group, IsHeterogametic) || a <= b ? (a, b) : (b, a);
    }

    /// <inheritdoc/>
    public bool Equals(Genotype? other) =>
        other is not null && Species == other.Species && Sex == other.Sex && _diplotypes.AsSpan().SequenceEqual(other._diplotypes);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Genotype);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        hash.Add(Sex);
        foreach (var diplotype in _diplotypes)
        {
            hash.Add(diplotype);
        }

        return hash.ToHashCode();
    }

    /// <summary>Writes the loci that are not wild, in genetics' notation: <c>clown/clown · pastel/+</c>.</summary>
    public override string ToString() => GeneticNotation.Write(this);

    internal static bool Ordered(LinkageGroup group, bool heterogametic) => group.IsSex && heterogametic;
}
