using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Simulation;

/// <summary>What a good egg of a pair can be: one genotype of one sex.</summary>
/// <param name="Genotype">The genotype, its sex included.</param>
/// <param name="Chance">Its chance in a good egg, whether it lives or not.</param>
/// <param name="Survival">The share of such eggs whose genotype lets them become a live hatchling.</param>
public sealed record ChildClass(Genotype Genotype, double Chance, double Survival);

/// <summary>A cross written out for drawing: all that can hatch from two known parents, with their chances. Immutable, and safe to use from many
/// threads.</summary>
public sealed class CompiledCross
{
    private readonly AliasTable _table;

    private CompiledCross(IReadOnlyList<ChildClass> classes)
    {
        Classes = classes;
        var lives = classes.Select(c => c.Chance * c.Survival).ToArray();
        Survival = Math.Min(1.0, lives.Sum());
        _table = AliasTable.Of([.. lives, Survival > 1.0 - 1e-12 ? 0.0 : 1.0 - Survival]);
    }

    /// <summary>Gets what can be laid; chances sum to 1.</summary>
    public IReadOnlyList<ChildClass> Classes { get; }

    /// <summary>Gets the share of good eggs that become a live hatchling.</summary>
    public double Survival { get; }

    /// <summary>Writes out a cross.</summary>
    /// <param name="sire">The sire's genotype.</param>
    /// <param name="dam">The dam's genotype.</param>
    /// <param name="mostClasses">The most classes that the caller has room for.</param>
    /// <remarks>Linkage, sex linkage and survival are those of <see cref="Cross"/>. Cost: that of listing all genotypes; loci that do not matter
    /// are best left wild in both parents.</remarks>
    /// <exception cref="ArgumentException">The sire is not male, the dam not female, or the species differ.</exception>
    /// <exception cref="InvalidOperationException">There are more than <paramref name="mostClasses"/> classes.</exception>
    public static CompiledCross Of(Genotype sire, Genotype dam, int mostClasses = 100_000) => Of(sire, dam, mostClasses, genotype => genotype);

    internal static CompiledCross Of(Genotype sire, Genotype dam, int mostClasses, Func<Genotype, Genotype> known)
    {
        var classes = new List<ChildClass>();
        foreach (var outcome in Cross.Of(Mating.Of(sire, dam)).Genotypes())
        {
            Sex[] sexes = outcome.Sex is { } sex ? [sex] : [Sex.Female, Sex.Male];
            foreach (var each in sexes)
            {
                classes.Add(new(known(OfSex(outcome.Genotype, each)), outcome.Chance.Value / sexes.Length, outcome.Survival.Value));
            }

            if (classes.Count > mostClasses)
            {
                throw new InvalidOperationException($"The cross has more than {mostClasses} classes of children.");
            }
        }

        return new(classes);
    }

    /// <summary>Draws what a good egg becomes.</summary>
    /// <returns>The place of the live hatchling's class in <see cref="Classes"/>; -1 where its genotype does not let it hatch.</returns>
    public int Draw(CountedRandom random) => _table.Draw(random) is var place && place < Classes.Count ? place : -1;

    // The same haplotypes in the other sex; only asked for where the sex chromosomes carry no mutant allele.
    private static Genotype OfSex(Genotype genotype, Sex sex) => genotype.Sex == sex
        ? genotype
        : genotype.Species.Groups.Where(g => !genotype[g].IsWild).Aggregate(
            Genotype.Wild(genotype.Species, sex), (other, group) => other.With(group, genotype[group]));
}
