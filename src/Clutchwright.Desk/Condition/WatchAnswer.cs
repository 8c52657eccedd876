using Clutchwright.Desk.Incubators;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Condition;

/// <summary>What asks for a look in the whole stock.</summary>
/// <param name="Lines">The animals of which something is to be said, the gravest first.</param>
/// <param name="Animals">How many animals are in the room.</param>
/// <param name="NeverWeighed">How many of them were never weighed.</param>
/// <param name="FoodDue">How many are due to be fed.</param>
/// <param name="LastOffer">The last day on which a meal or a refusal of any animal was written down; <c>null</c>: none.</param>
/// <param name="IsFeedingKept">Whether that is recent; else no gap is held against an animal.</param>
/// <param name="Incubators">The incubators of which something is to be said.</param>
public sealed record WatchAnswer(
    IReadOnlyList<WatchLine> Lines, int Animals, int NeverWeighed, int FoodDue, DateOnly? LastOffer, bool IsFeedingKept, IReadOnlyList<IncubatorWords> Incubators)
{
    /// <summary>The animals whose gravest remark is of this level.</summary>
    public IReadOnlyList<WatchLine> Of(WatchLevel level) => [.. Lines.Where(l => l.Level == level)];
}

/// <summary>An animal of which something is to be said.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Name">Its name, if any.</param>
/// <param name="Sex">Its sex; <c>null</c>: not known.</param>
/// <param name="Remarks">What, the gravest first.</param>
public sealed record WatchLine(string Tag, string? Name, Sex? Sex, IReadOnlyList<WatchRemark> Remarks)
{
    /// <summary>Gets the level of the gravest.</summary>
    public WatchLevel Level => Remarks[0].Level;
}

/// <summary>Which animals are due to be fed.</summary>
/// <param name="Animals">The one due longest first; those never offered food last.</param>
/// <param name="InTheRoom">How many animals are in the room.</param>
/// <param name="Today">The day on which this was reckoned.</param>
public sealed record RoundAnswer(IReadOnlyList<RoundAnimal> Animals, int InTheRoom, DateOnly Today);

/// <summary>An animal of a feeding round.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Name">Its name, if any.</param>
/// <param name="Sex">Its sex; <c>null</c>: not known.</param>
/// <param name="DueInDays">In how many days food is due; negative: it was due so long ago; <c>null</c>: it was never offered any.</param>
/// <param name="DaysSinceMeal">Days since the last meal; <c>null</c>: none is written down.</param>
/// <param name="RefusalsInARow">Refusals since.</param>
/// <param name="Fast">The usual reason for a fast that it has now; <c>null</c>: none.</param>
public sealed record RoundAnimal(string Tag, string? Name, Sex? Sex, int? DueInDays, int? DaysSinceMeal, int RefusalsInARow, string? Fast);
