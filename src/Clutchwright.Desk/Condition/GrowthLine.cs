namespace Clutchwright.Desk.Condition;

/// <summary>The growth of an animal as the median of the slopes between its weighings, with an interval that nine in ten such intervals hold the truth in.</summary>
/// <remarks>Source: docs/references.md [Sen1968].</remarks>
internal static class GrowthLine
{
    /// <summary>Fewer weighings, or a shorter time, tell nothing of growth.</summary>
    public const int LeastWeighings = 4;
    public const int LeastDays = 60;

    // Nine in ten: the normal deviate that one in twenty passes.
    private const double Deviate = 1.6448536269514722;

    /// <summary>The slopes in grams a day; <c>null</c>: too few weighings, or over too short a time.</summary>
    /// <param name="weighings">The earliest first, one a day.</param>
    public static (double Low, double Median, double High)? Of(IReadOnlyList<Weighing> weighings)
    {
        var count = weighings.Count;
        if (count < LeastWeighings || weighings[^1].Day.DayNumber - weighings[0].Day.DayNumber < LeastDays)
        {
            return null;
        }

        var slopes = new List<double>();
        for (var i = 0; i < count; i++)
        {
            for (var j = i + 1; j < count; j++)
            {
                slopes.Add((weighings[j].Grams - weighings[i].Grams) / (weighings[j].Day.DayNumber - weighings[i].Day.DayNumber));
            }
        }

        slopes.Sort();
        var spread = Deviate * Math.Sqrt(count * (count - 1.0) * ((2.0 * count) + 5.0) / 18.0);
        var low = (int)Math.Floor((slopes.Count - spread) / 2.0);
        var high = (int)Math.Ceiling((slopes.Count + spread) / 2.0);
        var median = slopes.Count % 2 == 1 ? slopes[slopes.Count / 2] : (slopes[(slopes.Count / 2) - 1] + slopes[slopes.Count / 2]) / 2.0;
        return (slopes[Math.Clamp(low, 0, slopes.Count - 1)], median, slopes[Math.Clamp(high, 0, slopes.Count - 1)]);
    }
}
