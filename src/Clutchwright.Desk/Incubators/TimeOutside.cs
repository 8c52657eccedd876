namespace Clutchwright.Desk.Incubators;

/// <summary>How long a curve was outside its limits.</summary>
/// <remarks>Between two readings no further apart than a step the figure is taken to go in a straight line; over a longer silence
/// nothing is claimed. See docs/model/condition.md.</remarks>
/// <param name="Known">The time over which the curve is known.</param>
/// <param name="Outside">The part of it outside the limits.</param>
/// <param name="Longest">The longest stretch outside without coming back; <c>null</c>: there is none.</param>
/// <param name="ReadingsOutside">How many readings are outside.</param>
public sealed record TimeOutside(TimeSpan Known, TimeSpan Outside, Excursion? Longest, int ReadingsOutside)
{
    /// <summary>Reckons it.</summary>
    /// <param name="points">The readings, the earliest first, no two of one instant.</param>
    /// <param name="lowest">The lowest limit, which is inside; <c>null</c>: none.</param>
    /// <param name="highest">The highest limit, which is inside; <c>null</c>: none.</param>
    /// <param name="step">The longest stretch between two readings that is reckoned over.</param>
    public static TimeOutside Of(IReadOnlyList<CurvePoint> points, double? lowest, double? highest, TimeSpan step)
    {
        var (known, outside) = (TimeSpan.Zero, TimeSpan.Zero);
        Excursion? longest = null, running = null;
        for (var i = 1; i < points.Count; i++)
        {
            var (from, to) = (points[i - 1], points[i]);
            if (to.At - from.At > step)
            {
                running = null;
                continue;
            }

            known += to.At - from.At;
            foreach (var (start, end, isOutside) in Parts(from, to, lowest, highest))
            {
                if (!isOutside)
                {
                    running = null;
                    continue;
                }

                outside += end - start;
                running = running is { } before && before.To == start ? before with { To = end } : new Excursion(start, end);
                longest = longest is null || running.Length > longest.Length ? running : longest;
            }
        }

        return new(known, outside, longest, points.Count(p => IsOutside(p.Value, lowest, highest)));
    }

    private static bool IsOutside(double value, double? lowest, double? highest) => value < lowest || value > highest;

    /// <summary>The straight line between two readings, cut where it crosses a limit.</summary>
    private static IEnumerable<(DateTime Start, DateTime End, bool IsOutside)> Parts(CurvePoint from, CurvePoint to, double? lowest, double? highest)
    {
        var cuts = new[] { lowest, highest }
            .OfType<double>()
            .Where(limit => from.Value != to.Value)
            .Select(limit => (limit - from.Value) / (to.Value - from.Value))
            .Where(share => share is > 0.0 and < 1.0)
            .Order();
        double[] shares = [0.0, .. cuts, 1.0];
        for (var i = 1; i < shares.Length; i++)
        {
            var middle = (shares[i - 1] + shares[i]) / 2.0;
            var isOutside = IsOutside(from.Value + (middle * (to.Value - from.Value)), lowest, highest);
            yield return (At(shares[i - 1]), At(shares[i]), isOutside);
        }

        DateTime At(double share) => share >= 1.0 ? to.At : from.At.AddTicks((long)((to.At - from.At).Ticks * share));
    }
}

/// <summary>A stretch of time outside the limits.</summary>
/// <param name="From">UTC.</param>
/// <param name="To">UTC.</param>
public sealed record Excursion(DateTime From, DateTime To)
{
    /// <summary>Gets how long it is.</summary>
    public TimeSpan Length => To - From;
}
