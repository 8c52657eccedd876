using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Truth;

namespace Clutchwright.Reference.Tests.Beliefs;

/// <summary>A case in our engine's terms, and what the engine says of it.</summary>
/// <remarks>
/// Where the loci lie on the X and the Y never carries, every founder male is given parents: a sire in whom all mutants are ruled out, whose Y he has,
/// and a dam of whom nothing is known, whose X he has. That such sires carry nothing is a record too, and is taken out of the likelihood.
/// </remarks>
internal sealed class EngineCase
{
    private readonly GeneticCase _case;
    private readonly Species _species;
    private readonly double _addedLogLikelihood;

    private EngineCase(GeneticCase genetic, Func<int, Placement> placements)
    {
        _case = genetic;
        _species = Species.From(new SpeciesDefinition(
            "made-up", SexSystem.XY, [.. genetic.Loci.Select((locus, l) => Describe(locus, l, placements(l)))]));
        var animals = new List<RecordedAnimal>();
        for (var i = 0; i < genetic.Family.Count; i++)
        {
            animals.Add(Record(i));
        }

        if (genetic.IsSexLinked)
        {
            var wild = genetic.Loci.Sum(l => 2 * Math.Log(l.Frequencies[0]));
            foreach (var i in Enumerable.Range(0, genetic.Family.Count).Where(i => genetic.Family.IsFounder(i) && genetic.Family.Sexes[i] == Sex.Male))
            {
                animals.Add(new($"sire of {i}", Sex.Male, [new Observation.RuledOut([.. _species.Loci.SelectMany(l => l.Alleles.Skip(1))])]));
                animals.Add(new($"dam of {i}", Sex.Female, []));
                _addedLogLikelihood += wild;
            }
        }

        Beliefs = PedigreeBeliefs.Of(_species, animals, SettingsOf(genetic, _species));
    }

    /// <summary>Gets the engine's answer.</summary>
    public PedigreeBeliefs Beliefs { get; }

    /// <summary>Gets the natural logarithm of the likelihood of the case.</summary>
    public double LogLikelihood => Beliefs.LogLikelihood - _addedLogLikelihood;

    /// <summary>Has the engine reckon a case.</summary>
    /// <param name="genetic">The case.</param>
    /// <param name="recombination">The recombination fraction in place of the case's own.</param>
    public static EngineCase Of(GeneticCase genetic, double? recombination = null)
    {
        var r = recombination ?? genetic.Recombination;

        // Haldane 1919: r = (1 - e^-2d) / 2, d in morgans.
        return new(genetic, l => genetic.IsSexLinked ? new Placement.SexLinked(RecombinationFraction.Complete)
            : genetic.Loci.Count == 1 || r >= 0.5 ? new Placement.Autosomal()
            : new Placement.Linked("pair", l == 0 ? 0 : -50 * Math.Log(1 - (2 * r))));
    }

    /// <summary>Has the engine reckon a case of one locus as if it lay on both sex chromosomes.</summary>
    /// <param name="genetic">The case; an autosomal one.</param>
    /// <param name="recombination">The recombination fraction with the sex-determining region, in males.</param>
    public static EngineCase OnSexChromosomes(GeneticCase genetic, RecombinationFraction recombination) =>
        new(genetic, _ => new Placement.SexLinked(recombination));

    /// <summary>How likely an animal has each number of copies of an allele.</summary>
    public AlleleCopies Copies(int animal, int locus, int allele)
    {
        double two = 0, one = 0, none = 0;
        var place = _species.Loci[locus];
        foreach (var (diplotype, weight) in Beliefs[Key(animal)].Genotype[place.Group])
        {
            // Of a male whose locus lies on the X the first counts, the one on the X.
            var (a, b) = place.PairOf(diplotype);
            var copies = (a == allele ? 1 : 0) + (b == allele && !_case.IsHemizygous(animal) ? 1 : 0);
            _ = copies == 2 ? two += weight.Value : copies == 1 ? one += weight.Value : none += weight.Value;
        }

        return new(two, one, none);
    }

    private static string Key(int animal) => $"animal {animal}";

    private static BeliefSettings SettingsOf(GeneticCase genetic, Species species) => new()
    {
        Frequencies = species.Loci
            .SelectMany((locus, l) => locus.Alleles.Skip(1).Select(a => (Allele: a, Share: genetic.Loci[l].Frequencies[a.Index])))
            .ToDictionary(f => f.Allele, f => f.Share),
        Misreading = genetic.Loci[0].Misread,
    };

    private static LocusDefinition Describe(LocusModel locus, int index, Placement placement)
    {
        var alleles = Enumerable.Range(1, locus.AlleleCount - 1).Select(a => new AlleleDefinition(Id(index, a), Id(index, a), InheritanceMode.Recessive));

        // A pair of mutants that looks wild is a form that cannot be told yet.
        var forms = locus.Genotypes
            .Where(g => g.Second > 0 && (locus.LookOf(g.First, g.Second) > 0 || g.First > 0))
            .GroupBy(g => locus.LookOf(g.First, g.Second))
            .Select(g => new FormDefinition(Form(index, g.Key), Form(index, g.Key), [.. g.Select(p => (Id(index, p.First), Id(index, p.Second)))])
            {
                TellableFrom = g.Key == 0 ? AgeStage.Adult : AgeStage.Hatchling,
            });
        return new($"locus{index}", $"Locus {index}", placement, [.. alleles]) { Forms = [.. forms] };
    }

    private static string Id(int locus, int allele) => allele == 0 ? Allele.WildId : $"m{locus}{allele}";

    private static string Form(int locus, int look) => $"look{locus}{look}";

    private RecordedAnimal Record(int animal)
    {
        var family = _case.Family;
        var hasAddedParents = _case.IsSexLinked && family.IsFounder(animal) && family.Sexes[animal] == Sex.Male;
        return new(Key(animal), family.Sexes[animal], Seen(animal))
        {
            Sire = hasAddedParents ? $"sire of {animal}" : family.IsFounder(animal) ? null : Key(family.Sires[animal]),
            Dam = hasAddedParents ? $"dam of {animal}" : family.IsFounder(animal) ? null : Key(family.Dams[animal]),
        };
    }

    private IReadOnlyList<Observation> Seen(int animal)
    {
        // A look is recorded at every locus or at none.
        if (_case.Seen.All(s => s[animal] is null))
        {
            return [];
        }

        Expression[] forms = [.. _case.Seen
            .Select((s, l) => (Locus: l, Look: s[animal]!.Value))
            .Where(s => s.Look > 0)
            .Select(s => _species.FindExpression(Form(s.Locus, s.Look))!)];
        return [new Observation.Seen(forms, GenotypeBelief.Wild(_species, _case.Family.Sexes[animal]))];
    }
}
