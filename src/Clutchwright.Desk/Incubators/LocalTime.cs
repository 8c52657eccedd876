using System.Globalization;
using System.Text.RegularExpressions;

namespace Clutchwright.Desk.Incubators;

/// <summary>Which number of <c>03/04/2026</c> is the day.</summary>
public enum DateOrder
{
    DayFirst = 1,
    MonthFirst = 2,
}

/// <summary>Reads times as loggers and keepers write them, in the time of this place unless they say otherwise.</summary>
internal static partial class LocalTime
{
    public const string WouldBeRight = "Write 2026-05-01 14:05, or 01.05.2026 14:05.";

    /// <summary>Whether the order of day and month cannot be told from the shape of a time.</summary>
    public static (int First, int Second)? Doubtful(string text) =>
        Shape().Match(text.Trim()) is { Success: true } match && match.Groups["sep"].Value != "." && match.Groups["a"].Length <= 2
            ? (Part(match, "a"), Part(match, "b"))
            : null;

    /// <summary>Reads one time.</summary>
    /// <param name="text">A date and a time of day, perhaps with the distance from UTC.</param>
    /// <param name="order">Which number is the day where the shape does not say; <c>null</c>: not known.</param>
    /// <param name="zone">The time zone of this place.</param>
    /// <param name="before">The time before it in a file, UTC: of an hour that the clock shows twice it tells which is meant; <c>null</c>: the first.</param>
    /// <returns>UTC; <c>null</c>: it is no time, or one that the clock of this place never showed.</returns>
    public static DateTime? Read(string text, DateOrder? order, TimeZoneInfo zone, DateTime? before = null)
    {
        if (Shape().Match(text.Trim()) is not { Success: true } match)
        {
            return null;
        }

        var (a, b, c) = (Part(match, "a"), Part(match, "b"), Part(match, "c"));
        var isYearFirst = match.Groups["a"].Length == 4;
        var isDayFirst = match.Groups["sep"].Value == "." || order == DateOrder.DayFirst;
        var (year, month, day) = isYearFirst ? (a, b, c) : isDayFirst ? (c, b, a) : (c, a, b);
        var hour = Part(match, "h");
        if (match.Groups["half"].Value is { Length: > 0 } half)
        {
            if (hour is < 1 or > 12)
            {
                return null;
            }

            hour = (hour % 12) + (half.StartsWith("p", StringComparison.OrdinalIgnoreCase) ? 12 : 0);
        }

        var isWritable = (isYearFirst || (match.Groups["c"].Length == 4 && (match.Groups["sep"].Value == "." || order is not null)))
            && year is >= 1900 and <= 2999 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month)
            && hour <= 23 && Part(match, "m") <= 59 && Part(match, "s") <= 59;
        if (!isWritable)
        {
            return null;
        }

        var local = new DateTime(year, month, day, hour, Part(match, "m"), Part(match, "s"), DateTimeKind.Unspecified);
        return match.Groups["zone"].Value is { Length: > 0 } written ? Utc(local, written) : Utc(local, zone, before);
    }

    private static DateTime? Utc(DateTime local, string written)
    {
        if (written is "Z" or "z")
        {
            return DateTime.SpecifyKind(local, DateTimeKind.Utc);
        }

        var digits = written[1..].Replace(":", string.Empty, StringComparison.Ordinal);
        var (hours, minutes) = (int.Parse(digits[..2], CultureInfo.InvariantCulture), int.Parse(digits[2..], CultureInfo.InvariantCulture));
        var away = new TimeSpan(hours, minutes, 0);
        return hours > 14 || minutes > 59 ? null : DateTime.SpecifyKind(written[0] == '-' ? local + away : local - away, DateTimeKind.Utc);
    }

    private static DateTime? Utc(DateTime local, TimeZoneInfo zone, DateTime? before)
    {
        if (zone.IsInvalidTime(local))
        {
            return null;
        }

        if (!zone.IsAmbiguousTime(local))
        {
            return TimeZoneInfo.ConvertTimeToUtc(local, zone);
        }

        var both = zone.GetAmbiguousTimeOffsets(local).Select(offset => DateTime.SpecifyKind(local - offset, DateTimeKind.Utc)).Order().ToArray();
        return before is { } known && both[0] <= known ? both[^1] : both[0];
    }

    private static int Part(Match match, string name) =>
        match.Groups[name].Value is { Length: > 0 } digits ? int.Parse(digits, CultureInfo.InvariantCulture) : 0;

    [GeneratedRegex(
        @"^(?<a>\d{1,4})(?<sep>[-./])(?<b>\d{1,2})\k<sep>(?<c>\d{1,4})[T ,]+(?<h>\d{1,2})[:.](?<m>\d{2})(?:[:.](?<s>\d{2})(?:[.,]\d+)?)?\s*(?<half>[AaPp]\.?[Mm]\.?)?\s*(?<zone>[Zz]|[+-]\d{2}:?\d{2})?$",
        RegexOptions.ExplicitCapture)]
    private static partial Regex Shape();
}
