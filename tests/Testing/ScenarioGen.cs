using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using CsCheck;

namespace Clutchwright.Testing;

/// <summary>Generates genotypes, beliefs, parents, wants, and whole questions about a cross.</summary>
public static class ScenarioGen
{
    private static readonly Probability[][] ExactWeights =
    [
        [Probability.Half, Probability.Half],
        [Probability.Ratio(2, 3), Probability.Ratio(1, 3)],
        [Probability.Ratio(1, 4), Probability.Half, Probability.Ratio(1, 4)],
    ];

    private static readonly Probability[][] InexactWeights =
    [
        [Probability.From(0.3), Probability.From(0.7)],
        [Probability.From(0.2), Probability.From(0.3), Probability.Half],
    ];

    /// <summary>Gets questions small enough that every parent, gamete and child can be written out.</summary>
    public static Gen<Scenario> Small { get; } = Draw.Gen(d => Scenario(d, d.Chance(1, 2), most: 6, cost: 1500));

    /// <summary>Gets the same with exact numbers only.</summary>
    public static Gen<Scenario> SmallExact { get; } = Draw.Gen(d => Scenario(d, exact: true, most: 6, cost: 1500));

    /// <summary>Genotypes of a species.</summary>
    public static Gen<Genotype> Genotypes(Species species) =>
        Draw.Gen(d => Genotype(d, species, d.Of(Sex.Female, Sex.Male), wild: 2));

    /// <summary>Beliefs about an animal of a species, up to three possibilities a linkage group.</summary>
    public static Gen<GenotypeBelief> Beliefs(Species species) =>
        Draw.Gen(d => Belief(d, species, d.Of(Sex.Female, Sex.Male), d.Chance(1, 2), wild: 2));

    /// <summary>Wants of a species, of up to three alternatives that may overlap.</summary>
    public static Gen<SampleWant> Wants(Species species) => Draw.Gen(d => Want(d, species));

    /// <summary>Draws a whole question.</summary>
    /// <param name="draw">The source of chance.</param>
    /// <param name="exact">Whether every number is to be an exact ratio.</param>
    /// <param name="most">The most loci.</param>
    /// <param name="cost">The most pairs of gametes over all cases of the parents.</param>
    public static Scenario Scenario(Draw draw, bool exact, int most, int cost)
    {
        var sample = SpeciesGen.Species(draw, exact, 1, most);
        var joint = draw.Chance(1, 4);
        for (var wild = 2; ; wild++)
        {
            var parents = joint ? Joint(draw, sample.Species, exact, wild) : Independent(draw, sample.Species, exact, wild);
            if (Cost(parents) <= cost || wild > 40)
            {
                draw.Count(Cost(parents));
                return new(sample, parents, Want(draw, sample.Species), draw.Of(AgeStage.Hatchling, AgeStage.Hatchling, AgeStage.Adult, AgeStage.Subadult), exact);
            }
        }
    }

    private static SampleParents Independent(Draw draw, Species species, bool exact, int wild) =>
        SampleParents.Of(Belief(draw, species, Sex.Male, exact, wild), Belief(draw, species, Sex.Female, exact, wild));

    private static SampleParents Joint(Draw draw, Species species, bool exact, int wild)
    {
        var (sire, dam) = (Genotype(draw, species, Sex.Male, wild), Genotype(draw, species, Sex.Female, wild));
        return SampleParents.Jointly(draw.Of(exact ? ExactWeights : InexactWeights)
            .Select(w => new Weighted<(Genotype, Genotype)>((Vary(draw, sire), Vary(draw, dam)), w))
            .ToArray());
    }

    private static Genotype Vary(Draw draw, Genotype genotype)
    {
        for (var i = draw.Below(3); i > 0; i--)
        {
            var group = draw.Of(genotype.Species.Groups);
            genotype = genotype.With(group, Diplotype(draw, group, wild: 2));
        }

        return genotype;
    }

    private static Genotype Genotype(Draw draw, Species species, Sex sex, int wild) => species.Groups.Aggregate(
        Genetics.Genotypes.Genotype.Wild(species, sex), (genotype, group) => genotype.With(group, Diplotype(draw, group, wild)));

    private static GenotypeBelief Belief(Draw draw, Species species, Sex sex, bool exact, int wild)
    {
        var belief = GenotypeBelief.Certain(Genotype(draw, species, sex, wild));
        foreach (var group in species.Groups.Where(_ => draw.Chance(1, 2 + wild)))
        {
            belief = belief.With(group, draw.Of(exact ? ExactWeights : InexactWeights)
                .Select(w => new Weighted<Diplotype>(Diplotype(draw, group, wild: 2), w)));
        }

        return belief;
    }

    private static Diplotype Diplotype(Draw draw, LinkageGroup group, int wild)
    {
        return new(Haplotype(), Haplotype());

        int Haplotype()
        {
            var code = 0;
            for (var i = 0; i < group.Loci.Count; i++)
            {
                if (draw.Chance(2, 2 + wild))
                {
                    code = group.With(code, i, 1 + draw.Below(group.Loci[i].Alleles.Count - 1));
                }
            }

            return code;
        }
    }

    private static SampleWant Want(Draw draw, Species species)
    {
        var alternatives = new List<SampleWant.Alternative>();
        for (var i = 1 + draw.Below(3); i > 0; i--)
        {
            var loci = species.Loci.ToList();
            var conditions = new List<SampleWant.Condition>();
            for (var j = draw.Below(4); j > 0 && loci.Count > 0; j--)
            {
                var locus = draw.Of(loci);
                loci.Remove(locus);
                conditions.Add(Condition(draw, locus));
            }

            alternatives.Add(new(draw.Chance(2, 3) ? null : draw.Of(Sex.Female, Sex.Male), conditions));
            draw.Count(1 + conditions.Count);
        }

        return new(species, alternatives);
    }

    private static SampleWant.Condition Condition(Draw draw, Locus locus)
    {
        var count = locus.Alleles.Count;
        if (locus.Group.IsSex && draw.Chance(1, 3))
        {
            return new(locus.Index, ByStrand: true, [(draw.Below(count), draw.Below(count))]);
        }

        if (draw.Chance(1, 3))
        {
            var shown = draw.Of(locus.Expressions);
            var pairs = from a in Enumerable.Range(0, count)
                        from b in Enumerable.Range(a, count - a)
                        where locus.ExpressionOf(a, b) == shown
                        select (a, b);
            return new(locus.Index, ByStrand: false, pairs.ToArray());
        }

        return new(
            locus.Index, ByStrand: false, Enumerable.Range(0, 1 + draw.Below(3)).Select(_ => (draw.Below(count), draw.Below(count))).ToArray());
    }

    private static int Cost(SampleParents parents) => (int)Math.Min(1e8, parents.Cases.Sum(c => Gametes(c.Value.Sire) * Gametes(c.Value.Dam)));

    private static double Gametes(Genotype genotype) => genotype.Species.Groups.Aggregate(1.0, (product, group) =>
        product * (genotype[group].First == genotype[group].Second ? 1 : Math.Pow(2, group.Loci.Count))
        * (group.IsSex && genotype.IsHeterogametic ? 2 : 1));
}
