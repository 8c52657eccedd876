using System.Text;
using System.Text.Json.Nodes;
using Clutchwright.Desk.Calendar;
using Clutchwright.Reference.Tests.Programs;

namespace Clutchwright.Reference.Tests.Calendars;

/// <summary>Our iCalendar files say to two independent readers what we meant: python3-icalendar and Ical.Net.</summary>
public sealed class CalendarFileTests
{
    private const string Nasty = "Eggs of Ä\\b;c,\"d\" 🥚 Großmutter ⟨x⟩: ein sehr langer Name, damit die Zeile über fünfundsiebzig Oktette hinausgeht und gefaltet wird";
    private static readonly DateOnly Day = new(2026, 2, 27);
    private static readonly DateTimeOffset Now = new(2026, 2, 27, 9, 30, 0, TimeSpan.Zero);

    [Fact]
    public async Task Write_ReadByPythonICalendar_SaysTheSame()
    {
        var folder = Directory.CreateTempSubdirectory("clutchwright-calendar-").FullName;
        try
        {
            await File.WriteAllTextAsync(Path.Combine(folder, "season.ics"), CalendarFile.Write(Sample(), Now), new UTF8Encoding(false), TestContext.Current.CancellationToken);

            var said = await ReferenceProgram.Python.RunAsync(folder, TimeSpan.FromSeconds(60), Path.Combine(AppContext.BaseDirectory, "Calendars", "read.py"), "season.ics");

            var events = JsonNode.Parse(said)!.AsArray();
            Assert.Equal(3, events.Count);
            Assert.All(events, e => Assert.Equal(0, (int)e!["errors"]!));
            Assert.Equal(["eggs-1@clutchwright", "pip-2@clutchwright", "prepare-pip-2@clutchwright"], events.Select(e => (string?)e!["uid"]));
            Assert.Equal(("2026-03-01", "2026-03-02", 77), ((string?)events[1]!["from"], (string?)events[1]!["to"], (int)events[1]!["sequence"]!));
            Assert.Equal("Overdue: " + Nasty, (string?)events[0]!["summary"]);
            Assert.StartsWith("Line one, with; signs \\ too\nReckoned on 2026-02-27.\n", (string?)events[0]!["description"], StringComparison.Ordinal);
            Assert.StartsWith("2026-02-27T09:30:00", (string?)events[0]!["stamp"], StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Write_ReadByICalNet_SaysTheSame()
    {
        var calendar = Ical.Net.Calendar.Load(CalendarFile.Write(Sample(), Now))!;

        Assert.Equal(3, calendar.Events.Count);
        var first = calendar.Events.Single(e => e.Uid == "eggs-1@clutchwright");
        Assert.Equal("Overdue: " + Nasty, first.Summary);
        var second = calendar.Events.Single(e => e.Uid == "pip-2@clutchwright");
        Assert.True(second.IsAllDay);
        Assert.Equal(new DateOnly(2026, 3, 1), second.Start!.Date);
        Assert.Equal(77, second.Sequence);
    }

    [Fact]
    public void Write_AnyText_KeepsLinesShortAndEndedByCrLf()
    {
        // RFC 5545, 3.1: lines of at most 75 octets without the break, broken by CR LF and a space.
        var file = CalendarFile.Write(Sample(), Now);

        Assert.EndsWith("END:VCALENDAR\r\n", file, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', file.Replace("\r\n", string.Empty, StringComparison.Ordinal));
        Assert.All(file.Split("\r\n"), line => Assert.InRange(Encoding.UTF8.GetByteCount(line), 0, 75));
        Assert.DoesNotContain('\uFFFD', file);
    }

    private static CalendarAnswer Sample()
    {
        var overdue = new CalendarDue("eggs-1", "Eggs", Nasty, "Ä", [], null, null, null, null, 0.0, 1.0, CalendarLevel.Overdue, "Line one, with; signs \\ too", ["Because\r\nof this."]);
        var due = new CalendarDue(
            "pip-2", "Pip", "First pip of B", "B", [], new(2026, 3, 1), new(2026, 3, 1), new(new(2026, 2, 28), new(2026, 3, 2)), new(new(2026, 2, 27), new(2026, 3, 5)), 1.0, 1.0, CalendarLevel.InTime, null, ["Laid."]);
        var wide = due with { Id = "ovulation-3", Nine = new(new(2026, 2, 27), new(2026, 6, 27)) };
        return new(Day, Day, Day.AddDays(30), [overdue], [due, wide], [new("prepare-pip-2", Day, "Tubs", "B", due)], [], [], [], 77, Now);
    }
}
