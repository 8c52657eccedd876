using Clutchwright.Planning.Expectations;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Calendar;

/// <summary>Sorts what happened into seasons of females.</summary>
internal static class SeasonsInBook
{
    // A laying that stands in the log and as a clutch is one.
    private const int SameLayingDays = 30;

    // Young of a dam that hatched later than that are of another clutch.
    private const int MostToHatchDays = 200;

    /// <summary>The seasons, by female and in the order of her days.</summary>
    /// <param name="stock">The stock.</param>
    /// <param name="events">What tells of a season.</param>
    /// <param name="on">The day it is asked on: what is of later days is left out.</param>
    /// <param name="gapDays">So many days without a record end a season.</param>
    public static List<FemaleSeason> Of(CalendarStock stock, IEnumerable<SeasonEvent> events, DateOnly on, int gapDays)
    {
        var seasons = new List<FemaleSeason>();
        foreach (var hers in events.Where(e => e.When.Earliest <= on).GroupBy(e => e.Female).OrderBy(g => g.Key.Tag, StringComparer.Ordinal))
        {
            FemaleSeason? season = null;
            foreach (var seen in hers.OrderBy(e => e.When.Latest).ThenBy(e => e.Kind).ThenBy(e => e.What, StringComparer.Ordinal))
            {
                if (season is null || IsNext(season, seen) || seen.When.Latest.DayNumber - season.LastDay.DayNumber > gapDays)
                {
                    seasons.Add(season = new(hers.Key.AnimalId, hers.Key.Tag, hers.Key.Status.IsHere()));
                }

                Take(season, seen, on);
            }
        }

        AddHatching(stock, seasons, on);
        return seasons;
    }

    private static bool IsNext(FemaleSeason season, SeasonEvent seen) =>
        season.Of(YearStep.Eggs) is { } laid && seen.When.Latest > laid.Latest
        && (seen.Kind != HappeningKind.Laid || seen.When.Latest.DayNumber - laid.Latest.DayNumber > SameLayingDays);

    private static void Take(FemaleSeason season, SeasonEvent seen, DateOnly on)
    {
        season.Touch(seen.When);
        if (seen.Mate is { } mate && !season.Mates.Contains(mate))
        {
            season.Mates.Add(mate);
        }

        if (seen.Step is { } step)
        {
            season.See(step, seen.When);
        }

        if (seen.Kind == HappeningKind.Locked)
        {
            season.LastLock = seen.When;
        }

        if (seen.Clutch is not { } clutch)
        {
            return;
        }

        if (clutch.Pipped is { } pipped && pipped.Earliest <= on)
        {
            season.See(YearStep.Pip, pipped);
        }

        if (clutch.Clutch.Hatched is { } hatched && hatched.Earliest <= on)
        {
            season.See(YearStep.Hatch, hatched);
        }

        season.IsLost = clutch.Clutch.GoodEggs is { } good && good - clutch.Lost <= 0;
        season.Clutch = clutch.Clutch.Tag;
        season.Incubator = clutch.Clutch.IncubatorId;
    }

    // A clutch has hatched when the first of its young has.
    private static void AddHatching(CalendarStock stock, List<FemaleSeason> seasons, DateOnly on)
    {
        var young = stock.Animals.Where(a => a is { DamId: not null, Hatched: not null } && a.Hatched.Earliest <= on)
            .ToLookup(a => a.DamId!.Value, a => a.Hatched!);
        foreach (var hers in seasons.Where(s => s.Of(YearStep.Eggs) is not null).GroupBy(s => s.Female))
        {
            var ordered = hers.OrderBy(s => s.Of(YearStep.Eggs)!.Latest).ToArray();
            for (var i = 0; i < ordered.Length; i++)
            {
                var laid = ordered[i].Of(YearStep.Eggs)!;
                var next = i + 1 < ordered.Length ? ordered[i + 1].Of(YearStep.Eggs)!.Earliest : DateOnly.MaxValue;
                foreach (var hatched in young[hers.Key].Where(h => h.Latest > laid.Latest && h.Earliest < next && h.Latest.DayNumber - laid.Latest.DayNumber < MostToHatchDays))
                {
                    ordered[i].See(YearStep.Hatch, hatched);
                }
            }
        }
    }
}
