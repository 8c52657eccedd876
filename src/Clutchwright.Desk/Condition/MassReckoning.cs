using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Condition;

/// <summary>Reckons how an animal keeps its mass and grows.</summary>
internal sealed class MassReckoning(CareThresholds thresholds, DateOnly today)
{
    private const int ArrivalDays = 730;
    private const int GrowthDays = 365;
    private const int HatchDays = 31;

    /// <summary>The weighings, one a day: the last of a day.</summary>
    public static IReadOnlyList<Weighing> Weighings(CareRecord animal) =>
        [.. animal.Events.Where(e => e.Kind == HappeningKind.Weighed && e.Amount is not null)
            .GroupBy(e => e.Day).OrderBy(g => g.Key).Select(g => new Weighing(g.Key, g.Last().Amount!.Value))];

    /// <summary>The figures; null: no weighing of the last 400 days.</summary>
    public MassFigures? Of(CareRecord animal)
    {
        Weighing[] weighings = [.. Weighings(animal).Where(w => today.DayNumber - w.Day.DayNumber <= FeedingReckoning.Days)];
        if (weighings.Length == 0)
        {
            return null;
        }

        var last = weighings[^1];
        var peak = weighings.OrderByDescending(w => w.Grams).ThenByDescending(w => w.Day).First();
        var kept = 1.0;
        foreach (var clutch in animal.Clutches.Where(c => c.Laid > peak.Day && c.Laid <= last.Day))
        {
            kept *= (1.0 - thresholds.ClutchShare) * (clutch.IsWithDam ? 1.0 - thresholds.BroodingShare : 1.0);
        }

        var expected = peak.Grams * kept;
        var before = weighings.Where(w => last.Day.DayNumber - w.Day.DayNumber is >= 60 and <= 150).Select(w => (Weighing?)w).LastOrDefault();
        return new(
            last,
            peak,
            1.0 - (last.Grams / peak.Grams),
            1.0 - kept,
            Math.Max(0.0, 1.0 - (last.Grams / expected)),
            before is { } then ? new MassChange(then, (last.Grams / then.Grams) - 1.0) : null,
            Growth(animal, last));
    }

    /// <summary>The mass against the least at which its sex breeds; null: not known for it.</summary>
    /// <remarks>Of an animal that loses mass no day is told: a line through its growth of before would promise too much.</remarks>
    public BreedingMass? Aim(CareRecord animal, MassFigures? mass)
    {
        var weighings = Weighings(animal);
        var grams = weighings.Count > 0 ? weighings[^1].Grams : animal.MassGrams;
        if (animal.Sex is not { } sex || thresholds.BreedingGrams(sex) is not { } least || grams is not { } now)
        {
            return null;
        }

        return now >= least ? new(least, true, null) : new(least, false, mass?.Unexplained >= thresholds.LossToLookAt ? null : Arrival(weighings, least));
    }

    private static MassArrival? Arrival(IReadOnlyList<Weighing> weighings, double least)
    {
        if (weighings.Count == 0)
        {
            return null;
        }

        var last = weighings[^1];
        Weighing[] counted = [.. weighings.Where(w => last.Day.DayNumber - w.Day.DayNumber <= GrowthDays)];
        return GrowthLine.Of(counted) is var (low, median, high)
            ? new(median, At(median), At(high), At(low), counted.Length)
            : null;

        DateOnly? At(double gramsADay) =>
            gramsADay > 0.0 && (least - last.Grams) / gramsADay is <= ArrivalDays and var days ? last.Day.AddDays((int)Math.Ceiling(days)) : null;
    }

    private YoungGrowth? Growth(CareRecord animal, Weighing last)
    {
        if (CareThresholds.HatchDay(animal.Hatched) is not { } hatched || thresholds.FirstYearFactor is not { } factor || last.Day.DayNumber - hatched.DayNumber is not (>= 0 and <= FeedingReckoning.Days and var age))
        {
            return null;
        }

        var first = Weighings(animal).Where(w => w.Day.DayNumber - hatched.DayNumber is >= 0 and <= HatchDays).Select(w => (double?)w.Grams).FirstOrDefault();
        return (first ?? thresholds.HatchGrams) is { } atHatch
            ? new(age, atHatch, first is not null, last.Grams / atHatch, Math.Pow(factor, age / 365.25))
            : null;
    }
}
