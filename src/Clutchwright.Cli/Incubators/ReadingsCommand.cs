using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Incubators;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Incubators;

/// <summary><c>incubator readings</c>: the readings of an incubator and its time outside the limits; with a file takes a logger's readings in.</summary>
internal static class ReadingsCommand
{
    private const int UsualDays = 14;
    private const int UsualRows = 50;

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var name = IncubatorCommand.Name();
        var file = new Argument<string?>("FILE.csv") { Description = "A logger's file with a time, a temperature and a humidity column, to take in; left out: show the readings.", Arity = ArgumentArity.ZeroOrOne };
        var days = Options.Count("--days", $"Over the last N days. Default: {UsualDays}.", "N", 1, 100_000);
        var most = Options.Count("--most", $"List at most N readings, the latest first. Default: {UsualRows}.", "N", 1, 1_000_000);
        var dryRun = new Option<bool>("--dry-run") { Description = "Show how the file is read, and write nothing." };
        var mapping = Options.Mapping();
        var dates = new Option<string?>("--dates") { Description = "Which number of 03/04/2026 is the day, where the file does not tell: dmy or mdy.", HelpName = "ORDER" };
        var who = StockCommand.Who();
        var command = new Command("readings", "What was read off an incubator and how long it was outside its limits; with a file, take a logger's readings in: all or none.")
        {
            name, file, days, most, dryRun, mapping, dates, who,
        };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            if (asked.GetValue(file) is { } path)
            {
                var map = asked.GetValue(mapping) is { Count: > 0 } given ? given : null;
                var read = new ReadingsFile(await File.ReadAllBytesAsync(path, cancel), Path.GetFileName(path), map, asked.GetValue(dates));
                return await TakeAsync(questions.GetRequiredService<TakeReadings>(), asked.GetRequiredValue(name), read, asked.GetValue(dryRun), asked.GetRequiredValue(who), common.IsJson(asked), terminal, cancel);
            }

