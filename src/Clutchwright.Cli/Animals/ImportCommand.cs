using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Animals;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Animals;

/// <summary><c>stock import</c>: shows how a file is read, then takes all of it or nothing.</summary>
internal static class ImportCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var file = new Argument<string>("FILE.csv") { Description = "A CSV file with a header row, in UTF-8." };
        var dryRun = new Option<bool>("--dry-run") { Description = "Show what would be written, and write nothing." };
        var mapping = Options.Mapping();
        var who = StockCommand.Who();
        var command = new Command("import", "Read animals from a file: all of them or, if one row is wrong, none.")
        {
            file,
            dryRun,
            mapping,
            who,
        };
        command.SetAction(async (asked, cancel) =>
        {
            var path = asked.GetRequiredValue(file);
            var bytes = await File.ReadAllBytesAsync(path, cancel);
            var map = asked.GetValue(mapping) is { Count: > 0 } given ? given : null;
            await using var questions = common.Open(asked);
            var preview = await questions.GetRequiredService<PreviewImport>().RunAsync(bytes, map, cancel);
            ImportDone? done = null;
            if (preview.Problems.Count == 0 && !asked.GetValue(dryRun))
            {
                var answer = await questions.GetRequiredService<ImportStock>()
                    .RunAsync(bytes, map, Path.GetFileName(path), asked.GetRequiredValue(who), cancel);
                if (answer.Value is null)
                {
                    return terminal.AskedWrongly(answer.Problems, _ => null);
                }

                done = answer.Value;
            }

            if (common.IsJson(asked))
            {
                terminal.Send(Json(preview, done));
            }
            else
            {
                Show(terminal, preview, done);
            }

            return preview.Problems.Count == 0
                ? ExitCode.Answered
                : terminal.AskedWrongly(
                    $"{path}: {preview.Problems.Count} {(preview.Problems.Count == 1 ? "problem" : "problems")}, nothing was written; the first: {Place(preview.Problems[0])}: {preview.Problems[0].Text}");
        });
        return command;
    }

    private static JsonObject Json(ImportPreview preview, ImportDone? done) => new()
    {
        ["written"] = done is not null,
        ["added"] = done?.Added ?? 0,
        ["skipped"] = done?.Skipped ?? 0,
        ["deed"] = done?.Deed,
        ["columns"] = JsonShapes.Array(preview.Columns, c => new JsonObject
        {
            ["header"] = c.Header,
            ["field"] = c.Field,
            ["sample"] = c.Sample,
        }),
        ["fields"] = JsonShapes.Array(preview.Fields),
        ["rows"] = JsonShapes.Array(preview.Rows, r => new JsonObject
        {
            ["row"] = r.Row,
            ["id"] = r.Tag,
            ["text"] = r.Text,
            ["skipped"] = r.IsSkipped,
        }),
        ["refused"] = JsonShapes.Array(preview.Problems, p => new JsonObject
        {
            ["row"] = p.Row,
            ["column"] = p.Column,
            ["text"] = p.Text,
        }),
    };

    private static void Show(Terminal terminal, ImportPreview preview, ImportDone? done)
    {
        var page = new Page(terminal);
        page.Heading("How the columns are read");
        page.Table(
            ["column", "read as", "for example"],
            [.. preview.Columns.Select(c => new[]
            {
                Page.Plain(c.Header), Page.Plain(c.Field ?? "kept as a note"), Page.Plain(c.Sample),
            })]);
        if (preview.Rows.Count > 0)
        {
            page.Heading("Rows");
            page.Table(
                [">row", "animal", "", ""],
                [.. preview.Rows.Select(r => new[]
                {
                    $"{r.Row}", Page.Plain(r.Tag), Page.Plain(r.Text), r.IsSkipped ? "already there" : string.Empty,
                })]);
        }

        if (preview.Problems.Count > 0)
        {
            page.Heading("Refused");
            page.Table(
                ["where", "why"],
                [.. preview.Problems.Select(p => new[] { Page.Plain(Place(p)), Page.Plain(p.Text) })]);
        }

        page.Heading((done, preview.Problems.Count) switch
        {
            ({ } written, _) => $"{Animals(written.Added)} added, {written.Skipped:N0} already there. To take it back: stock undo {written.Deed}",
            (null, 0) => $"Nothing was written. {Animals(preview.Rows.Count(r => !r.IsSkipped))} would be added, {preview.Rows.Count(r => r.IsSkipped):N0} are already there.",
            _ => "Nothing was written.",
        });
        page.Send();
    }

    private static string Animals(int count) => count == 1 ? "1 animal" : $"{count:N0} animals";

    private static string Place(ImportProblem problem) => (problem.Row, problem.Column) switch
    {
        (0, null) => "the file",
        (0, { } column) => $"column {column}",
        ({ } row, null) => $"row {row}",
        ({ } row, { } column) => $"row {row}, {column}",
    };
}
