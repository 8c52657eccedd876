namespace Clutchwright.Planning.Expectations;

/// <summary>The days of ovulation, pre-lay shed and laying together, by sums over all their combinations.</summary>
internal static class LayingSums
{
    // Beyond this ratio the records of the whole interval say no more than that its parts are hardly possible.
    private const double MostTilt = 1e3;

    private const double Least = 1e-6;
    private const double SlipBelow = 1e-4;

    /// <summary>Adds the steps up to the laying that are due.</summary>
    /// <returns>The days of the laying; null: nothing to reckon from, or waited for too long.</returns>
    public static DayChances? Of(YearSoFar year, YearIntervals intervals, List<DueStep> due)
    {
        if (Ovulations(year, intervals) is { } ovulation && !IsUnlikely(year, intervals, ovulation))
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

    // Where a shed that was seen hardly fits the ovulation that was, one of the two is a slip, and the nearer step counts.
    private static bool IsUnlikely(YearSoFar year, YearIntervals intervals, DayChances ovulation)
    {
        if (year.PreLayShed is not { } shed)
        {
            return false;
        }

        var days = ovulation.Then(intervals.OvulationToShed.Expect(year.Female));
        return days.NotBefore(shed.From) - days.NotBefore(shed.To + 1) < SlipBelow;
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
        var sums = new Sums(ovulation, toShed, toEggs, Tilt(toShed, toEggs, intervals.OvulationToEggs.Expect(year.Female)));
        sums.Add(year, intervals);
        var today = year.Today;
        var from = new List<YearStep>();
        if (year.Ovulation is null)
        {
            from.Add(YearStep.Paired);
            due.Add(new(YearStep.Ovulation, DayChances.Of(ovulation.First, sums.Ovulations)?.From(today), ovulation.NotBefore(today), [.. from]));
        }
        else
        {
            from.Add(YearStep.Ovulation);
        }

        if (year.PreLayShed is null)
        {
            due.Add(new(YearStep.PreLayShed, DayChances.Of(ovulation.First + toShed.First, sums.Sheds)?.From(today), sums.ShedOpen, [.. from]));
        }
        else
        {
            from.Add(YearStep.PreLayShed);
        }

        var days = DayChances.Of(ovulation.First + toShed.First + toEggs.First, sums.Eggs);
        due.Add(new(YearStep.Eggs, days, sums.EggsOpen, [.. from]));
        return days;
    }

    // How much likelier a number of days is by the records of the whole than by its two parts, from the fewest days that these can have.
    private static double[] Tilt(DayChances toShed, DayChances toEggs, DayChances whole)
    {
        var parts = toShed.Then(toEggs);
        var ratios = new double[toShed.Chances.Count + toEggs.Chances.Count - 1];
        for (var i = 0; i < ratios.Length; i++)
        {
            var days = toShed.First + toEggs.First + i;
            ratios[i] = parts[days] > 0.0 ? Math.Clamp(whole[days] / parts[days], 1.0 / MostTilt, MostTilt) : 1.0;
        }

        return ratios;
    }

    // The far tails of heavy-tailed days: together below one in ten thousand, and most of the work.
    private static double[] Likely(DayChances days)
    {
        var least = Least * days.Chances.Max();
        return [.. days.Chances.Select(c => c < least ? 0.0 : c)];
    }

    /// <summary>The sums over the three days.</summary>
    private sealed class Sums(DayChances ovulation, DayChances toShed, DayChances toEggs, double[] tilt)
    {
        private double _total;
        private double _eggsOpen;
        private double _shedTotal;
        private double _shedOpen;

        public double[] Ovulations { get; } = new double[ovulation.Chances.Count];

        public double[] Sheds { get; } = new double[ovulation.Chances.Count + toShed.Chances.Count - 1];

        public double[] Eggs { get; } = new double[ovulation.Chances.Count + toShed.Chances.Count + toEggs.Chances.Count - 2];

        public double ShedOpen => _shedTotal > 0.0 ? Math.Clamp(_shedOpen / _shedTotal, 0.0, 1.0) : 0.0;

        public double EggsOpen => _total > 0.0 ? Math.Clamp(_eggsOpen / _total, 0.0, 1.0) : 0.0;

        public void Add(YearSoFar year, YearIntervals intervals)
        {
            var (sheds, eggs) = (Likely(toShed), Likely(toEggs));
            var (firstEgg, lastEgg) = (Array.FindIndex(eggs, e => e > 0.0), Array.FindLastIndex(eggs, e => e > 0.0));

            // For each number of days to the shed the chances of those from it to the eggs, and what is left of them from each day on.
            var (rows, left) = (new double[sheds.Length][], new double[sheds.Length][]);
            for (var i = 0; i < sheds.Length; i++)
            {
                (rows[i], left[i]) = (new double[eggs.Length], new double[eggs.Length + 1]);
                for (var k = eggs.Length - 1; sheds[i] > 0.0 && k >= 0; k--)
                {
                    rows[i][k] = eggs[k] * tilt[i + k];
                    left[i][k] = left[i][k + 1] + rows[i][k];
                }
            }

            for (var o = 0; o < Ovulations.Length; o++)
            {
                var day = ovulation.First + o;
                var ofO = ovulation[day] <= Least ? 0.0 : ovulation[day] * (year.Ovulation is null && day < year.Today ? 1.0 - intervals.OvulationNoticed : 1.0);
                for (var i = 0; i < sheds.Length; i++)
                {
                    var shed = day + toShed.First + i;
                    var all = year.PreLayShed is not { } seen || (shed >= seen.From && shed <= seen.To) ? ofO * sheds[i] : 0.0;
                    if (all <= 0.0)
                    {
                        continue;
                    }

                    var ofS = all * (year.PreLayShed is null && shed < year.Today ? 1.0 - intervals.ShedNoticed : 1.0);
                    var from = Math.Max(firstEgg, year.Today - shed - toEggs.First);
                    var later = from <= lastEgg ? left[i][from] : 0.0;
                    if (from <= lastEgg)
                    {
                        DaySums.Add(Eggs.AsSpan(o + i + from, lastEgg - from + 1), rows[i].AsSpan(from, lastEgg - from + 1), ofS);
                    }

                    _total += ofS * left[i][0];
                    _eggsOpen += ofS * later;
                    Sheds[o + i] += ofS * later;
                    Ovulations[o] += ofS * later;
                    _shedTotal += all * left[i][0];
                    _shedOpen += shed >= year.Today ? all * left[i][0] : 0.0;
                }
            }
        }
    }
}
