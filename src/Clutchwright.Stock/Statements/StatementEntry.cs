using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Statements;

/// <summary>What somebody says of an animal, as it is entered. <see cref="StatementKind.Seen"/> with the text
/// <c>normal</c> is taken as <see cref="StatementKind.LookedAtNormal"/>.</summary>
public sealed record StatementEntry
{
    public required StatementKind Kind { get; init; }

    /// <summary>Trade text; empty if and only if the animal was looked at and shows nothing.</summary>
    public string Text { get; init; } = "";

    /// <summary>When it was seen, said or tested; null if not known.</summary>
    public DateRange? When { get; init; }

    /// <summary>How sure the person is of it, above 0 and at most 1.</summary>
    public double Confidence { get; init; } = 1.0;

    /// <summary>Who says so; null if not recorded.</summary>
    public string? By { get; init; }

    /// <summary>For <see cref="StatementKind.DnaTest"/> only, and there required.</summary>
    public DnaTest? Test { get; init; }

    /// <summary>Whether the text and the kind are all that is said, as in a plain column of a file.</summary>
    internal bool IsPlain => When is null && Confidence == 1.0 && By is null && Test is null;

    /// <summary>The same statement as the book keeps it.</summary>
    internal StatementEntry Tidy()
    {
        var text = Text.Trim();
        var isNormal = Kind == StatementKind.LookedAtNormal
            || (Kind == StatementKind.Seen && string.Equals(text, Statement.Normal, StringComparison.OrdinalIgnoreCase));
        return this with
        {
            Kind = isNormal ? StatementKind.LookedAtNormal : Kind,
            Text = isNormal && string.Equals(text, Statement.Normal, StringComparison.OrdinalIgnoreCase) ? "" : text,
            By = TextRules.TrimToNull(By),
        };
    }
}
