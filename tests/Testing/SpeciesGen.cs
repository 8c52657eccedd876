using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;
using CsCheck;

namespace Clutchwright.Testing;

/// <summary>Generates made-up species with everything a description can hold.</summary>
public static class SpeciesGen
{
    private static readonly AgeStage[] Stages = [AgeStage.Hatchling, AgeStage.Juvenile, AgeStage.Subadult, AgeStage.Adult];

    /// <summary>Gets species of 1 to 6 loci, with exact or inexact numbers.</summary>
    public static Gen<SampleSpecies> Any { get; } = Draw.Gen(d => Species(d, d.Chance(1, 2), least: 1, most: 6));

    /// <summary>Gets species of 1 to 6 loci in which every number is an exact ratio.</summary>
    public static Gen<SampleSpecies> Exact { get; } = Draw.Gen(d => Species(d, exact: true, least: 1, most: 6));

    /// <summary>Draws a species.</summary>
    /// <param name="draw">The source of chance.</param>
    /// <param name="exact">Whether every number is to be an exact ratio.</param>
    /// <param name="least">The fewest loci.</param>
    /// <param name="most">The most loci, 6 or fewer.</param>
    public static SampleSpecies Species(Draw draw, bool exact, int least, int most)
    {
        var count = least + draw.Below(most - least + 1);
        var loci = Enumerable.Range(0, count).Select(i => Locus(draw, exact, ((char)('A' + i)).ToString())).ToArray();
        draw.Count(10 * count);
        var bare = new SpeciesDefinition("made-up", draw.Of(SexSystem.XY, SexSystem.ZW), loci);

        // Which forms there are is known only once the loci are made ready.
        var plain = Genetics.Loci.Species.From(bare);
        return new(bare with { Masks = Masks(draw, plain), Dangers = Dangers(draw, exact, plain) }, exact);
    }

    private static LocusDefinition Locus(Draw draw, bool exact, string id)
    {
        var alleles = Enumerable.Range(1, 1 + draw.Weighted(5, 2, 2)).Select(i => Allele(draw, exact, id, i)).ToArray();
        draw.Count(alleles.Length);
        return new(id, $"Locus {id}", Place(draw, exact), alleles)
        {
            Forms = alleles.Length > 1 || draw.Chance(1, 4) ? Forms(draw, id, alleles) : [],
        };
    }

    private static AlleleDefinition Allele(Draw draw, bool exact, string locus, int index)
    {
        var id = locus.ToLowerInvariant() + index;
        return new(id, id.ToUpperInvariant(), draw.Of(InheritanceMode.Recessive, InheritanceMode.IncompleteDominant, InheritanceMode.Dominant))
        {
            Penetrance = draw.Chance(4, 5) ? Probability.Certain : Share(draw, exact),
            TellableFrom = draw.Chance(4, 5) ? AgeStage.Hatchling : draw.Of(Stages),
        };
    }

    private static Placement Place(Draw draw, bool exact) => draw.Weighted(5, 3, 3) switch
    {
        0 => new Placement.Autosomal(),
        // 5,000 cM are as good as free: Haldane's function gives 1/2 to the last bit.
        1 => new Placement.Linked(draw.Of("lg1", "lg1", "lg2"), exact ? draw.Of(0.0, 5000.0) : draw.Of(0.0, 7.5, 20.0, 60.0, 5000.0)),
        _ => new Placement.SexLinked(
            Recombination(draw, exact), draw.Chance(2, 3) ? null : Recombination(draw, exact), draw.Of(1, 2)),
    };

    private static RecombinationFraction Recombination(Draw draw, bool exact) =>
        RecombinationFraction.From(exact ? draw.Of(0.0, 0.5) : draw.Of(0.0, 0.08, 0.08, 0.25, 0.4, 0.5));

