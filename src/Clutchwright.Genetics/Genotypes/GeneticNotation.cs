using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Meiosis;

namespace Clutchwright.Genetics.Genotypes;

/// <summary>Writes genotypes as genetics does: alleles of a locus with a slash between, wild as <c>+</c>, linked loci kept on their
/// strands, sex chromosomes named where they differ.</summary>
public static class GeneticNotation
{
    /// <summary>Writes a whole genotype: <c>clown/clown · Pastel/+ · X Banana/Y +</c>; <c>+/+</c> where all is wild.</summary>
    public static string Write(Genotype genotype)
    {
        var parts = genotype.Species.Groups
            .Where(g => !genotype[g].IsWild)
            .Select(g => Write(g, genotype[g], genotype.IsHeterogametic));
        var text = string.Join(" · ", parts);
        return text.Length == 0 ? "+/+" : text;
    }

    /// <summary>Writes one linkage group of an animal, mutant strand first where the order does not count.</summary>
    /// <param name="group">The group.</param>
    /// <param name="diplotype">The haplotypes.</param>
    /// <param name="heterogametic">Whether the animal has two different sex chromosomes.</param>
    public static string Write(LinkageGroup group, Diplotype diplotype, bool heterogametic)
    {
        if (Genotype.Ordered(group, heterogametic))
        {
            return $"{group.SharedChromosome} {Strand(group, diplotype.First)}/{group.UnsharedChromosome} {Strand(group, diplotype.Second)}";
        }

        var (a, b) = (Strand(group, diplotype.First), Strand(group, diplotype.Second));
        return diplotype.First == 0 ? $"{b}/{a}" : $"{a}/{b}";
    }

    /// <summary>Writes one locus of an animal alone: <c>clown/+</c>, <c>X Banana/Y +</c>; a mutant allele first where the order does not count,
    /// and <c>+/+</c> on any chromosomes where both are wild.</summary>
    /// <param name="locus">The locus.</param>
    /// <param name="first">The index of one allele, from 0: of that on X or Z where the order counts.</param>
    /// <param name="second">The index of the other allele.</param>
    /// <param name="heterogametic">Whether the animal has two different sex chromosomes.</param>
    public static string Write(Locus locus, int first, int second, bool heterogametic)
    {
        var (a, b) = (Symbol(locus.Alleles[first]), Symbol(locus.Alleles[second]));
        if (Genotype.Ordered(locus.Group, heterogametic) && (first, second) != (0, 0))
        {
            return $"{locus.Group.SharedChromosome} {a}/{locus.Group.UnsharedChromosome} {b}";
        }

        return first == 0 ? $"{b}/{a}" : $"{a}/{b}";
    }

    /// <summary>Writes what a parent passes on at one linkage group: <c>clown</c>, <c>+</c>, <c>Y Banana</c>.</summary>
    /// <param name="group">The group.</param>
    /// <param name="gamete">The gamete.</param>
    /// <param name="heterogametic">Whether the parent has two different sex chromosomes.</param>
    public static string Write(LinkageGroup group, Gamete gamete, bool heterogametic) => Genotype.Ordered(group, heterogametic)
        ? $"{(gamete.CarriesUnshared ? group.UnsharedChromosome : group.SharedChromosome)} {Strand(group, gamete.Haplotype)}"
        : Strand(group, gamete.Haplotype);

    private static string Strand(LinkageGroup group, int haplotype) =>
        string.Join(' ', group.Loci.Select((l, i) => Symbol(l.Alleles[group.AlleleAt(haplotype, i)])));

    // By genetics' custom a recessive allele is written small, one that shows in a single copy with a capital.
    private static string Symbol(Allele allele) =>
        allele.Mode == InheritanceMode.Recessive ? allele.Name.ToLowerInvariant() : allele.Name;
}
