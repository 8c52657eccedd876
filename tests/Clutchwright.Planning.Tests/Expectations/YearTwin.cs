using Clutchwright.Planning.Expectations;

namespace Clutchwright.Planning.Tests.Expectations;

/// <summary>A season from its definition: many drawn, those that fit what has been seen kept, each weighed by what the whole interval says beyond its
/// parts.</summary>
internal sealed class YearTwin
{
    private readonly List<(double Weight, int Ovulation, int Shed, int Eggs)> _kept = [];

    public YearTwin(YearSoFar year, YearIntervals intervals, int draws, int seed)
    {
        var random = new Random(seed);
        var (po, os, sl, ol) = (intervals.PairingToOvulation.Expect(year.Female), intervals.OvulationToShed.Expect(year.Female),
            intervals.ShedToEggs.Expect(year.Female), intervals.OvulationToEggs.Expect(year.Female));
        var parts = os.Then(sl);
        for (var n = 0; n < draws; n++)
        {
            var ovulation = year.Ovulation is { } seen ? random.Next(seen.From, seen.To + 1) : random.Next(year.Paired!.Value.From, year.Paired.Value.To + 1) + Draw(random, po);
            var shed = ovulation + Draw(random, os);
            var eggs = shed + Draw(random, sl);
            var isMissedOvulation = random.NextDouble() >= intervals.OvulationNoticed;
            var isMissedShed = random.NextDouble() >= intervals.ShedNoticed;
            var fits = (year.Ovulation is not null || ((ovulation >= year.Today || isMissedOvulation) && ovulation >= (year.LastLock ?? int.MinValue)))
                && (year.PreLayShed is { } day ? shed >= day.From && shed <= day.To : shed >= year.Today || isMissedShed)
                && eggs >= year.Today;
            if (fits)
            {
                _kept.Add((Math.Clamp(ol[eggs - ovulation] / parts[eggs - ovulation], 1e-3, 1e3), ovulation, shed, eggs));
            }
        }
    }

    public (double Chance, double Error) EggsBy(int day) => Share(k => k.Eggs <= day, _ => true);

    public (double Chance, double Error) ShedBy(int day, int today) => Share(k => k.Shed <= day, k => k.Shed >= today);

    private (double Chance, double Error) Share(Func<(double Weight, int Ovulation, int Shed, int Eggs), bool> isSo, Func<(double Weight, int Ovulation, int Shed, int Eggs), bool> given)
    {
        var of = _kept.Where(given).ToArray();
        var total = of.Sum(k => k.Weight);
        var mean = of.Where(isSo).Sum(k => k.Weight) / total;
        return (mean, Math.Sqrt(of.Sum(k => k.Weight * k.Weight * Math.Pow((isSo(k) ? 1.0 : 0.0) - mean, 2.0))) / total);
    }

    private static int Draw(Random random, DayChances days)
    {
        var at = random.NextDouble();
        for (var d = days.First; d < days.Last; d++)
        {
            at -= days[d];
            if (at <= 0.0)
            {
                return d;
            }
        }

        return days.Last;
    }
}