    // Up to two forms, each of one or more pairs: pairs under one form look alike.
    private static FormDefinition[] Forms(Draw draw, string locus, AlleleDefinition[] alleles)
    {
        string[] ids = ["+", .. alleles.Select(a => a.Id)];
        var pairs = new List<(string First, string Second)>[] { [], [] };
        for (var a = 0; a < ids.Length; a++)
        {
            for (var b = Math.Max(a, 1); b < ids.Length; b++)
            {
                var form = draw.Weighted(3, 2, 1) - 1;
                if (form >= 0)
                {
                    pairs[form].Add(draw.Chance(1, 2) ? (ids[a], ids[b]) : (ids[b], ids[a]));
                    draw.Count();
                }
            }
        }

        return pairs
            .Select((p, i) => new FormDefinition($"form-{locus.ToLowerInvariant()}{i + 1}", $"Form {locus}{i + 1}", p)
            {
                TellableFrom = draw.Chance(4, 5) ? AgeStage.Hatchling : draw.Of(Stages),
            })
            .Where(f => f.Pairs.Count > 0)
            .ToArray();
    }

    private static List<MaskDefinition> Masks(Draw draw, Species species)
    {
        var forms = species.Loci.SelectMany(l => l.Expressions.Where(e => e.IsVisible)).Select(e => e.Id).ToList();
        var alleles = species.Loci.SelectMany(l => l.Alleles.Skip(1)).Select(a => a.Id).ToArray();
        string[] hideable = [.. alleles, .. species.Loci.Select(l => l.Id)];
        var masks = new List<MaskDefinition>();
        for (var i = draw.Weighted(3, 3, 2, 2); i > 0 && forms.Count > 0; i--)
        {
            var by = new List<string>();
            for (var j = 1 + draw.Below(2); j > 0 && forms.Count > 0; j--)
            {
                var at = draw.Below(forms.Count);
                by.Add(forms[at]);
                forms.RemoveAt(at);
            }

            masks.Add(new(by, draw.Chance(1, 2) ? null : Some(draw, hideable, 3))
            {
                Through = draw.Chance(1, 2) ? [] : Some(draw, alleles, 2),
                Faintly = draw.Chance(1, 2) ? [] : Some(draw, alleles, 2),
            });
            draw.Count(3);
        }

        return masks;
    }

    private static List<DangerDefinition> Dangers(Draw draw, bool exact, Species species)
    {
        var dangers = new List<DangerDefinition>();
        for (var i = draw.Weighted(3, 3, 2); i > 0; i--)
        {
            var loci = species.Loci.ToList();
            var when = new List<GenotypeCondition>();
            for (var j = 1 + draw.Below(2); j > 0 && loci.Count > 0; j--)
            {
                var locus = draw.Of(loci);
                loci.Remove(locus);
                var (first, second) = (locus.Alleles[draw.Below(locus.Alleles.Count)], locus.Alleles[1 + draw.Below(locus.Alleles.Count - 1)]);
                when.Add(draw.Chance(1, 2) ? new GenotypeCondition.Carries(second.Id) : new GenotypeCondition.IsPair(first.Id, second.Id));
            }

            dangers.Add(new($"danger{i}", when, draw.Of(Severity.Watch, Severity.Suffering, Severity.Lethal), "Harms.", Evidence.CommonPractice)
            {
                Sex = draw.Chance(3, 4) ? null : draw.Of(Sex.Female, Sex.Male),
                Viability = draw.Chance(1, 4) ? Viability.Full : new(Stage(), Stage(), Stage()),
            });
            draw.Count(3);
        }

        return dangers;

        Probability Stage() => draw.Weighted(3, 1, 2) switch
        {
            0 => Probability.Certain,
            1 => Probability.Impossible,
            _ => Share(draw, exact),
        };
    }

    private static Probability Share(Draw draw, bool exact) => exact
        ? draw.Of(Probability.Half, Probability.Ratio(1, 3), Probability.Ratio(3, 4))
        : Probability.From(draw.Of(0.15, 0.5, 0.9));

    private static string[] Some(Draw draw, string[] items, int most) =>
        Enumerable.Range(0, 1 + draw.Below(most)).Select(_ => draw.Of(items)).Distinct(StringComparer.Ordinal).ToArray();
}
