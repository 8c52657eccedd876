using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Condition;

/// <summary>How an animal eats, grows and keeps its mass, by what is written down of it. No diagnosis.</summary>
/// <param name="Tag">The animal.</param>
/// <param name="Name">Its name, if any.</param>
/// <param name="Sex">Its sex; <c>null</c>: not known.</param>
/// <param name="Feeding">Its meals.</param>
/// <param name="Mass">Its mass; <c>null</c>: it was never weighed.</param>
/// <param name="DaysSinceShed">Days since the last shed; <c>null</c>: none is written down.</param>
/// <param name="DaysSinceWeighing">Days since the last weighing; <c>null</c>: none is written down.</param>
/// <param name="Aim">Its mass against the least mass at which its sex breeds; <c>null</c>: not known for it.</param>
/// <param name="Remarks">What is to be said, the gravest first.</param>
/// <param name="Weighings">Every weighing, the earliest first.</param>
/// <param name="Marks">Meals, refusals, sheds and layings, the earliest first.</param>
/// <param name="Today">The day on which this was reckoned.</param>
public sealed record ConditionAnswer(
    string Tag,
    string? Name,
    Sex? Sex,
    FeedingFigures Feeding,
    MassFigures? Mass,
    int? DaysSinceShed,
    int? DaysSinceWeighing,
    BreedingMass? Aim,
    IReadOnlyList<WatchRemark> Remarks,
    IReadOnlyList<Weighing> Weighings,
    IReadOnlyList<CareMark> Marks,
    DateOnly Today)
{
    /// <summary>Gets the gravest level of the remarks.</summary>
    public WatchLevel Level => Remarks.Count == 0 ? WatchLevel.Told : Remarks[0].Level;
}

/// <summary>One remark about an animal.</summary>
/// <param name="Level">What it asks for.</param>
/// <param name="About">What it is about: <c>feeding</c>, <c>mass</c>, <c>growth</c> or <c>weighing</c>.</param>
/// <param name="Text">In a sentence or two.</param>
/// <param name="Source">On what grounds: its own record, the stock's, a paper, or common practice.</param>
public sealed record WatchRemark(WatchLevel Level, string About, string Text, string Source);

/// <summary>A weighing.</summary>
/// <param name="Day">The last day on which it can have been.</param>
/// <param name="Grams">The mass.</param>
public readonly record struct Weighing(DateOnly Day, double Grams);

/// <summary>Something that stands below the curve of masses.</summary>
/// <param name="Day">The last day on which it can have been.</param>
/// <param name="What"><c>meal</c>, <c>refused</c>, <c>shed</c> or <c>laid</c>.</param>
/// <param name="Grams">Of a meal; <c>null</c>: not recorded.</param>
public readonly record struct CareMark(DateOnly Day, string What, double? Grams);

/// <summary>How an animal eats.</summary>
/// <param name="DaysSinceMeal">Days since the last meal; <c>null</c>: none is written down.</param>
/// <param name="DaysSinceOffer">Days since food was last taken or refused; <c>null</c>: neither is written down.</param>
/// <param name="MealsInARow">Meals since the last refusal, of the last 400 days.</param>
/// <param name="RefusalsInARow">Refusals since the last meal, of the last 400 days, those shortly before a shed left out.</param>
/// <param name="RefusalsBeforeShed">Refusals since the last meal that a shed followed.</param>
/// <param name="Rhythm">The gaps between its meals, or those of others where its own record is short.</param>
/// <param name="DueInDays">In how many days food is due by that rhythm; negative: it was due so long ago; <c>null</c>: it was never offered any, or fasts with the eggs.</param>
/// <param name="Fast">The usual reason for a fast that it has now; <c>null</c>: none.</param>
public sealed record FeedingFigures(
    int? DaysSinceMeal, int? DaysSinceOffer, int MealsInARow, int RefusalsInARow, int RefusalsBeforeShed, FeedingRhythm Rhythm, int? DueInDays, string? Fast);

/// <summary>The mass of an animal over the last 400 days.</summary>
/// <param name="Last">The last weighing.</param>
/// <param name="Peak">The heaviest of the last 400 days; the last of equal ones.</param>
/// <param name="LossSincePeak">The share lost since, in [0, 1).</param>
/// <param name="NormalLoss">The share of the peak that eggs laid and brooding since explain.</param>
/// <param name="Unexplained">The share lost beyond that, of the mass expected; 0 where it is heavier.</param>
/// <param name="Change">The change over the last months; <c>null</c>: no weighing lies 60 to 150 days back.</param>
/// <param name="Growth">The growth of a young animal; <c>null</c>: it is none, or its hatch day is not known.</param>
public sealed record MassFigures(Weighing Last, Weighing Peak, double LossSincePeak, double NormalLoss, double Unexplained, MassChange? Change, YoungGrowth? Growth);

/// <summary>How the mass changed.</summary>
/// <param name="Since">The weighing it is compared with.</param>
/// <param name="Share">The change as a share of that mass; negative: it lost.</param>
public sealed record MassChange(Weighing Since, double Share);

/// <summary>How a young animal grew.</summary>
/// <param name="AgeDays">Its age at the last weighing.</param>
/// <param name="HatchGrams">Its mass at hatching.</param>
/// <param name="IsWeighed">Whether that was weighed within a month of hatching; else it is the species' mean.</param>
/// <param name="Factor">The last mass over that.</param>
/// <param name="Expected">What the factor of the first year comes to by that age, with growth by the same share every day.</param>
public sealed record YoungGrowth(int AgeDays, double HatchGrams, bool IsWeighed, double Factor, double Expected);

/// <summary>The mass of an animal against the least at which its sex breeds.</summary>
/// <param name="LeastGrams">The least mass at which keepers first pair its sex.</param>
/// <param name="IsReached">Whether it has it.</param>
/// <param name="At">When it will have it at its growth; <c>null</c>: it has it, or its weighings do not tell.</param>
public sealed record BreedingMass(double LeastGrams, bool IsReached, MassArrival? At);

/// <summary>When a mass will be reached.</summary>
/// <param name="GramsADay">The growth reckoned with.</param>
/// <param name="Likely">The day at that growth; <c>null</c>: not within two years.</param>
/// <param name="Earliest">The day at the fastest growth that the weighings allow; <c>null</c>: not within two years.</param>
/// <param name="Latest">The day at the slowest; <c>null</c>: not within two years, perhaps never.</param>
/// <param name="Weighings">On how many weighings it rests.</param>
public sealed record MassArrival(double GramsADay, DateOnly? Likely, DateOnly? Earliest, DateOnly? Latest, int Weighings);
