using System.Globalization;

namespace Clutchwright.Desk.Incubators;

/// <summary>Spans of time in words.</summary>
public static class DurationText
{
    /// <summary>In two units at most: <c>40 min</c>, <c>3 h 20 min</c>, <c>2 days 4 h</c>.</summary>
    public static string Of(TimeSpan span)
    {
        var minutes = (long)Math.Round(span.TotalMinutes, MidpointRounding.AwayFromZero);
        var (days, hours) = (minutes / 1440, minutes / 60 % 24);
        return minutes switch
        {
            < 60 => $"{minutes} min",
            < 1440 => Both($"{hours} h", minutes % 60, "min"),
            _ => Both(days == 1 ? "1 day" : $"{days.ToString(CultureInfo.InvariantCulture)} days", hours, "h"),
        };

        static string Both(string first, long second, string unit) => second == 0 ? first : $"{first} {second} {unit}";
    }
}
