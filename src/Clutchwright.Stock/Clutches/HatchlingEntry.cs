using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Clutches;

/// <summary>One hatchling as it is entered on hatch day. Its parents are those of its clutch.</summary>
public sealed record HatchlingEntry
{
    /// <summary>Made by whoever enters it, so that the same sent twice is entered once.</summary>
    public required AnimalId AnimalId { get; init; }

    public required string Tag { get; init; }

    /// <summary>Null while unsexed.</summary>
    public Sex? Sex { get; init; }

    public required DateRange Hatched { get; init; }

    /// <summary>What is seen of it.</summary>
    public IReadOnlyList<StatementEntry> Statements { get; init; } = [];

    public double? MassGrams { get; init; }

    public AnimalStatus Status { get; init; } = AnimalStatus.Kept;

    public string Notes { get; init; } = "";

    /// <summary>Whether it was said again that there are more young than good eggs.</summary>
    public bool IsMoreMeant { get; init; }
}
