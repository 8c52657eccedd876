using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Import;

/// <summary>One animal of a pedigree file, as it was read. Parents are named by their tags, spelt
/// as in their own rows.</summary>
public sealed class AnimalRow
{
    /// <summary>The most young that one row may stand for.</summary>
    public const int MaxCount = 10_000;

    /// <summary>As a spreadsheet counts: the header is row 1.</summary>
    public required int Row { get; init; }

    /// <summary>As a text editor counts, from 1.</summary>
    public required int Line { get; init; }

    public required string Tag { get; init; }

    public string? Name { get; init; }

    public Sex? Sex { get; init; }

    /// <summary>The tag of the sire; null if not known or in doubt.</summary>
    public string? Sire => SireTags.Count == 1 ? SireTags[0] : null;

    /// <summary>The tags of the males of which one is the sire; empty if he is known or nothing is known of him.</summary>
    public IReadOnlyList<string> PossibleSires => SireTags.Count > 1 ? SireTags : [];

    public string? Dam { get; init; }

    public DateRange? Hatched { get; init; }

    public AnimalStatus Status { get; init; } = AnimalStatus.Kept;

    /// <summary>How many young alike the row stands for; 1: an animal.</summary>
    public int Count { get; init; } = 1;

    public double? MassGrams { get; init; }

    public string Notes { get; init; } = "";

    public IReadOnlyList<StatementEntry> Statements { get; init; } = [];

    internal IReadOnlyList<string> SireTags { get; init; } = [];

    /// <summary>The chances of the possible sires, in the order of their tags; empty where none are written.</summary>
    internal IReadOnlyList<Fraction> SireWeights { get; init; } = [];

    public override string ToString() => $"row {Row}: {Tag}";
}
