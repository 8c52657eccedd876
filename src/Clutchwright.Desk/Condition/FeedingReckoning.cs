using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Condition;

/// <summary>Reckons how an animal eats.</summary>
internal sealed class FeedingReckoning(CareThresholds thresholds, DateOnly today)
{
    /// <summary>So far back the record counts.</summary>
    public const int Days = 400;

    /// <summary>Whether an animal is in its first year; one whose hatch day is not known is taken as grown.</summary>
    public bool IsYoung(CareRecord animal) => animal.Hatched is { } hatched && today.DayNumber - hatched.Latest.DayNumber < CareThresholds.YoungDays;

    /// <summary>The gaps between the last meals, the earliest first.</summary>
    public IReadOnlyList<FeedingGap> Gaps(CareRecord animal)
    {
        DateOnly[] meals = [.. Of(animal, HappeningKind.Fed).Distinct()];
        DateOnly[] refusals = [.. Refusals(animal).Where(r => !r.IsBeforeShed).Select(r => r.Day)];
        return [.. meals.Zip(meals.Skip(1)).TakeLast(FeedingRhythm.MostGaps)
            .Select(m => new FeedingGap(m.Second.DayNumber - m.First.DayNumber, refusals.Count(r => r >= m.First && r <= m.Second)))];
    }

    public FeedingFigures Of(CareRecord animal, FeedingRhythm? stock)
    {
        var lastMeal = Last(animal, HappeningKind.Fed);
        var lastRefusal = Last(animal, HappeningKind.FoodRefused);
        var lastOffer = lastMeal is null || lastRefusal > lastMeal ? lastRefusal : lastMeal;
        var since = Refusals(animal).Where(r => lastMeal is null || r.Day > lastMeal).ToArray();
        var meals = Of(animal, HappeningKind.Fed).Count(d => lastRefusal is null || d > lastRefusal);
        var rhythm = FeedingRhythm.Of(Gaps(animal), FeedingRhythm.OwnGaps, RhythmBasis.Own) ?? stock ?? thresholds.Practice(IsYoung(animal));
        var fast = Fast(animal);
        return new(
            Since(lastMeal),
            Since(lastOffer),
            meals,
            since.Count(r => !r.IsBeforeShed),
            since.Count(r => r.IsBeforeShed),
            rhythm,
            lastOffer is { } offered && fast != Brooding ? offered.DayNumber + rhythm.UsualDays - today.DayNumber : null,
            fast);
    }

    public int? Since(DateOnly? day) => day is { } known ? Math.Max(0, today.DayNumber - known.DayNumber) : null;

    public static DateOnly? Last(CareRecord animal, HappeningKind kind) => animal.Last.TryGetValue(kind, out var day) ? day : null;

    private const string Brooding = "she lies with her eggs, and brooding females eat little or nothing";

    /// <summary>Why a fast would be usual now; null: nothing written down says so.</summary>
    private string? Fast(CareRecord animal)
    {
        if (animal.Sex == Sex.Male)
        {
            var isGrown = animal.Hatched is not { } hatched || thresholds.MaleBreedingMonths is not { } months || hatched.Earliest.AddMonths((int)Math.Ceiling(months)) <= today;
            return isGrown && thresholds.IsPairingSeason(today) ? "it is the pairing season, in which grown males often fast" : null;
        }

        if (animal.Sex is null)
        {
            return null;
        }

        var laid = animal.Clutches.Count > 0 ? animal.Clutches[^1] : null;
        if (laid is { IsWithDam: true, Hatched: null } && today.DayNumber - laid.Laid.DayNumber <= thresholds.IncubationDays)
        {
            return Brooding;
        }

        var signs = animal.Events.Where(e => laid is null || e.Day > laid.Laid);
        var isGravid = signs.Any(e => e.Kind switch
        {
            HappeningKind.Ovulated => today.DayNumber - e.Day.DayNumber <= thresholds.OvulationToEggs,
            HappeningKind.PreLayShed => today.DayNumber - e.Day.DayNumber <= thresholds.ShedToEggs,
            HappeningKind.FolliclesMeasured => e.Amount >= thresholds.FollicleMillimetres && today.DayNumber - e.Day.DayNumber <= thresholds.OvulationToEggs,
            _ => false,
        });
        return isGravid ? "she is carrying eggs or large follicles, and such females often fast" : null;
    }

    /// <summary>Refusals of the last days, and whether a shed followed each within the days before a shed.</summary>
    private IEnumerable<(DateOnly Day, bool IsBeforeShed)> Refusals(CareRecord animal)
    {
        DateOnly[] sheds = [.. animal.Events.Where(e => e.Kind is HappeningKind.Shed or HappeningKind.PreLayShed).Select(e => e.Day)];
        return Of(animal, HappeningKind.FoodRefused)
            .Select(day => (day, Array.Exists(sheds, shed => shed >= day && shed.DayNumber - day.DayNumber <= thresholds.DaysBeforeShed)));
    }

    private IEnumerable<DateOnly> Of(CareRecord animal, HappeningKind kind) =>
        animal.Events.Where(e => e.Kind == kind && today.DayNumber - e.Day.DayNumber <= Days).Select(e => e.Day);
}
