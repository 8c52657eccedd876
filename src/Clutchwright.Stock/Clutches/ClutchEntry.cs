using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Incubators;

namespace Clutchwright.Stock.Clutches;

/// <summary>What a keeper enters of a clutch. Text is trimmed when it is taken into the book.</summary>
public sealed record ClutchEntry
{
    /// <summary>The keeper's own id of the clutch, by the rules of an animal's; unique among the clutches whatever the case.</summary>
    public required string Tag { get; init; }

    public required AnimalId DamId { get; init; }

    /// <summary>The male; several where one of them is the father; none where it is not known who was with her.</summary>
    public IReadOnlyList<AnimalId> Sires { get; init; } = [];

    /// <summary>The day it was laid, which may be known only roughly.</summary>
    public required DateRange Laid { get; init; }

    /// <summary>Good eggs laid; null: not counted.</summary>
    public int? GoodEggs { get; init; }

    /// <summary>Slugs laid; null: not counted.</summary>
    public int? Slugs { get; init; }

    /// <summary>Mass of the good eggs together; null: not weighed.</summary>
    public double? MassGrams { get; init; }

    /// <summary>Where it is; null: with the dam, or not recorded.</summary>
    public IncubatorId? IncubatorId { get; init; }

    /// <summary>The day the young left the eggs; null: they have not.</summary>
    public DateRange? Hatched { get; init; }

    /// <summary>Young that are in the book only as a number.</summary>
    public IReadOnlyList<CountedYoung> Counted { get; init; } = [];

    public string Notes { get; init; } = "";
}