            var answer = await questions.GetRequiredService<ShowIncubator>().RunAsync(asked.GetRequiredValue(name), asked.GetValue(days) ?? UsualDays, cancel);
            if (answer.Value is not { } shown)
            {
                return terminal.AskedWrongly(answer.Problems, _ => null);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(Json(shown, asked.GetValue(most) ?? UsualRows));
            }
            else
            {
                Show(terminal, shown, asked.GetValue(most) ?? UsualRows);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static async Task<int> TakeAsync(
        TakeReadings take, string name, ReadingsFile file, bool isDryRun, string who, bool isJson, Terminal terminal, CancellationToken cancel)
    {
        var preview = await take.PreviewAsync(name, file, cancel);
        if (preview.Value is not { } shown)
        {
            return terminal.AskedWrongly(preview.Problems, _ => null);
        }

        ReadingsTaken? taken = null;
        if (shown.Problems.Count == 0 && !isDryRun)
        {
            var done = await take.RunAsync(name, file, who, cancel);
            if (done.Value is null)
            {
                return terminal.AskedWrongly(done.Problems, _ => null);
            }

            taken = done.Value;
        }

        if (isJson)
        {
            terminal.Send(Json(shown, taken));
        }
        else
        {
            Show(terminal, shown, taken);
        }

        return shown.Problems.Count == 0
            ? ExitCode.Answered
            : terminal.AskedWrongly($"{file.FileName}: {shown.Problems.Count} {(shown.Problems.Count == 1 ? "problem" : "problems")}, nothing was written; the first: {shown.Problems[0].Where}: {shown.Problems[0].Text}");
    }

    private static void Show(Terminal terminal, ReadingsPreviewed preview, ReadingsTaken? taken)
    {
        var page = new Page(terminal);
        page.Heading("How the columns are read");
        page.Table(["column", "read as", "for example"], [.. preview.Columns.Select(c => new[] { Page.Plain(c.Header), Page.Plain(c.Field ?? "left out"), Page.Plain(c.Sample) })]);
        if (preview.Problems.Count > 0)
        {
            page.Heading("Refused");
            page.Table(["where", "why"], [.. preview.Problems.Select(p => new[] { Page.Plain(p.Where), Page.Plain(p.Text) })]);
        }

        page.Heading((taken, preview.Problems.Count) switch
        {
            ({ Deed: { } deed } written, _) => $"{Count(written.Added)} of {preview.Incubator} written, {written.Skipped:N0} already there. To take it back: stock undo {deed}",
            ({ } nothing, _) => $"Nothing new: all {nothing.Skipped:N0} are there already.",
            (null, 0) => $"Nothing was written. {Count(preview.Fresh)} of {preview.Incubator} would be, {preview.Skipped:N0} are already there, {preview.Outside:N0} are outside its limits.",
            _ => "Nothing was written.",
        });
        page.Send();
    }

    private static void Show(Terminal terminal, IncubatorAnswer answer, int most)
    {
        var page = new Page(terminal);
        page.Heading($"Readings of {answer.Incubator.Name}");
        page.Points(answer.Incubator.Remarks);
        page.Table(
            ["", "", "known", "outside", "longest", "since"],
            [
                Row("temperature", answer.Temperature, v => TemperatureText.Of(v, answer.Unit)),
                Row("humidity", answer.Humidity, TemperatureText.Humidity),
            ]);
        page.Heading(answer.Readings.Count == 0 ? "No readings in this time" : Count(answer.Readings.Count));
        page.Table(
            ["when", "read", ""],
            [.. answer.Readings.Reverse().Take(most).Select(r => new[] { IncubatorCommand.Instant(r.TakenAt), Page.Plain(IncubatorCommand.Reading(r, answer.Unit)), Page.Plain(r.Text) })]);
        page.Send();

        static string[] Row(string what, Curve? curve, Func<double, string> words) => curve is null ? ["", "", "", "", "", ""] :
        [
            what,
            $"{words(curve.Least)} to {words(curve.Most)}",
            curve.Time is { } time ? DurationText.Of(time.Known) : string.Empty,
            curve.Time is { } outside ? DurationText.Of(outside.Outside) : string.Empty,
            curve.Time?.Longest is { } longest ? DurationText.Of(longest.Length) : string.Empty,
            curve.Time?.Longest is { } since ? IncubatorCommand.Instant(new DateTimeOffset(since.From)) : string.Empty,
        ];
    }

    private static JsonObject Json(ReadingsPreviewed preview, ReadingsTaken? taken) => new()
    {
        ["written"] = taken?.Deed is not null,
        ["added"] = taken?.Added ?? 0,
        ["skipped"] = taken?.Skipped ?? preview.Skipped,
        ["deed"] = taken?.Deed,
        ["fresh"] = preview.Fresh,
        ["outside"] = preview.Outside,
        ["columns"] = JsonShapes.Array(preview.Columns, c => new JsonObject { ["header"] = c.Header, ["field"] = c.Field, ["sample"] = c.Sample }),
        ["refused"] = JsonShapes.Array(preview.Problems, p => new JsonObject { ["line"] = p.Line, ["column"] = p.Column, ["text"] = p.Text }),
    };

    private static JsonObject Json(IncubatorAnswer answer, int most) => new()
    {
        ["incubator"] = IncubatorCommand.Json(answer.Incubator),
        ["temperature"] = Json(answer.Temperature),
        ["humidity"] = Json(answer.Humidity),
        ["readings"] = JsonShapes.Array(answer.Readings.Reverse().Take(most), IncubatorCommand.Json),
    };

    private static JsonObject? Json(Curve? curve) => curve is null ? null : new()
    {
        ["least"] = curve.Least,
        ["most"] = curve.Most,
        ["knownMinutes"] = curve.Time?.Known.TotalMinutes,
        ["outsideMinutes"] = curve.Time?.Outside.TotalMinutes,
        ["longestMinutes"] = curve.Time?.Longest?.Length.TotalMinutes,
        ["longestFrom"] = curve.Time?.Longest?.From.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
        ["readingsOutside"] = curve.Time?.ReadingsOutside,
    };

    private static string Count(int count) => count == 1 ? "1 reading" : $"{count:N0} readings";
}
