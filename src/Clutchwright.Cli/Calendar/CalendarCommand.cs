using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Calendar;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Calendar;

/// <summary><c>season calendar</c>: what is due when, what is late, and what is to be prepared.</summary>
internal static class CalendarCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var from = new Option<DateOnly?>("--from")
        {
            Description = "The first day told of. A past day is reckoned as on that day, without what was written of later days. Default: today.",
            HelpName = "YYYY-MM-DD",
            CustomParser = given =>
            {
                if (DateOnly.TryParseExact(given.Tokens[0].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
                {
                    return day;
                }

                given.AddError($"--from: '{given.Tokens[0].Value}' is no day; write it as 2026-03-14");
                return null;
            },
        };
        var days = Options.Count("--days", $"Tell of N days. Default: {ShowCalendar.UsualDays}.", "N", 1, ShowCalendar.MostDays);
        var file = new Option<string?>("--ics")
        {
            Description = "Write it as an iCalendar file too, for a calendar program.",
            HelpName = "FILE.ics",
        };
        var command = new Command("calendar", "What is due when, with its range, what is late, and what is to be prepared.") { from, days, file };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var answer = await questions.GetRequiredService<ShowCalendar>().RunAsync(
                asked.GetValue(from), asked.GetValue(days) ?? ShowCalendar.UsualDays, asOnThatDay: true, cancel);
            if (answer.Value is not { } calendar)
            {
                return terminal.AskedWrongly(answer.Problems, _ => null);
            }

            if (asked.GetValue(file) is { } path)
            {
                await File.WriteAllTextAsync(path, CalendarFile.Write(calendar, questions.GetRequiredService<TimeProvider>().GetUtcNow()), new UTF8Encoding(false), cancel);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(Json(calendar));
            }
            else
            {
                Send(terminal, calendar);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static void Send(Terminal terminal, CalendarAnswer calendar)
    {
        var page = new Page(terminal);
        page.Heading($"Calendar from {Day(calendar.From)} to {Day(calendar.To)}");
        if (calendar.On < calendar.From || calendar.On > calendar.From)
        {
            page.Line($"Reckoned on {Day(calendar.On)}.");
        }

        if (calendar.IsEmpty)
        {
            page.Line("Nothing is due. Write down pairings, ovulation, sheds and layings with stock note, and this page fills.");
        }

        if (calendar.Overdue.Count > 0)
        {
            page.Heading("Later than it should be");
            foreach (var due in calendar.Overdue)
            {
                page.Line($"{(due.Level == CalendarLevel.Overdue ? "Overdue" : "Late")}: {due.What}. {due.Advice}");
            }
        }

        if (calendar.Tasks.Count > 0)
        {
            page.Heading("To prepare");
            page.Table(["by", "what", "for"], [.. calendar.Tasks.Select(t => new[] { Page.Plain(Day(t.By)), Page.Seen(t.What), Page.Plain(t.Because) })]);
        }

        if (calendar.Due.Count > 0)
        {
            page.Heading("Due");
            page.Table(
                ["most likely", "what", "1 in 2", "9 in 10"],
                [.. calendar.Due.Select(d => new[] { Page.Plain(Day(d.Likely)), Page.Seen(d.What), Page.Plain(Range(d.Half)), Page.Plain(Range(d.Nine)) })]);
        }

        foreach (var doubt in calendar.Doubts)
        {
            page.Line(doubt);
        }

        page.Send();
    }

    private static JsonObject Json(CalendarAnswer calendar) => new()
    {
        ["on"] = Day(calendar.On),
        ["from"] = Day(calendar.From),
        ["to"] = Day(calendar.To),
        ["overdue"] = JsonShapes.Array(calendar.Overdue, Json),
        ["due"] = JsonShapes.Array(calendar.Due, Json),
        ["tasks"] = JsonShapes.Array(calendar.Tasks, t => new JsonObject { ["by"] = Day(t.By), ["what"] = t.What, ["dam"] = t.Tag, ["because"] = t.Because }),
        ["past"] = JsonShapes.Array(calendar.Past, p => new JsonObject { ["day"] = Day(p.Day), ["when"] = p.When, ["id"] = p.Tag, ["what"] = p.What }),
        ["intervals"] = JsonShapes.Array(calendar.Learnt, l => new JsonObject
        {
            ["interval"] = l.Interval,
            ["words"] = l.Words,
            ["prior"] = new JsonObject { ["mean"] = l.PriorMean, ["sd"] = l.PriorSd, ["grade"] = l.Grade, ["records"] = l.Weight },
            ["records"] = l.Records,
            ["mean"] = Math.Round(l.Mean, 2),
            ["sd"] = Math.Round(l.Sd, 2),
        }),
        ["doubts"] = JsonShapes.Array(calendar.Doubts),
    };

    private static JsonObject Json(CalendarDue due) => new()
    {
        ["id"] = due.Id,
        ["step"] = due.Step,
        ["what"] = due.What,
        ["dam"] = due.Tag,
        ["animals"] = JsonShapes.Array(due.Animals),
        ["likely"] = due.Likely is null ? null : Day(due.Likely),
        ["median"] = due.Median is null ? null : Day(due.Median),
        ["half"] = Json(due.Half),
        ["nine"] = Json(due.Nine),
        ["stillOpen"] = due.StillOpen,
        ["willHappen"] = due.WillHappen,
        ["level"] = due.Level.ToString(),
        ["advice"] = due.Advice,
        ["why"] = JsonShapes.Array(due.Why),
    };

    private static JsonArray? Json(CalendarDays? days) => days is null ? null : [Day(days.From), Day(days.To)];

    private static string Range(CalendarDays? days) => days is null ? string.Empty : $"{Day(days.From)} to {Day(days.To)}";

    private static string Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? string.Empty;
}
