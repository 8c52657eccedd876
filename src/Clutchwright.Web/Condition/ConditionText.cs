using System.Globalization;
using Clutchwright.Desk.Condition;
using Clutchwright.Web.Words;

namespace Clutchwright.Web.Condition;

/// <summary>Puts the figures of an animal's condition into words.</summary>
internal static class ConditionText
{
    public static string Ago(int days) => days switch
    {
        0 => "today",
        1 => "yesterday",
        _ => $"{CountWords.Of(days, "day", "days")} ago",
    };

    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Grams(double grams) => $"{grams.ToString(grams < 100.0 ? "0.#" : "N0", CultureInfo.CurrentCulture)} g";

    /// <summary>A share that was gained or lost.</summary>
    public static string Change(double share)
    {
        var percent = Math.Abs(100.0 * share);
        return percent < 0.5 ? "unchanged" : $"{percent.ToString(percent < 9.95 ? "0.#" : "0", CultureInfo.CurrentCulture)} % {(share < 0.0 ? "less" : "more")}";
    }

    /// <summary>When a mass will be reached.</summary>
    public static string Arrival(BreedingMass aim) => aim switch
    {
        { IsReached: true } => $"has the {Grams(aim.LeastGrams)} from which keepers pair its sex",
        { At: null } => $"{Grams(aim.LeastGrams)} is the least at which keepers pair its sex; its weighings of the last year do not tell when it will have it",
        { At.Earliest: null } => $"{Grams(aim.LeastGrams)} is the least at which keepers pair its sex; at its growth of the last year not within two years",
        { At: var at } => $"{Grams(aim.LeastGrams)} is the least at which keepers pair its sex; at its growth of the last year ({at.GramsADay.ToString("0.#", CultureInfo.CurrentCulture)} g a day) "
            + $"{(at.Likely is { } likely ? $"about {Month(likely)}" : "not within two years")}: {Month(at.Earliest!.Value)} at the earliest, {(at.Latest is { } latest ? $"{Month(latest)} at the latest" : "perhaps not within two years")}",
    };

    /// <summary>How often it eats, and whose figures these are.</summary>
    public static string Rhythm(FeedingRhythm rhythm) => rhythm.Basis switch
    {
        RhythmBasis.Own => $"every {CountWords.Of(rhythm.UsualDays, "day", "days")} as a rule, by its last {rhythm.Gaps} gaps; nine in ten are {rhythm.LongDays} days or less",
        RhythmBasis.Stock => $"every {CountWords.Of(rhythm.UsualDays, "day", "days")} as a rule for animals of its age here; its own record is short",
        RhythmBasis.Practice => $"every {CountWords.Of(rhythm.UsualDays, "day", "days")} as a rule among keepers; too few meals are written down here",
    };

    public static string Level(WatchLevel level) => level switch
    {
        WatchLevel.AskVeterinarian => "Ask a reptile veterinarian",
        WatchLevel.Look => "Look at these",
        WatchLevel.Due => "Due to be weighed",
        WatchLevel.Told => "Told, not alarmed",
    };

    private static string Month(DateOnly day) => day.ToString("MMMM yyyy", CultureInfo.CurrentCulture);
}
