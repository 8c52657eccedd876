namespace Clutchwright.Planning.Expectations;

/// <summary>When the next steps of a female's year are due.</summary>
/// <remarks>
/// Ovulation, pre-lay shed and laying are reckoned together, day by day: every combination of their three days has the product of the chances of
/// its intervals, times how much likelier the days from ovulation to laying are by the records of that interval than by its two parts. What
/// has not been seen by today counts as not happened or, for ovulation and shed, as missed. The later steps follow by adding up intervals.
/// docs/model/expectations.md tells it in full.
/// </remarks>
public static class YearExpectation
{
    /// <summary>The steps due from pairing to the first meal of the young.</summary>
    /// <param name="year">What has been seen.</param>
    /// <param name="intervals">What is believed of the intervals.</param>
    /// <returns>The steps that are to come, in their order; none if nothing has been seen from which to reckon.</returns>
    /// <remarks>Cost: the product of the days in doubt of ovulation, shed and laying: some millions from a pairing, some thousands once ovulation is known.</remarks>
    public static IReadOnlyList<DueStep> Of(YearSoFar year, YearIntervals intervals)
    {
        ArgumentNullException.ThrowIfNull(year);
        ArgumentNullException.ThrowIfNull(intervals);
        var due = new List<DueStep>();
        var eggs = year.Eggs is { } laid ? DayChances.Evenly(laid) : LayingSums.Of(year, intervals, due);
        if (eggs is not null)
        {
            Incubation(year, intervals, eggs, due);
        }

        return due;
    }

    /// <summary>The steps of a hatchling.</summary>
    /// <param name="family">Its dam, as in the records; <c>null</c>: not known.</param>
    /// <param name="hatched">When it hatched.</param>
    /// <param name="firstShed">Its first shed; <c>null</c>: not seen.</param>
    /// <param name="today">The day up to which is told.</param>
    /// <param name="intervals">What is believed of the intervals.</param>
    public static IReadOnlyList<DueStep> OfHatchling(string? family, DaySpan hatched, DaySpan? firstShed, int today, YearIntervals intervals)
    {
        ArgumentNullException.ThrowIfNull(intervals);
        var due = new List<DueStep>();
        var shed = firstShed is { } seen
            ? DayChances.Evenly(seen)
            : Wait(YearStep.FirstShed, DayChances.Evenly(hatched).Then(intervals.HatchToShed.Expect(family)), today, [YearStep.Hatch], due);
        if (shed is not null)
        {
            var from = firstShed is null ? YearStep.Hatch : YearStep.FirstShed;
            Wait(YearStep.FirstMeal, shed.Then(intervals.ShedToMeal.Expect(family)), today, [from], due);
        }

        return due;
    }

    /// <summary>The next laying of a female that lays again in the season after.</summary>
    /// <param name="female">The female, as in the records.</param>
    /// <param name="laid">Her last laying.</param>
    /// <param name="today">The day up to which is told.</param>
    /// <param name="intervals">What is believed of the intervals.</param>
    public static DueStep OfNextSeason(string female, DaySpan laid, int today, YearIntervals intervals)
    {
        ArgumentNullException.ThrowIfNull(intervals);
        var due = new List<DueStep>();
        Wait(YearStep.NextEggs, DayChances.Evenly(laid).Then(intervals.EggsToNextEggs.Expect(female)), today, [YearStep.Eggs], due);
        return due[0];
    }

    internal static DayChances? Wait(YearStep step, DayChances days, int today, IReadOnlyList<YearStep> from, List<DueStep> due)
    {
        var left = days.From(today);
        due.Add(new(step, left, days.NotBefore(today), from));
        return left;
    }

    private static void Incubation(YearSoFar year, YearIntervals intervals, DayChances eggs, List<DueStep> due)
    {
        var from = year.Eggs is null ? due[^1].From : [YearStep.Eggs];
        var pip = year.Pip is { } seen
            ? DayChances.Evenly(seen)
            : Wait(YearStep.Pip, eggs.Then(intervals.EggsToPip.Expect(year.Female, year.IncubationPace, year.IncubationPaceSd)), year.Today, from, due);
        from = year.Pip is null ? from : [YearStep.Pip];
        var days = pip?.Then(intervals.PipToHatch.Expect(year.Female));
        var hatch = days is null ? null : Wait(YearStep.Hatch, days, year.Today, from, due);
        var shed = hatch is null ? null : Wait(YearStep.FirstShed, hatch.Then(intervals.HatchToShed.Expect(year.Female)), year.Today, from, due);
        if (shed is not null)
        {
            Wait(YearStep.FirstMeal, shed.Then(intervals.ShedToMeal.Expect(year.Female)), year.Today, from, due);
        }
    }
}
