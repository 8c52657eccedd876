using Clutchwright.Catalogue;
using Clutchwright.Catalogue.Entries;
using Clutchwright.Catalogue.Looks;
using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Desk.Words;

/// <summary>Puts genotypes, looks, evidence and dangers into words, once for every face.</summary>
internal sealed class Wording(SpeciesCatalogue catalogue)
{
    public AnimalWords Animal(GenotypeBelief belief)
    {
        var words = catalogue.Trade.Words(belief).Where(w => w.Kind != TradeWordKind.Sex).ToArray();
        var inSight = catalogue.Species.SeenOf(words.Where(w => w.IsSeen).Select(w => w.Form).OfType<Expression>().ToArray());
        var parts = words
            .Select(w => new WordPart(
                w.Text,
                w.IsSeen && (w.Form is null || inSight.Contains(w.Form)),
                w.Chance.IsCertain ? null : w.Chance,
                w.Allele?.Id ?? (w.Form is { IsVisible: true } form ? form.Id : null)))
            .ToArray();
        return new(
            parts.Length == 0 ? [new WordPart(catalogue.NormalName, IsSeen: true, null, null)] : parts,
            GeneticNotation.Write(belief.MostLikely()));
    }

    /// <summary>One pair of alleles in trade words.</summary>
    public string Pair(HiddenChance hidden) => Pair(hidden.Locus, hidden.First, hidden.Second, hidden.IsOrdered);

    /// <summary>One pair of alleles in trade words; by sex chromosome where the order counts.</summary>
    public string Pair(Locus locus, int first, int second, bool isOrdered)
    {
        if (first == 0 && second == 0)
        {
            return catalogue.NormalName;
        }

        var two = catalogue.Species.SexSystem.Heterogametic();
        var genotype = Genotype.Wild(catalogue.Species, isOrdered ? two : two.Opposite()).With(locus, first, second);
        return Text(genotype);
    }

    public string Text(Genotype genotype) =>
        catalogue.Trade.Join([.. catalogue.Trade.Words(genotype).Where(w => w.Kind != TradeWordKind.Sex)]) is { Length: > 0 } text
            ? text
            : catalogue.NormalName;

    /// <summary>The name of what is seen.</summary>
    public string Look(IReadOnlyList<Expression> seen) => catalogue.Trade.WriteLook(seen);

    /// <summary>The trade's names for the forms together, and what is left over beside them; <c>null</c> where there is none.</summary>
    public string? Label(IReadOnlyList<Expression> seen)
    {
        var combinations = catalogue.CombinationsOf(seen);
        if (combinations.Count == 0)
        {
            return null;
        }

        var best = combinations.OrderByDescending(c => c.Expressions.Count).ThenBy(c => c.Name, StringComparer.Ordinal).First();
        var rest = seen.Except(best.Expressions).ToArray();
        return rest.Length == 0 ? best.Name : $"{best.Name} {Look(rest)}";
    }

    public LookWords LookByAge(IReadOnlyList<Expression> seen)
    {
        var stages = new List<StageWords>();
        Appearance? last = null;
        foreach (var stage in Enum.GetValues<AgeStage>())
        {
            if (catalogue.LookOf(seen, stage) is { } look)
            {
                last = look;
                stages.Add(new(
                    stage.ToString().ToLowerInvariant(),
                    (int)Math.Round(catalogue.Stages.BeginsAt(stage)),
                    Tone(look.Tones.Ground),
                    Tone(look.Tones.Pattern),
                    Tone(look.Tones.Eye)));
            }
        }

        if (last is null)
        {
            return new(Look(seen), false, [], [], [], null, null, []);
        }

        var words = new List<string>();
        Add("Ground", last.Ground);
        Add("Pattern", last.Form);
        Add("Head", last.Head);
        Add("White", last.White is null or WhiteExtent.None ? null : last.White.Value.ToString().ToLowerInvariant());
        Add(null, last.Note);
        foreach (var unknown in last.Unknown)
        {
            words.Add($"What {unknown.Name} does to this look is not recorded, and is left out.");
        }

        var composed = last.ComposedFrom.Count > 0
            ? last.ComposedFrom.Select(e => e.Of).ToArray()
            : last.IsRecorded ? [] : seen.Select(e => e.Name).ToArray();
        return new(
            Look(seen),
            last.IsRecorded,
            composed,
            stages,
            words,
            last.Varies?.ToString().ToLowerInvariant(),
            last.Evidence is { } evidence ? Grade(evidence) : null,
            last.Evidence is { } known ? Sources(known) : []);

        void Add(string? heading, string? text)
        {
            if (!string.IsNullOrWhiteSpace(text))
            {
                words.Add(heading is null ? Sentence(text) : $"{heading}: {text}.".Replace("..", ".", StringComparison.Ordinal));
            }
        }
    }

    public Warning Danger(Danger danger, string? addition = null) => new(
        danger.Id,
        danger.Severity.ToString().ToLowerInvariant(),
        addition is null ? Sentence(danger.Text) : $"{Sentence(danger.Text)} {addition}",
        Grade(danger.Evidence),
        Sources(danger.Evidence));

    /// <summary>The genotype of a danger in trade words.</summary>
    public string Condition(Danger danger)
    {
        var parts = danger.Definition.When.Select(w => w switch
        {
            GenotypeCondition.Carries carries => $"any {Name(carries.AlleleId)}",
            GenotypeCondition.IsPair pair when string.Equals(pair.FirstId, pair.SecondId, StringComparison.Ordinal) => $"two copies of {Name(pair.FirstId)}",
            GenotypeCondition.IsPair pair => $"{Name(pair.FirstId)}/{Name(pair.SecondId)}",
            _ => w.ToString(),
        });
        return string.Join(" with ", parts);

        string Name(string id) => catalogue.Species.FindAllele(id)?.Name ?? id;
    }

    /// <summary>Citations of the sources of a claim, with how far the project has read each.</summary>
    public IReadOnlyList<string> Sources(Evidence evidence) => catalogue.SourcesOf(evidence)
        .Select(source => (source.Doi is null ? source.Citation : $"{source.Citation} doi {source.Doi}") + (source.Seen switch
        {
            SourceReading.Reference => " (reference seen)",
            SourceReading.Recalled => " (from memory)",
            SourceReading.Abstract => " (abstract read)",
            _ => string.Empty,
        }))
        .ToArray();

    public static string Grade(Evidence evidence) => evidence.Grade switch
    {
        EvidenceGrade.Published => "published",
        EvidenceGrade.CommonPractice when evidence.Sources.Count > 0 => "common practice",
        EvidenceGrade.CommonPractice => "common practice, no source",
        EvidenceGrade.Reported => "reported, not confirmed",
        EvidenceGrade.Disputed => "disputed",
    };

    public static string Inheritance(Allele allele)
    {
        var mode = allele.Mode switch
        {
            InheritanceMode.Recessive => "recessive",
            InheritanceMode.IncompleteDominant => "incomplete dominant",
            InheritanceMode.Dominant => "dominant",
            _ => "wild type",
        };
        return allele.Locus.Placement is Placement.SexLinked ? $"sex-linked, {mode}" : mode;
    }

    public static string Sentence(string text)
    {
        var trimmed = text.Trim();
        return trimmed.Length == 0 ? trimmed : Capital(trimmed) + (trimmed[^1] is '.' or '!' or '?' ? string.Empty : ".");
    }

    /// <summary>A text that is not empty, its first letter a capital.</summary>
    public static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static ToneWords Tone(Tone tone) => new(tone.Name, tone.Srgb);
}
