using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Loci;
using Clutchwright.Planning.Expectations;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Calendar;

/// <summary>Sorts what happened into seasons of females.</summary>
internal static class SeasonsInBook
{
    /// <summary>What tells of a female's season.</summary>
    public static HappeningKind[] Kinds { get; } =
        [HappeningKind.Introduced, HappeningKind.Locked, HappeningKind.Separated, HappeningKind.FolliclesMeasured, HappeningKind.Ovulated, HappeningKind.PreLayShed, HappeningKind.Laid];

    /// <summary>The seasons, in order of each female's days.</summary>
    /// <param name="state">The stock.</param>
    /// <param name="lines">What happened, of <see cref="Kinds"/>.</param>
    /// <param name="on">The day it is asked on: what is of later days is left out.</param>
    /// <param name="gapDays">So many days without a record end a season.</param>
    public static List<FemaleSeason> Of(StockState state, IReadOnlyList<HappeningLine> lines, DateOnly on, int gapDays)
    {
        var seasons = new List<FemaleSeason>();
        foreach (var hers in lines.Where(l => l.When.Earliest <= on)
            .Select(l => (Line: l, Female: FemaleOf(state, l)))
            .Where(l => l.Female is not null)
            .GroupBy(l => l.Female!)
            .OrderBy(g => g.Key.Animal.Tag, StringComparer.Ordinal))
        {
            FemaleSeason? season = null;
            foreach (var line in hers.Select(h => h.Line).OrderBy(l => l.When.Latest).ThenBy(l => l.Kind))
            {
                if (season is null
                    || (season.Of(YearStep.Eggs) is { } laid && line.When.Latest > laid.Latest)
                    || line.When.Latest.DayNumber - season.LastDay.DayNumber > gapDays)
                {
                    seasons.Add(season = new(hers.Key.Animal.AnimalId, hers.Key.Animal.Tag, hers.Key.IsHere));
                }

                Take(season, line);
            }
        }

        AddHatching(state, seasons, on);
        return seasons;
    }

    private static void Take(FemaleSeason season, HappeningLine line)
    {
        season.Touch(line.When);
        var mate = string.Equals(line.Tag, season.Tag, StringComparison.OrdinalIgnoreCase) ? line.Mate : line.Tag;
        if (mate is not null && !season.Mates.Contains(mate))
        {
            season.Mates.Add(mate);
        }

        switch (line.Kind)
        {
            case HappeningKind.Introduced:
                season.See(YearStep.Paired, line.When);
                break;
            case HappeningKind.Locked:
                season.See(YearStep.Paired, line.When);
                season.LastLock = line.When;
                break;
            case HappeningKind.Ovulated:
                season.See(YearStep.Ovulation, line.When);
                break;
            case HappeningKind.PreLayShed:
                season.See(YearStep.PreLayShed, line.When);
                break;
            case HappeningKind.Laid:
                season.See(YearStep.Eggs, line.When);
                break;
        }
    }

    // The female of a pair, on whosever page it was written.
    private static StockAnimal? FemaleOf(StockState state, HappeningLine line)
    {
        var (animal, mate) = (state.Find(line.Tag), line.Mate is null ? null : state.Find(line.Mate));
        return animal?.Animal.Sex == Sex.Female ? animal
            : mate?.Animal.Sex == Sex.Female ? mate
            : animal?.Animal.Sex is null ? animal
            : mate?.Animal.Sex is null ? mate
            : null;
    }

    // A clutch has hatched when the first of its young has.
    private static void AddHatching(StockState state, List<FemaleSeason> seasons, DateOnly on)
    {
        var young = state.Animals.Where(a => a.Animal is { DamId: not null, Hatched: not null } && a.Animal.Hatched.Earliest <= on)
            .ToLookup(a => a.Animal.DamId!.Value, a => a.Animal.Hatched!);
        foreach (var season in seasons)
        {
            if (season.Of(YearStep.Eggs) is { } laid)
            {
                var next = seasons.Where(s => s.Female == season.Female && s.Of(YearStep.Eggs) is { } later && later.Latest > laid.Latest)
                    .Select(s => s.Of(YearStep.Eggs)!.Earliest).DefaultIfEmpty(DateOnly.MaxValue).Min();
                foreach (var hatched in young[season.Female].Where(h => h.Latest > laid.Latest && h.Earliest < next && h.Latest.DayNumber - laid.Latest.DayNumber < 200))
                {
                    season.See(YearStep.Hatch, hatched);
                }
            }
        }
    }
}
