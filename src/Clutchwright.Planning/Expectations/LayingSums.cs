namespace Clutchwright.Planning.Expectations;

/// <summary>The days of ovulation, pre-lay shed and laying together, by sums over all their combinations.</summary>
internal static class LayingSums
{
    // Beyond this ratio the records of the whole interval say no more than that its parts are hardly possible.
    private const double MostTilt = 1e3;

    /// <summary>Adds the steps up to the laying that are due.</summary>
    /// <returns>The days of the laying; null: nothing to reckon from, or waited for too long.</returns>
    public static DayChances? Of(YearSoFar year, YearIntervals intervals, List<DueStep> due)
    {
        if (Ovulations(year, intervals) is { } ovulation)
        {
            return WithOvulation(year, intervals, ovulation, due);
        }

        if (year.PreLayShed is { } shed)
        {
            var days = DayChances.Evenly(shed).Then(intervals.ShedToEggs.Expect(year.Female));
            return YearExpectation.Wait(YearStep.Eggs, days, year.Today, [YearStep.PreLayShed], due);
        }

        return null;
    }

    // The days of ovulation before anything that came after is looked at.
    private static DayChances? Ovulations(YearSoFar year, YearIntervals intervals)
    {
        if (year.Ovulation is { } seen)
        {
            return DayChances.Evenly(seen);
        }

        if (year.Paired is not { } paired || year.PreLayShed is not null)
        {
            return null;
        }

        var days = DayChances.Evenly(paired).Then(intervals.PairingToOvulation.Expect(year.Female));
        return year.LastLock is { } locked ? days.From(locked) ?? DayChances.Evenly(DaySpan.On(locked)) : days;
    }

    private static DayChances? WithOvulation(YearSoFar year, YearIntervals intervals, DayChances ovulation, List<DueStep> due)
    {
        var toShed = intervals.OvulationToShed.Expect(year.Female);
        var toEggs = intervals.ShedToEggs.Expect(year.Female);
        var tilt = Tilt(toShed.Then(toEggs), intervals.OvulationToEggs.Expect(year.Female));
        var today = year.Today;
        var (firstShed, firstEggs) = (ovulation.First + toShed.First, ovulation.First + toShed.First + toEggs.First);
        var ovulations = new double[ovulation.Chances.Count];
        var sheds = new double[ovulation.Chances.Count + toShed.Chances.Count - 1];
        var (eggs, eggsOpen) = (new double[sheds.Length + toEggs.Chances.Count - 1], 0.0);
        var (total, shedTotal, shedOpen) = (0.0, 0.0, 0.0);
        for (var o = ovulation.First; o <= ovulation.Last; o++)
        {
            var ofO = ovulation[o] * (year.Ovulation is null && o < today ? 1.0 - intervals.OvulationNoticed : 1.0);
            for (var s = o + toShed.First; ofO > 0.0 && s <= o + toShed.Last; s++)
            {
                var all = ofO * toShed[s - o];
                if (year.PreLayShed is { } shed)
                {
                    all = s >= shed.From && s <= shed.To ? all : 0.0;
                }

                if (all < 1e-15)
                {
                    continue;
                }

                var ofS = all * (year.PreLayShed is null && s < today ? 1.0 - intervals.ShedNoticed : 1.0);
                var (laidLater, laid) = (0.0, 0.0);
                for (var l = s + toEggs.First; l <= s + toEggs.Last; l++)
                {
                    var chance = toEggs[l - s] * tilt[l - o];
                    laid += chance;
                    if (l >= today)
                    {
                        laidLater += chance;
                        eggs[l - firstEggs] += ofS * chance;
                    }
                }

                total += ofS * laid;
                eggsOpen += ofS * laidLater;
                sheds[s - firstShed] += ofS * laidLater;
                ovulations[o - ovulation.First] += ofS * laidLater;
                shedTotal += all * laid;
                shedOpen += s >= today ? all * laid : 0.0;
            }
        }

        var from = new List<YearStep>();
        if (year.Ovulation is null)
        {
            from.Add(YearStep.Paired);
            due.Add(new(YearStep.Ovulation, DayChances.Of(ovulation.First, ovulations)?.From(today), ovulation.NotBefore(today), [.. from]));
        }
        else
        {
            from.Add(YearStep.Ovulation);
        }

        if (year.PreLayShed is null)
        {
            due.Add(new(YearStep.PreLayShed, DayChances.Of(firstShed, sheds)?.From(today), shedTotal > 0.0 ? shedOpen / shedTotal : 0.0, [.. from]));
        }
        else
        {
            from.Add(YearStep.PreLayShed);
        }

        var days = DayChances.Of(firstEggs, eggs);
        due.Add(new(YearStep.Eggs, days, total > 0.0 ? Math.Clamp(eggsOpen / total, 0.0, 1.0) : 0.0, [.. from]));
        return days;
    }

    // How much likelier a number of days is by the records of the whole than by its two parts.
    private static DayTilt Tilt(DayChances parts, DayChances whole)
    {
        var ratios = new double[parts.Chances.Count];
        for (var i = 0; i < ratios.Length; i++)
        {
            ratios[i] = Math.Clamp(whole[parts.First + i] / parts.Chances[i], 1.0 / MostTilt, MostTilt);
        }

        return new(parts.First, ratios);
    }

    private readonly record struct DayTilt(int First, double[] Ratios)
    {
        public double this[int days] => days < First || days >= First + Ratios.Length ? 1.0 : Ratios[days - First];
    }
}
