using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Testing;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>A small species with one locus of each kind, and short ways to write records of it.</summary>
internal static class Snakes
{
    public static Species Snake { get; } = Species.From(new(
        "made-up",
        SexSystem.XY,
        [
            Describe.Free("clown", Describe.Recessive("clown")),
            Describe.Free("pastel", Describe.Incomplete("pastel")),
            Describe.Free("white", Describe.Recessive("ivory")),
            Describe.Free("two", Describe.Incomplete("les"), Describe.Incomplete("moj")),
            Describe.Free("late", Describe.Dominant("late") with { TellableFrom = AgeStage.Adult }),
            Describe.Free("rare", Describe.Dominant("rare") with { Penetrance = Probability.Ratio(3, 4) }),
            Describe.SexLinked("banana", 0.08, Describe.Incomplete("banana")),
            Describe.Free("bold", Describe.Dominant("bold")),
        ])
    {
        Masks = [new(["ivory"], null)],
    });

    /// <summary>The same with full sex linkage, so that what is on the X stays there.</summary>
    public static Species Linked { get; } = Species.From(new("made-up", SexSystem.XY, [Describe.SexLinked("x", 0.0, Describe.Dominant("x"))]));

    public static Observation.Seen Normal(Species? species = null) => new([], GenotypeBelief.Wild(species ?? Snake, Sex.Female));

    public static Observation.Seen Seen(string allele, int first = 0, int second = 1, Species? species = null)
    {
        var locus = (species ?? Snake).FindAllele(allele)!.Locus;
        return new([locus.ExpressionOf(first, second)], GenotypeBelief.Certain(Genotype.Wild(species ?? Snake, Sex.Female).With(locus, first, second)));
    }

    /// <summary>Words without doubt: one copy, or the pair given.</summary>
    public static Observation.Said Told(string allele, int first = 0, int second = 1, Sex sex = Sex.Female, Species? species = null) => new(
        GenotypeBelief.Certain(Genotype.Wild(species ?? Snake, sex).With((species ?? Snake).FindAllele(allele)!.Locus, first, second)), StatementBasis.Told);

    public static Observation.Said Chance(string allele, int numerator, int denominator) => new(
        Describe.PossibleHet(Snake, Sex.Female, allele, Probability.Ratio(numerator, denominator)), StatementBasis.Told);

    public static Observation.RuledOut RuledOut(params string[] alleles) => new([.. alleles.Select(a => Snake.FindAllele(a)!)]);

    public static Observation.DnaTest Test(string allele, int copies, double sensitivity, double specificity) => new(
        Snake.FindAllele(allele)!, copies, Probability.From(sensitivity), Probability.From(specificity));

    public static RecordedAnimal Animal(string key, Sex? sex, params Observation[] observations) => new(key, sex, observations);

    public static RecordedAnimal Young(string key, string? sire, string? dam, params Observation[] observations) => new(key, null, observations) { Sire = sire, Dam = dam };

    public static PedigreeBeliefs Of(params RecordedAnimal[] animals) => PedigreeBeliefs.Of(Snake, animals);

    public static string Carries(PedigreeBeliefs beliefs, string key, string allele) => ChanceOf(beliefs, key, allele).ToString();

    public static Probability ChanceOf(PedigreeBeliefs beliefs, string key, string allele) =>
        beliefs[key].Genotype.ChanceOfCarrying(beliefs.Species.FindAllele(allele)!);

    /// <summary>The chance of a pair of alleles at a locus.</summary>
    public static string Pair(PedigreeBeliefs beliefs, string key, string allele, int first, int second) => beliefs[key].Genotype
        .PairsAt(beliefs.Species.FindAllele(allele)!.Locus).Where(p => p.Value == (first, second)).Select(p => p.Weight.ToString()).SingleOrDefault("0");
}
