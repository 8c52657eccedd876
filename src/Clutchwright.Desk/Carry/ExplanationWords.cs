using System.Globalization;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Pedigrees.Beliefs.Explanations;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Carry;

/// <summary>Puts the explanation of a belief into sentences.</summary>
internal sealed class ExplanationWords(OpenCatalogue catalogue, StockRecord record, BeliefExplanation explanation)
{
    private const int MostNamed = 3;

    private static readonly string[] Nearnesses = ["of its own", "of its parents", "of its young", "of its sibs", "of farther kin"];

    /// <summary>All of it, from what was before any record to the chance by all records.</summary>
    public IReadOnlyList<WhyStep> All()
    {
        var steps = new List<WhyStep>();
        if (explanation.BeforeStart is { } before)
        {
            steps.Add(new("Before anything is recorded:", before));
        }

        steps.Add(new(Beginning(), explanation.Prior));
        steps.AddRange(explanation.Steps.Select(s => new WhyStep(Sentence(s), s.Chance)));
        steps.AddRange(explanation.NotCounted.Select(r => new WhyStep(
            $"{Upper(Said(r))}: not counted again, since the records of its kin already say what can be known.", null)));
        if (explanation.Silent.Count > 0)
        {
            steps.Add(new(explanation.Silent.Count == 1 ? "1 other record tells nothing." : $"{explanation.Silent.Count:N0} other records tell nothing.", null));
        }

        if (explanation.HasAllelesLetIn)
        {
            steps.Add(new("Some animal must have carried what nobody spoke of: the fewest such carriers are assumed.", null));
        }

        steps.Add(new($"So the chance that it carries {Name()} is", explanation.Chance));
        return steps;
    }

    /// <summary>One step.</summary>
    public string Sentence(ExplanationStep step) => $"{Upper(Subject(step))}: {Effect(step)}.";

    /// <summary>Something that would tell.</summary>
    public static string Sentence(StockRecord record, SettlingRecord settling) => settling.Kind switch
    {
        SettlingKind.Look => $"Look at {NameOf(record[settling.Animal].Animal)}.",
        SettlingKind.DnaTest => $"Have a shed tested for {settling.Allele?.Name}.",
        _ => $"Put it to a visual {settling.Allele?.Name}"
            + (settling.Mates.Count > 0 ? $" ({string.Join(", ", settling.Mates.Take(MostNamed).Select(m => record[m].Animal.Tag))})" : string.Empty)
            + $" and hatch {settling.Young:N0} young.",
    };

    private string Beginning()
    {
        if (explanation.Start is { } start)
        {
            return $"{Upper(Said(start))}: the start.";
        }

        var animal = record[explanation.Key].Animal;
        if (animal.SireId is null && animal.DamId is null && animal.PossibleSireIds.Count == 0)
        {
            return "Before anything is recorded:";
        }

        var named = explanation.ParentStarts.Take(MostNamed).Select(r => $"{NameOf(record[r.Key].Animal)} {Said(r)}").ToArray();
        var more = explanation.ParentStarts.Count - named.Length;
        return named.Length == 0
            ? "By its parents, before any other record:"
            : $"By its parents and theirs, before any other record ({string.Join("; ", named)}{(more > 0 ? $"; and {more:N0} more" : string.Empty)}):";
    }

    private string Subject(ExplanationStep step)
    {
        switch (step.Kind)
        {
            case StepKind.Own:
                return Said(step.Records[0]);
            case StepKind.Kin:
                return $"{Kin(step.Records[0].Key)} {string.Join(", ", step.Records.Select(Said))}";
            case StepKind.Clutch:
                return $"{Clutch(step.Records)}: {Count(step.Records)}";
            default:
                var near = step.Records.CountBy(r => Nearness(r.Key)).OrderBy(n => n.Key).ToArray();
                return near.Length == 1
                    ? $"{step.Records.Count:N0} records {Nearnesses[near[0].Key]} together"
                    : $"{step.Records.Count:N0} records together, {string.Join(", ", near.Select(n => $"{n.Value:N0} {Nearnesses[n.Key]}"))}";
        }
    }

    private int Nearness(string key)
    {
        var (own, other) = (record[explanation.Key].Animal, record[key].Animal);
        return key == explanation.Key ? 0
            : IsParent(own, other) ? 1
            : IsParent(other, own) ? 2
            : (own.SireId is { } sire && sire == other.SireId) || (own.DamId is { } dam && dam == other.DamId) ? 3
            : 4;

        static bool IsParent(Animal of, Animal parent) => parent.AnimalId == of.SireId || parent.AnimalId == of.DamId || of.PossibleSireIds.Contains(parent.AnimalId);
    }

