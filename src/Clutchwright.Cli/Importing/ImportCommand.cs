using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Importing;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Importing;

/// <summary><c>stock import</c>, <c>stock import-log</c> and <c>clutch import</c>: show how a file is read, then take all of it or nothing.</summary>
internal static class ImportCommand
{
    public static Command Animals(CommonOptions common, Terminal terminal) =>
        Create(ImportKind.Animals, "import", "Read animals from a file: all of them or, if one row is wrong, none.", common, terminal);

    public static Command Clutches(CommonOptions common, Terminal terminal) =>
        Create(ImportKind.Clutches, "import", "Read clutches from a file: all of them or, if one row is wrong, none.", common, terminal);

    public static Command Log(CommonOptions common, Terminal terminal) =>
        Create(ImportKind.Log, "import-log", "Read entries of the log from a file: all of them or, if one row is wrong, none.", common, terminal);

    /// <summary>How the columns are read, and since when if that was remembered.</summary>
    internal static void ShowColumns(Page page, IReadOnlyList<ImportColumn> columns, DateOnly? since)
    {
        page.Heading(since is { } day ? $"How the columns are read, as on {Day(day)}" : "How the columns are read");
        page.Table(
            ["column", "read as", "for example"],
            [.. columns.Select(c => new[] { Page.Plain(c.Header), Page.Plain(c.Field ?? "kept as a note"), Page.Plain(c.Sample) })]);
    }

    internal static JsonArray Json(IReadOnlyList<ImportColumn> columns) => JsonShapes.Array(columns, c => new JsonObject
    {
        ["header"] = c.Header,
        ["field"] = c.Field,
        ["sample"] = c.Sample,
    });

    internal static string? IsoDay(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Takes what was previewed, unless something is wrong with it or it was only to be looked at, and tells.</summary>
    /// <param name="path">The file.</param>
    /// <param name="problems">How much is wrong with it.</param>
    /// <param name="first">The first of that, in words.</param>
    /// <param name="isDryRun">Whether nothing is to be written.</param>
    /// <param name="take">Takes it.</param>
    /// <param name="tell">Tells of the preview and of what was done.</param>
    /// <param name="terminal">Where it is told.</param>
    internal static async Task<int> TakeAsync(
        string path, int problems, Func<string> first, bool isDryRun, Func<Task<Answer<ImportDone>>> take, Action<ImportDone?> tell, Terminal terminal)
    {
        ImportDone? done = null;
        if (problems == 0 && !isDryRun)
        {
            var answer = await take();
            if (answer.Value is null)
            {
                return terminal.AskedWrongly(answer.Problems, _ => null);
            }

            done = answer.Value;
        }

        tell(done);
        return problems == 0
            ? ExitCode.Answered
            : terminal.AskedWrongly($"{path}: {problems:N0} {(problems == 1 ? "problem" : "problems")}, nothing was written; the first: {first()}");
    }

    private static string Day(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    private static Command Create(ImportKind kind, string name, string help, CommonOptions common, Terminal terminal)
    {
        var file = new Argument<string>("FILE.csv") { Description = "A CSV file with a header row, in UTF-8." };
        var dryRun = new Option<bool>("--dry-run") { Description = "Show what would be written, and write nothing." };
        var mapping = Options.Mapping();
        var who = StockCommand.Who();
        var command = new Command(name, help) { file, dryRun, mapping, who };
        command.SetAction(async (asked, cancel) =>
        {
            var path = asked.GetRequiredValue(file);
            var given = asked.GetValue(mapping) is { Count: > 0 } map ? map : null;
            var read = new ImportFile(await File.ReadAllBytesAsync(path, cancel), Path.GetFileName(path), given);
            await using var questions = common.Open(asked);
            var import = questions.GetRequiredService<ImportTable>();
            var preview = await import.PreviewAsync(kind, read, cancel);
            return await TakeAsync(
                path,
                preview.Problems.Count,
                () => Text(preview.Problems[0]),
                asked.GetValue(dryRun),
                () => import.RunAsync(kind, read, asked.GetRequiredValue(who), cancel),
                done =>
                {
                    if (common.IsJson(asked))
                    {
                        terminal.Send(Json(preview, done));
                    }
                    else
                    {
                        Show(terminal, preview, done);
                    }
                },
                terminal);
        });
        return command;
    }

    private static JsonObject Json(ImportPreview preview, ImportDone? done) => new()
    {
        ["written"] = done is not null,
        ["added"] = done?.Added ?? 0,
        ["skipped"] = done?.Skipped ?? 0,
        ["deed"] = done?.Deed,
        ["columns"] = Json(preview.Columns),
        ["mappedAsOn"] = IsoDay(preview.MappedAsOn),
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
        ShowColumns(page, preview.Columns, preview.MappedAsOn);
        if (preview.Rows.Count > 0)
        {
            page.Heading("Rows");
            page.Table(
                [">row", preview.Kind == ImportKind.Clutches ? "clutch" : "animal", "", ""],
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
                [.. preview.Problems.Select(p => new[] { Page.Plain(p.Where ?? "as a whole"), Page.Plain(p.Text) })]);
        }

        page.Heading((done, preview.Problems.Count) switch
        {
            ({ } written, _) => $"{Count(preview.Kind, written.Added)} added, {written.Skipped:N0} already there. To take it back: stock undo {written.Deed}",
            (null, 0) => $"Nothing was written. {Rows(preview.Kind, preview.Rows.Count(r => !r.IsSkipped))} would be added, {preview.Rows.Count(r => r.IsSkipped):N0} are already there.",
            _ => "Nothing was written.",
        });
        page.Send();
    }

    private static string Count(ImportKind kind, int count)
    {
        var (one, many) = kind switch
        {
            ImportKind.Clutches => ("clutch", "clutches"),
            ImportKind.Log => ("entry of the log", "entries of the log"),
            _ => ("animal", "animals"),
        };
        return $"{count:N0} {(count == 1 ? one : many)}";
    }

    // A row of the log may be a meal and a weighing.
    private static string Rows(ImportKind kind, int count) => kind == ImportKind.Log ? $"{count:N0} {(count == 1 ? "row" : "rows")}" : Count(kind, count);

    private static string Text(ImportProblem problem) => problem.Where is { } where ? $"{where}: {problem.Text}" : problem.Text;
}
