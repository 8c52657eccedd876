using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Genetics.Meiosis;

/// <summary>Two gametes become an egg.</summary>
public static class Fertilization
{
    /// <summary>What an egg is at one linkage group.</summary>
    /// <param name="species">The species.</param>
    /// <param name="group">A group of the species.</param>
    /// <param name="sire">What the sire passes on.</param>
    /// <param name="dam">What the dam passes on.</param>
    /// <returns>The diplotype, in the order in which the group keeps it, and the egg's sex; <c>null</c> where the group does not tell it.</returns>
    public static (Diplotype Diplotype, Sex? Sex) Of(Species species, LinkageGroup group, Gamete sire, Gamete dam)
    {
        if (!group.IsSex)
        {
            return (Diplotype.Unordered(sire.Haplotype, dam.Haplotype), null);
        }

        var heterogametic = species.SexSystem.Heterogametic();
        var (deciding, other) = heterogametic == Sex.Male ? (sire, dam) : (dam, sire);
        return deciding.CarriesUnshared
            ? (new(other.Haplotype, deciding.Haplotype), heterogametic)
            : (Diplotype.Unordered(sire.Haplotype, dam.Haplotype), heterogametic.Opposite());
    }
}