    private string Effect(ExplanationStep step)
    {
        if (step.Factor >= ExplanationStep.Decisive)
        {
            return step.Chance.Value >= 1.0 - (1.0 / ExplanationStep.Decisive) ? "makes it certain" : "so an animal of its line must carry it";
        }

        if (step.Factor <= 1.0 / ExplanationStep.Decisive)
        {
            return "rules it out";
        }

        return Math.Abs(step.Factor - 1.0) < 1e-6 ? "tells nothing by itself, only with other records"
            : step.Factor is > 0.95 and < 1.05 ? "tells next to nothing"
            : step.Factor > 1.0 ? $"{Times(step.Factor)} times as likely if it carries {Name()}"
            : $"{Times(1.0 / step.Factor)} times as likely if it does not carry {Name()}";
    }

    private string Name() => explanation.Claim.About?.Name ?? "it";

    private string Said(RecordPlace place)
    {
        var statement = record[place.Key].Read.Statements[place.Index];
        var words = statement.Kind switch
        {
            StatementKind.LookedAtNormal => "looked at and normal",
            StatementKind.DnaTest when statement.Test is { } test => $"DNA test for {statement.Text} {(test.Found ? "found it" : "did not find it")}",
            StatementKind.RuledOut => $"{statement.Text} ruled out",
            StatementKind.ProvenByBreeding => $"{statement.Text} proven by breeding",
            _ => $"{StatementWords.Of(statement.Kind)} {statement.Text}",
        };
        return statement.By is { } by ? $"{words} by {by}" : words;
    }

    private string Kin(string key)
    {
        var (own, other) = (record[explanation.Key].Animal, record[key].Animal);
        var part = other.AnimalId == own.SireId ? "its sire "
            : other.AnimalId == own.DamId ? "its dam "
            : own.PossibleSireIds.Contains(other.AnimalId) ? "its possible sire "
            : string.Empty;
        return part + NameOf(other);
    }

    private string Clutch(IReadOnlyList<RecordPlace> records)
    {
        var young = record[records[0].Key].Animal;
        var self = record[explanation.Key].Animal;
        var when = young.Hatched is { } hatched
            ? hatched.Earliest.Year == hatched.Latest.Year ? $"{hatched.Earliest.Year.ToString(CultureInfo.InvariantCulture)} " : $"{hatched.Words} "
            : string.Empty;
        if (young.SireId == self.AnimalId || young.DamId == self.AnimalId || young.PossibleSireIds.Contains(self.AnimalId))
        {
            var mate = young.DamId == self.AnimalId ? Sires(young) : young.DamId is { } dam ? Name(dam) : "an unknown dam";
            return $"its {when}clutch with {mate}";
        }

        var isOwn = young.SireId == self.SireId && young.DamId == self.DamId && young.PossibleSireIds.SequenceEqual(self.PossibleSireIds);
        return isOwn
            ? young.Hatched == self.Hatched ? "its clutchmates" : $"the {when}clutch of the same parents"
            : $"the {when}clutch of {Sires(young)} and {(young.DamId is { } other ? Name(other) : "an unknown dam")}";
    }

    private string Sires(Animal young) => young.SireId is { } sire ? Name(sire)
        : young.PossibleSireIds.Count > 0 ? string.Join(" or ", young.PossibleSireIds.Select(Name))
        : "an unknown sire";

    private string Count(IReadOnlyList<RecordPlace> records)
    {
        var group = explanation.Claim.Group;
        var looks = records
            .Select(r => record[r.Key].Read.Observations[r.Index])
            .OfType<Observation.Seen>()
            .Select(s => string.Join(" ", s.Forms.Where(f => f.Locus.Group == group).Select(f => f.Name)))
            .ToArray();
        var young = looks.Length == 0 ? $"{records.Count:N0} records" : looks.Length == 1 ? "1 young" : $"{looks.Length:N0} young";
        var forms = looks.Where(l => l.Length > 0).GroupBy(l => l, StringComparer.Ordinal).OrderByDescending(g => g.Count()).Select(g => $"{g.Count():N0} {g.Key}").ToArray();
        return looks.Length == 0 ? young
            : forms.Length == 0 ? $"{young}, none {FormName()}"
            : $"{string.Join(", ", forms)} of {young}";
    }

    private string FormName() => explanation.Claim.About is { } allele ? Words.Wording.Sentence(allele.Name).TrimEnd('.') : catalogue.Catalogue.NormalName;

    private string Name(AnimalId id) => NameOf(record[StockRecord.Key(id)].Animal);

    private static string NameOf(Animal animal) => string.IsNullOrEmpty(animal.Name) ? animal.Tag : $"{animal.Name} ({animal.Tag})";

    private static string Times(double factor) => factor switch
    {
        < 9.95 => factor.ToString("0.#", CultureInfo.CurrentCulture),
        < 1e6 => Math.Round(factor).ToString("N0", CultureInfo.CurrentCulture),
        _ => "over a million",
    };

    private static string Upper(string text) => char.ToUpper(text[0], CultureInfo.CurrentCulture) + text[1..];
}
