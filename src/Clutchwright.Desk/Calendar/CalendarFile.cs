using System.Globalization;
using System.Text;

namespace Clutchwright.Desk.Calendar;

/// <summary>Writes what is due as an iCalendar file (RFC 5545).</summary>
/// <remarks>Each step is an event of the whole of its most likely day, since that is the day to look; its ranges stand in the description.
/// What is to be prepared is an event too: few programs show to-dos of a feed.</remarks>
public static class CalendarFile
{
    /// <summary>The type of such a file.</summary>
    public const string MediaType = "text/calendar; charset=utf-8";

    /// <summary>The days a feed tells of.</summary>
    public const int FeedDays = 366;

    private const int MostOctets = 75;

    // A range of two months says no more than that a season is on.
    private const int WidestDays = 60;

    /// <summary>Writes it.</summary>
    /// <param name="calendar">What is due.</param>
    /// <param name="now">The present, for the stamp of the file.</param>
    /// <returns>Lines of at most 75 octets in UTF-8, each ended by CR LF.</returns>
    public static string Write(CalendarAnswer calendar, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(calendar);
        var text = new StringBuilder();
        Line("BEGIN:VCALENDAR");
        Line("VERSION:2.0");
        Line("PRODID:-//Clutchwright//Calendar//EN");
        Line("CALSCALE:GREGORIAN");
        Line("X-WR-CALNAME:Clutchwright");
        Line("REFRESH-INTERVAL;VALUE=DURATION:PT6H");
        var stamp = now.UtcDateTime.ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);

        // The day moves things as the book does: whichever was later.
        var midnight = calendar.On.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
        var changed = calendar.ChangedAt?.UtcDateTime is { } at && at > midnight ? at : midnight;
        var modified = (changed > now.UtcDateTime ? now.UtcDateTime : changed).ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
        foreach (var due in calendar.Overdue.Concat(calendar.Due).Where(d => d.Nine is not { } nine || nine.To.DayNumber - nine.From.DayNumber <= WidestDays))
        {
            var range = due.Nine is { } nine ? $" ({Short(nine.From)} to {Short(nine.To)})" : string.Empty;
            Event(due.Id, due.Likely ?? calendar.On, due.Level switch
            {
                CalendarLevel.InTime => due.What + range,
                CalendarLevel.Late => "Late: " + due.What + range,
                _ => "Overdue: " + due.What,
            }, Describe(calendar, due), "Due");
        }

        foreach (var task in calendar.Tasks)
        {
            Event(task.Id, task.By, task.What, task.Because + ".", "To prepare");
        }

        Line("END:VCALENDAR");
        return text.ToString();

        void Event(string id, DateOnly day, string summary, string description, string category)
        {
            Line("BEGIN:VEVENT");
            Line($"UID:{id}@clutchwright");
            Line($"DTSTAMP:{stamp}");
            Line($"LAST-MODIFIED:{modified}");
            Line(string.Create(CultureInfo.InvariantCulture, $"SEQUENCE:{Math.Min(calendar.Moved, int.MaxValue)}"));
            Line($"DTSTART;VALUE=DATE:{day:yyyyMMdd}");
            Line($"DTEND;VALUE=DATE:{day.AddDays(1):yyyyMMdd}");
            Line($"SUMMARY:{Escape(summary)}");
            Line($"DESCRIPTION:{Escape(description)}");
            Line($"CATEGORIES:{category}");
            Line("STATUS:TENTATIVE");
            Line("TRANSP:TRANSPARENT");
            Line("END:VEVENT");
        }

        void Line(string line) => Fold(text, line);
    }

    private static string Describe(CalendarAnswer calendar, CalendarDue due)
    {
        var lines = new List<string>();
        if (due.Advice is not null)
        {
            lines.Add(due.Advice);
        }

        if (due is { Likely: { } likely, Half: { } half, Nine: { } nine })
        {
            lines.Add($"Most likely {Day(likely)}. 1 in 2: {Day(half.From)} to {Day(half.To)}. 9 in 10: {Day(nine.From)} to {Day(nine.To)}.");
        }

        lines.Add($"Reckoned on {Day(calendar.On)}.");
        lines.AddRange(due.Why);
        return string.Join('\n', lines);
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Short(DateOnly day) => day.ToString("d MMM", CultureInfo.InvariantCulture);

    // RFC 5545, 3.3.11; other control characters may not stand in a text.
    private static string Escape(string value)
    {
        var text = new StringBuilder(value.Length + 8);
        foreach (var c in value.Replace("\r\n", "\n", StringComparison.Ordinal))
        {
            _ = c switch
            {
                '\\' or ';' or ',' => text.Append('\\').Append(c),
                '\n' or '\r' => text.Append("\\n"),
                _ when char.IsControl(c) => text.Append(' '),
                _ => text.Append(c),
            };
        }

        return text.ToString();
    }

    // RFC 5545, 3.1: a longer line goes on in the next, which begins with a space; a letter of several octets stays whole.
    private static void Fold(StringBuilder text, string line)
    {
        var octets = 0;
        foreach (var rune in line.EnumerateRunes())
        {
            if (octets + rune.Utf8SequenceLength > MostOctets)
            {
                text.Append("\r\n ");
                octets = 1;
            }

            text.Append(rune.ToString());
            octets += rune.Utf8SequenceLength;
        }

        text.Append("\r\n");
    }
}
