using System.Globalization;
using System.Text.RegularExpressions;

namespace Clutchwright.Stock.Animals;

/// <summary>Reads the dates that keepers write:
/// <list type="bullet">
/// <item><c>2024-03-03</c>, <c>3 March 2024</c>, <c>March 3, 2024</c>: that day;</item>
/// <item><c>2024-03</c>, <c>March 2024</c>: that month; <c>2024</c>: that year;</item>
/// <item><c>about</c> (or <c>~</c>, <c>ca.</c>) before any of these: 14 days, one month or six months wider on both sides;</item>
/// <item><c>A to B</c>, <c>between A and B</c>: from the first day of A to the last of B;</item>
/// <item><c>A to B (words)</c>: the same, kept under the words in the brackets.</item>
/// </list>
/// Months are English; the widths of "about" are this program's convention.</summary>
internal static partial class DateWords
{
    private const int FirstYear = 1900;
    private const int LastYear = 2199;
    private const int AboutDays = 14;
    private const int AboutMonth = 1;
    private const int AboutYearMonths = 6;

    /// <summary>Two dates and the words for them in brackets.</summary>
    private const int MostLetters = 2 * DateRange.MaxWordsLength;

    private static readonly string[] DayForms =
        ["yyyy-MM-dd", "d MMMM yyyy", "d MMM yyyy", "MMMM d, yyyy", "MMM d, yyyy", "MMMM d yyyy", "MMM d yyyy"];

    private static readonly string[] MonthForms = ["yyyy-MM", "MMMM yyyy", "MMM yyyy"];

    public static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <returns>The range, or null if the words are none of the forms.</returns>
    public static DateRange? Read(string text)
    {
        var words = text.Trim();
        if (words.Length is 0 or > MostLetters || !TextRules.IsPlainLine(words))
        {
            return null;
        }

        if (Bracketed().Match(words) is { Success: true } bracketed)
        {
            var inner = bracketed.Groups["words"].Value.Trim();
            return inner.Length is > 0 and <= DateRange.MaxWordsLength && Span(bracketed.Groups["from"].Value, bracketed.Groups["to"].Value) is { } named
                ? new DateRange(named.From, named.To, inner)
                : null;
        }

        if (words.Length > DateRange.MaxWordsLength)
        {
            return null;
        }

        var days = FromTo().Match(words) is { Success: true } span
            ? Span(span.Groups["from"].Value, span.Groups["to"].Value)
            : Point(words);
        return days is { } found ? new DateRange(found.From, found.To, words) : null;
    }

    private static (DateOnly From, DateOnly To)? Span(string from, string to) =>
        Point(from) is { } first && Point(to) is { } last && first.From <= last.To ? (first.From, last.To) : null;

    private static (DateOnly From, DateOnly To)? Point(string text)
    {
        var about = About().Match(text);
        var bare = Spaces().Replace(text[about.Length..].Trim(), " ");
        var isAbout = about.Success;
        if (DateOnly.TryParseExact(bare, DayForms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && InRange(day))
        {
            return isAbout ? (day.AddDays(-AboutDays), day.AddDays(AboutDays)) : (day, day);
        }

        if (DateOnly.TryParseExact(bare, MonthForms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var month) && InRange(month))
        {
            var margin = isAbout ? AboutMonth : 0;
            return (month.AddMonths(-margin), month.AddMonths(1 + margin).AddDays(-1));
        }

        if (DateOnly.TryParseExact(bare, "yyyy", CultureInfo.InvariantCulture, DateTimeStyles.None, out var year) && InRange(year))
        {
            var margin = isAbout ? AboutYearMonths : 0;
            return (year.AddMonths(-margin), year.AddMonths(12 + margin).AddDays(-1));
        }

        return null;
    }

    private static bool InRange(DateOnly day) => day.Year is >= FirstYear and <= LastYear;

    [GeneratedRegex(@"^(?<from>[^()]+?)\s+to\s+(?<to>[^()]+?)\s+\((?<words>.*)\)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"^(?:between\s+(?<from>.+?)\s+and\s+(?<to>.+)|(?:from\s+)?(?<from>.+?)\s+(?:to|until)\s+(?<to>.+))$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex FromTo();

    [GeneratedRegex(@"^\s*(?:(?:about|around|circa|approximately)\s+|ca?\.?\s+|ca?\.|~)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex About();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
