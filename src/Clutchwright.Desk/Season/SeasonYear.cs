namespace Clutchwright.Desk.Season;

/// <summary>By which year a season is called: the one in which its clutches hatch.</summary>
internal static class SeasonYear
{
    // From the pairing to the hatching pass about six months: follicles, two months to the laying and two of incubation (docs/model/season.md).
    private const int MonthsToHatching = 6;

    /// <summary>The season that is at hand on a day.</summary>
    public static int At(DateOnly day) => day.AddMonths(MonthsToHatching).Year;

    /// <summary>The season that is at hand today.</summary>
    public static int At(TimeProvider clock) => At(DateOnly.FromDateTime(clock.GetLocalNow().DateTime));
}
