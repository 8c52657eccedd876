using Clutchwright.Desk.Incubators;
using CsCheck;

namespace Clutchwright.Desk.Tests.Incubators;

public sealed class TimeOutsideTests
{
    private static readonly DateTime Start = new(2026, 4, 1, 0, 0, 0, DateTimeKind.Utc);

    /// <summary>Minutes from the start, and the figure.</summary>
    private static readonly Gen<CurvePoint[]> Points =
        from steps in Gen.Select(Gen.Int[1, 40], Gen.Int[280, 350]).Array[2, 12]
        select steps.Select((_, i) => new CurvePoint(Start.AddMinutes(steps.Take(i + 1).Sum(s => s.Item1)), steps[i].Item2 / 10.0)).ToArray();

    /// <summary>Worked by hand: from 31 to 33 in an hour the line is above 32 for its second half, from 33 down to 32 in the next hour for all of it.</summary>
    [Fact]
    public void Of_ALineThatCrossesAndComesBack_IsOutsideFromTheCrossing()
    {
        var time = TimeOutside.Of([At(0, 31), At(60, 33), At(120, 32), At(180, 31)], 30, 32, TimeSpan.FromHours(2));

        Assert.Equal((TimeSpan.FromMinutes(180), TimeSpan.FromMinutes(90), 1), (time.Known, time.Outside, time.ReadingsOutside));
        Assert.Equal(new Excursion(Start.AddMinutes(30), Start.AddMinutes(120)), time.Longest);
    }

    /// <summary>From 29 to 33 in four hours: below 30 for the first, above 32 for the last; these are two excursions.</summary>
    [Fact]
    public void Of_ALineThroughBothLimits_IsTwoExcursions()
    {
        var time = TimeOutside.Of([At(0, 29), At(240, 33)], 30, 32, TimeSpan.FromHours(5));

        Assert.Equal((TimeSpan.FromMinutes(120), TimeSpan.FromMinutes(60)), (time.Outside, time.Longest!.Length));
    }

    [Fact]
    public void Of_ASilenceLongerThanTheStep_ClaimsNothing()
    {
        var time = TimeOutside.Of([At(0, 33), At(600, 33)], 30, 32, TimeSpan.FromHours(2));

        Assert.Equal((TimeSpan.Zero, TimeSpan.Zero, null, 2), (time.Known, time.Outside, time.Longest, time.ReadingsOutside));
    }

    [Fact]
    public void Of_OnTheLimit_IsInside() =>
        Assert.Equal(TimeSpan.Zero, TimeOutside.Of([At(0, 32), At(60, 32), At(120, 30)], 30, 32, TimeSpan.FromHours(2)).Outside);

    /// <summary>The slow twin asks at every second whether the line between the two readings around it is outside.</summary>
    [Fact]
    public void Of_AnyCurve_IsWhatAskingAtEverySecondGives() => Points.Sample(
        points =>
        {
            var step = TimeSpan.FromMinutes(30);
            var time = TimeOutside.Of(points, 30, 32, step);

            var (known, outside, run, longest) = (0, 0, 0, 0);
            for (var i = 1; i < points.Length; i++)
            {
                if (points[i].At - points[i - 1].At > step)
                {
                    run = 0;
                    continue;
                }

                var seconds = (int)(points[i].At - points[i - 1].At).TotalSeconds;
                for (var s = 0; s < seconds; s++)
                {
                    var value = points[i - 1].Value + ((points[i].Value - points[i - 1].Value) * (s + 0.5) / seconds);
                    known++;
                    run = value is < 30 or > 32 ? run + 1 : 0;
                    outside += value is < 30 or > 32 ? 1 : 0;
                    longest = Math.Max(longest, run);
                }
            }

            Assert.Equal(known, time.Known.TotalSeconds, 0.001);
            Assert.InRange(time.Outside.TotalSeconds, outside - (2 * points.Length), outside + (2 * points.Length));
            Assert.InRange(time.Longest?.Length.TotalSeconds ?? 0.0, longest - (2 * points.Length), longest + (2 * points.Length));
        },
        iter: 200);

    [Fact]
    public void Of_WiderLimits_IsNeverLongerOutside() => Points.Sample(
        points => TimeOutside.Of(points, 29.5, 32.5, TimeSpan.FromHours(1)).Outside <= TimeOutside.Of(points, 30, 32, TimeSpan.FromHours(1)).Outside,
        iter: 200);

    private static CurvePoint At(int minutes, double value) => new(Start.AddMinutes(minutes), value);
}
