using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;

namespace Clutchwright.Stock.Happenings;

/// <summary>Something that happened, as it is entered.</summary>
public sealed record HappeningEntry
{
    public required HappeningKind Kind { get; init; }

    /// <summary>The day, which may be known only roughly.</summary>
    public required DateRange When { get; init; }

    /// <summary>Grams for a weighing, millimetres for follicles, grams of food for a meal (may be left out), good eggs for a laying (may be left out).</summary>
    public double? Amount { get; init; }

    /// <summary>The other animal of a pair; only where the kind is about one.</summary>
    public AnimalId? MateId { get; init; }

    /// <summary>The clutch of the animal that it is about; only where the kind can be about one.</summary>
    public ClutchId? ClutchId { get; init; }

    /// <summary>What else is to be said; what was fed, where it was moved, how it is.</summary>
    public string Text { get; init; } = "";
}
