using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Animals;

/// <summary>An animal as it is listed.</summary>
public sealed record AnimalLine(
    AnimalId AnimalId,
    string Tag,
    string? Name,
    Sex? Sex,
    DateRange? Hatched,
    AnimalStatus Status,
    double? MassGrams,
    string? SireTag,
    string? DamTag)
{
    /// <summary>The clutch it hatched from; null: none in the book.</summary>
    public ClutchId? ClutchId { get; init; }

    /// <summary>The tags of the males of which one is the father.</summary>
    public IReadOnlyList<string> PossibleSireTags { get; init; } = [];

    /// <summary>What was said of it and not withdrawn, by kind and text.</summary>
    public IReadOnlyList<StatementLine> Statements { get; init; } = [];
}

/// <summary>A statement as it is listed beside its animal.</summary>
public sealed record StatementLine(StatementKind Kind, string Text, double Confidence);
