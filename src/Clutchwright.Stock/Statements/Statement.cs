using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;

namespace Clutchwright.Stock.Statements;

/// <summary>What somebody said of an animal, kept as it was said. What follows from it is computed elsewhere and never
/// written here. It changes only through the deeds.</summary>
public sealed class Statement
{
    public const int MaxTextLength = 1_000;
    public const int MaxByLength = 200;

    /// <summary>How "looked at, shows nothing" is written in a file.</summary>
    public const string Normal = "normal";

    internal Statement(StatementId id, AnimalId animal, StatementEntry entry)
    {
        StatementId = id;
        AnimalId = animal;
        var tidy = entry.Tidy();
        Kind = tidy.Kind;
        Text = tidy.Text;
        When = tidy.When;
        Confidence = tidy.Confidence;
        By = tidy.By;
        TestFound = tidy.Test?.Found;
        TestSensitivity = tidy.Test?.Sensitivity;
        TestSpecificity = tidy.Test?.Specificity;
        SearchText = TextRules.Fold(Text);
    }

    internal Statement(StatementSnapshot snapshot)
    {
        StatementId = new StatementId(snapshot.Id);
        Take(snapshot);
    }

    private Statement()
    {
    }

    public StatementId StatementId { get; private set; }

    /// <summary>The animal it is about.</summary>
    public AnimalId AnimalId { get; private set; }

    public StatementKind Kind { get; private set; }

    /// <summary>Trade text, as it was entered but for space around it; empty for <see cref="StatementKind.LookedAtNormal"/>.</summary>
    public string Text { get; private set; } = "";

    public DateRange? When { get; private set; }

    /// <summary>How sure the person is of it, above 0 and at most 1.</summary>
    public double Confidence { get; private set; }

    /// <summary>Who says so; null if not recorded.</summary>
    public string? By { get; private set; }

    /// <summary>The result, for a DNA test; null otherwise.</summary>
    public DnaTest? Test => TestOf(TestFound, TestSensitivity, TestSpecificity);

    /// <summary>When it was withdrawn (UTC); null if it stands.</summary>
    public DateTime? WithdrawnAt { get; private set; }

    internal bool? TestFound { get; private set; }

    internal double? TestSensitivity { get; private set; }

    internal double? TestSpecificity { get; private set; }

    internal string SearchText { get; private set; } = "";

    internal Guid Version { get; private set; }

    public StatementEntry ToEntry() => new() { Kind = Kind, Text = Text, When = When, Confidence = Confidence, By = By, Test = Test };

    public override string ToString() => StatementWords.Of(Kind, Text);

    internal static DnaTest? TestOf(bool? found, double? sensitivity, double? specificity) =>
        found is null ? null : new DnaTest(found.Value, sensitivity!.Value, specificity!.Value);

    /// <summary>The name of the column of a file that such statements stand in.</summary>
    internal static string ColumnOf(StatementKind kind) => kind switch
    {
        StatementKind.Seen or StatementKind.LookedAtNormal => "seen",
        StatementKind.Told => "told",
        StatementKind.RuledOut => "ruled_out",
        StatementKind.DnaTest => "dna_test",
        StatementKind.ProvenByBreeding => "proven",
    };

    internal static IEnumerable<FieldProblem> WhyNot(StatementEntry given, CheckTradeText check)
    {
        var entry = given.Tidy();
        if (!Enum.IsDefined(entry.Kind))
        {
            yield return new(AnimalField.Statements, new StatementProblem.KindUnknown(entry.Kind.ToString()));
            yield break;
        }

        if (WhyNotText(entry, check) is { } problem)
        {
            yield return new(FieldOf(entry.Kind), problem);
        }

        if (entry.By is { } by && (by.Length > MaxByLength || !TextRules.IsPlainLine(by)))
        {
            yield return new(AnimalField.Statements, new StatementProblem.ByInvalid(MaxByLength));
        }

        if (entry.Confidence is not (> 0.0 and <= 1.0))
        {
            yield return new(AnimalField.Statements, new StatementProblem.ConfidenceOutOfRange(entry.Confidence));
        }

        if ((entry.Kind == StatementKind.DnaTest) != (entry.Test is not null))
        {
            yield return new(AnimalField.Statements, new StatementProblem.TestNotFitting(entry.Kind));
        }

        foreach (var rate in entry.Test is { } test ? new[] { test.Sensitivity, test.Specificity } : [])
        {
            if (rate is not (> 0.0 and <= 1.0))
            {
                yield return new(AnimalField.Statements, new StatementProblem.TestRateOutOfRange(rate));
            }
        }
    }

    internal void Withdraw(DateTime when) => WithdrawnAt = when;

    internal void NewVersion() => Version = Guid.CreateVersion7();

    internal void Take(StatementSnapshot snapshot)
    {
        AnimalId = new AnimalId(snapshot.Animal);
        Kind = snapshot.Kind;
        Text = snapshot.Text;
        When = snapshot.When?.ToRange();
        Confidence = snapshot.Confidence;
        By = snapshot.By;
        TestFound = snapshot.Test?.Found;
        TestSensitivity = snapshot.Test?.Sensitivity;
        TestSpecificity = snapshot.Test?.Specificity;
        WithdrawnAt = snapshot.WithdrawnAt;
        SearchText = TextRules.Fold(Text);
    }

    private static AnimalField FieldOf(StatementKind kind) => kind switch
    {
        StatementKind.Seen or StatementKind.LookedAtNormal => AnimalField.Seen,
        StatementKind.Told => AnimalField.Told,
        StatementKind.RuledOut => AnimalField.RuledOut,
        StatementKind.DnaTest or StatementKind.ProvenByBreeding => AnimalField.Statements,
    };

    private static StatementProblem? WhyNotText(StatementEntry entry, CheckTradeText check)
    {
        if (entry.Kind == StatementKind.LookedAtNormal)
        {
            return entry.Text.Length > 0 ? new StatementProblem.TextNotWanted(entry.Text) : null;
        }

        if (entry.Text.Length == 0)
        {
            return new StatementProblem.TextMissing(entry.Kind);
        }

        if (entry.Text.Length > MaxTextLength || !TextRules.IsPlainLine(entry.Text))
        {
            return new StatementProblem.TextInvalid(MaxTextLength);
        }

        return check(ColumnOf(entry.Kind), entry.Text) is { } trade ? new StatementProblem.TextUnreadable(entry.Text, trade) : null;
    }
}
