using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Happenings;

/// <summary>What is written down of the care of one animal.</summary>
/// <param name="AnimalId">The animal.</param>
/// <param name="Tag">Its tag.</param>
/// <param name="Name">Its name, if any.</param>
/// <param name="Sex">Its sex; null: not known.</param>
/// <param name="Hatched">When it hatched; null: not known.</param>
/// <param name="MassGrams">Its mass as it stands on its record; null: not weighed.</param>
public sealed record CareRecord(AnimalId AnimalId, string Tag, string? Name, Sex? Sex, DateRange? Hatched, double? MassGrams)
{
    /// <summary>Gets meals, refusals, sheds, weighings and the signs of eggs since the day asked for, the earliest first.</summary>
    public required IReadOnlyList<CareEvent> Events { get; init; }

    /// <summary>Gets the last day of each of meal, refusal, shed and weighing, whenever it was; a kind is missing where there is none.</summary>
    public required IReadOnlyDictionary<HappeningKind, DateOnly> Last { get; init; }

    /// <summary>Gets the clutches that it laid since the day asked for, the earliest first.</summary>
    public required IReadOnlyList<CareClutch> Clutches { get; init; }
}

/// <summary>One entry of the log that is about care.</summary>
/// <param name="Kind">What happened.</param>
/// <param name="Day">The last day on which it can have been.</param>
/// <param name="Amount">In the unit of its kind; null: not recorded.</param>
public readonly record struct CareEvent(HappeningKind Kind, DateOnly Day, double? Amount);

/// <summary>A clutch, as far as it tells of its dam.</summary>
/// <param name="Tag">The clutch.</param>
/// <param name="Laid">The last day on which it can have been laid.</param>
/// <param name="Hatched">The last day on which the young can have left the eggs; null: they have not.</param>
/// <param name="IsWithDam">Whether it is in no incubator.</param>
public sealed record CareClutch(string Tag, DateOnly Laid, DateOnly? Hatched, bool IsWithDam);
