using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Planning.Simulation;
using CsCheck;

namespace Clutchwright.Planning.Tests.Simulation;

/// <summary>Random pairs of a species with a free locus, two linked ones, one on the sex chromosomes, and a pair of alleles that kills.</summary>
internal static class CrossGen
{
    public static readonly Species Species = Species.From(new(
        "made-up",
        SexSystem.XY,
        [
            new("free", "Free", new Placement.Autosomal(), [new("f", "F", InheritanceMode.Recessive)]),
            new("left", "Left", new Placement.Linked("pair", 0.0), [new("l", "L", InheritanceMode.Recessive)]),
            new("right", "Right", new Placement.Linked("pair", 12.0), [new("r", "R", InheritanceMode.Recessive)]),
            new("sexed", "Sexed", new Placement.SexLinked(RecombinationFraction.From(0.1)), [new("s", "S", InheritanceMode.IncompleteDominant)]),
            new("deadly", "Deadly", new Placement.Autosomal(), [new("d", "D", InheritanceMode.IncompleteDominant)]),
        ])
    {
        Dangers =
        [
            new("deadly-pair", [new GenotypeCondition.IsPair("d", "d")], Severity.Lethal, "Dies.", Evidence.CommonPractice)
            {
                Viability = new(Probability.Impossible, Probability.Certain, Probability.Certain),
            },
        ],
    });

    /// <summary>A sire and a dam, known for certain.</summary>
    public static readonly Gen<(Genotype Sire, Genotype Dam)> Certain = Animal(Sex.Male).Select(Animal(Sex.Female));

    /// <summary>An animal by a fixed seed.</summary>
    public static Genotype Animal(Sex sex, CountedRandom random) => Species.Groups.Aggregate(
        Genotype.Wild(Species, sex),
        (genotype, group) => genotype.With(group, new(random.Below(group.HaplotypeCount), random.Below(group.HaplotypeCount))));

    private static Gen<Genotype> Animal(Sex sex) => Gen.Int[0, 3].Array[2 * Species.Groups.Count].Select(codes => Species.Groups.Aggregate(
        Genotype.Wild(Species, sex),
        (genotype, group) => genotype.With(
            group, new(codes[2 * group.Index] % group.HaplotypeCount, codes[(2 * group.Index) + 1] % group.HaplotypeCount))));
}
