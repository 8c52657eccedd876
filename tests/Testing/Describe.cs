using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Testing;

/// <summary>Short ways to describe small species, animals and wants in tests.</summary>
public static class Describe
{
    /// <summary>A species without masks and dangers.</summary>
    public static Species Species(SexSystem system, params LocusDefinition[] loci) => Genetics.Loci.Species.From(new("sample", system, loci));

    /// <summary>A locus that is free of all others.</summary>
    public static LocusDefinition Free(string id, params AlleleDefinition[] alleles) => new(id, id, new Placement.Autosomal(), alleles);

    /// <summary>A locus of the linkage group <c>group</c>.</summary>
    public static LocusDefinition Linked(string id, double centimorgans, params AlleleDefinition[] alleles) =>
        new(id, id, new Placement.Linked("group", centimorgans), alleles);

    /// <summary>A locus on the sex chromosomes.</summary>
    public static LocusDefinition SexLinked(string id, double recombination, params AlleleDefinition[] alleles) =>
        new(id, id, new Placement.SexLinked(RecombinationFraction.From(recombination)), alleles);

    /// <summary>An allele that shows in two copies.</summary>
    public static AlleleDefinition Recessive(string id) => new(id, id, InheritanceMode.Recessive);

    /// <summary>An allele of which two copies show something else than one.</summary>
    public static AlleleDefinition Incomplete(string id) => new(id, id, InheritanceMode.IncompleteDominant);

    /// <summary>An allele of which two copies look like one.</summary>
    public static AlleleDefinition Dominant(string id) => new(id, id, InheritanceMode.Dominant);

    /// <summary>A danger of two copies of an allele, of which a share lives to hatch.</summary>
    public static DangerDefinition TwoCopies(string alleleId, Probability lives) => new(
        $"two-{alleleId}", [new GenotypeCondition.IsPair(alleleId, alleleId)], Severity.Lethal, "Dies in the egg.", Evidence.CommonPractice)
    {
        Viability = new(lives, Probability.Certain, Probability.Certain),
    };

    /// <summary>A male by its alleles, as <see cref="Animal"/>.</summary>
    public static Genotype Male(Species species, params string[] pairs) => Animal(species, Sex.Male, pairs);

    /// <summary>A female by its alleles, as <see cref="Animal"/>.</summary>
    public static Genotype Female(Species species, params string[] pairs) => Animal(species, Sex.Female, pairs);

    /// <summary>An animal by its alleles; loci not named are wild.</summary>
    /// <param name="species">The species.</param>
    /// <param name="sex">The sex.</param>
    /// <param name="pairs">Pairs of allele ids, first strand before the slash: <c>clown/+</c>. Loci of one group keep their strands;
    /// on two different sex chromosomes the first is X or Z.</param>
    public static Genotype Animal(Species species, Sex sex, params IReadOnlyList<string> pairs)
    {
        var strands = species.Groups.ToDictionary(g => g, _ => (First: 0, Second: 0));
        foreach (var pair in pairs)
        {
            var ids = pair.Split('/');
            var locus = Mutant(species, ids[0] == Allele.WildId ? ids[1] : ids[0]).Locus;
            var (first, second) = strands[locus.Group];
            strands[locus.Group] = (
                locus.Group.With(first, locus.IndexInGroup, Index(locus, ids[0])),
                locus.Group.With(second, locus.IndexInGroup, Index(locus, ids[1])));
        }

        return strands.Aggregate(Genotype.Wild(species, sex), (animal, s) => animal.With(s.Key, new(s.Value.First, s.Value.Second)));
    }

    /// <summary>An animal that may be one of several, which differ at one linkage group only.</summary>
    public static GenotypeBelief Perhaps(params Weighted<Genotype>[] cases)
    {
        var group = cases[0].Value.Species.Groups.Single(g => cases.Any(c => c.Value[g] != cases[0].Value[g]));
        return GenotypeBelief.Certain(cases[0].Value).With(group, cases.Select(c => new Weighted<Diplotype>(c.Value[group], c.Weight)));
    }

    /// <summary>A possible het: one copy with a chance, else none.</summary>
    public static GenotypeBelief PossibleHet(Species species, Sex sex, string alleleId, Probability chance) => Perhaps(
        new(Animal(species, sex, $"{alleleId}/+"), chance), new(Genotype.Wild(species, sex), chance.Complement));

    /// <summary>A want of certain pairs of alleles, all of which must be there: <c>clown/clown</c>.</summary>
    public static Want Want(Species species, params string[] pairs) => Want(species, null, pairs);

    /// <summary>A want of certain pairs of alleles in one sex.</summary>
    public static Want Want(Species species, Sex? sex, params string[] pairs) => new([Alternative(species, sex, pairs)]);

    /// <summary>One alternative of a want.</summary>
    public static WantedGenotype Alternative(Species species, Sex? sex, params string[] pairs) => new(sex, pairs
        .Select(p => p.Split('/'))
        .GroupBy(ids => Mutant(species, ids[0] == Allele.WildId ? ids[1] : ids[0]).Locus)
        .Select(g => WantedPairs.Of(g.Key, g.Select(ids => (Index(g.Key, ids[0]), Index(g.Key, ids[1])))))
        .ToArray());

    /// <summary>The mutant allele of an id.</summary>
    public static Allele Mutant(Species species, string id) =>
        species.FindAllele(id) ?? throw new ArgumentException($"There is no allele '{id}'.", nameof(id));

    private static int Index(Locus locus, string id) => locus.Alleles.Single(a => a.Id == id).Index;
}
