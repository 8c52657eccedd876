namespace Clutchwright.Stock.Statements;

/// <summary>How the kind of a statement is told in a word or two.</summary>
public static class StatementWords
{
    public static string Of(StatementKind kind) => kind switch
    {
        StatementKind.Seen => "seen",
        StatementKind.LookedAtNormal => "looked at, shows nothing",
        StatementKind.Told => "told",
        StatementKind.DnaTest => "DNA test",
        StatementKind.ProvenByBreeding => "proven by breeding",
        StatementKind.RuledOut => "ruled out",
    };

    /// <summary>The kind and what is said; a statement without a text is told by its kind alone.</summary>
    public static string Of(StatementKind kind, string text) => text.Length == 0 ? Of(kind) : $"{Of(kind)}: {text}";
}
