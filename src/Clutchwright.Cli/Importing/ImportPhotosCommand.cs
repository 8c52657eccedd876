using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Importing;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Importing;

/// <summary><c>stock import-photos</c>: shows whose pictures a set holds, then keeps all of them or none.</summary>
internal static class ImportPhotosCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var file = new Argument<string>("FILE.zip") { Description = "A ZIP file of pictures, with a photos.csv or with names such as M-07_2024-07-03.jpg." };
        var dryRun = new Option<bool>("--dry-run") { Description = "Show what would be kept, and write nothing." };
        var mapping = Options.Mapping();
        var who = StockCommand.Who();
        var command = new Command("import-photos", "Keep the photos of a ZIP file: all of them or, if one is wrong, none.") { file, dryRun, mapping, who };
        command.SetAction(async (asked, cancel) =>
        {
            var path = asked.GetRequiredValue(file);
            await using var content = File.OpenRead(path);
            var set = new PhotoSet(content, Path.GetFileName(path), asked.GetValue(mapping) is { Count: > 0 } map ? map : null);
            await using var questions = common.Open(asked);
            var import = questions.GetRequiredService<ImportPhotoSet>();
            var preview = await import.PreviewAsync(set, cancel);
            return await ImportCommand.TakeAsync(
                path,
                preview.Problems.Count,
                () => $"{preview.Problems[0].Where}: {preview.Problems[0].Text}",
                asked.GetValue(dryRun),
                () => import.RunAsync(set, asked.GetRequiredValue(who), cancel),
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

    private static JsonObject Json(PhotoSetPreviewed preview, ImportDone? done) => new()
    {
        ["written"] = done is not null,
        ["added"] = done?.Added ?? 0,
        ["skipped"] = done?.Skipped ?? 0,
        ["deed"] = done?.Deed,
        ["columns"] = ImportCommand.Json(preview.Columns),
        ["mappedAsOn"] = ImportCommand.IsoDay(preview.MappedAsOn),
        ["fields"] = JsonShapes.Array(preview.Fields),
        ["photos"] = JsonShapes.Array(preview.Photos, p => new JsonObject
        {
            ["file"] = p.File,
            ["id"] = p.Tag,
            ["taken"] = p.Taken,
            ["note"] = p.Note,
            ["skipped"] = p.IsSkipped,
        }),
        ["refused"] = JsonShapes.Array(preview.Problems, p => new JsonObject { ["where"] = p.Where, ["text"] = p.Text }),
    };

    private static void Show(Terminal terminal, PhotoSetPreviewed preview, ImportDone? done)
    {
        var page = new Page(terminal);
        if (preview.Columns.Count > 0)
        {
            ImportCommand.ShowColumns(page, preview.Columns, preview.MappedAsOn);
        }

        if (preview.Photos.Count > 0)
        {
            page.Heading("Photos");
            page.Table(
                ["file", "animal", "taken", "", ""],
                [.. preview.Photos.Select(p => new[] { Page.Plain(p.File), Page.Plain(p.Tag), Page.Plain(p.Taken), Page.Plain(p.Note), p.IsSkipped ? "already there" : string.Empty })]);
        }

        if (preview.Problems.Count > 0)
        {
            page.Heading("Refused");
            page.Table(["where", "why"], [.. preview.Problems.Select(p => new[] { Page.Plain(p.Where), Page.Plain(p.Text) })]);
        }

        page.Heading((done, preview.Problems.Count) switch
        {
            ({ } written, _) => $"{Count(written.Added)} added, {written.Skipped:N0} already there. To take it back: stock undo {written.Deed}",
            (null, 0) => $"Nothing was written. {Count(preview.Photos.Count(p => !p.IsSkipped))} would be added, {preview.Photos.Count(p => p.IsSkipped):N0} are already there.",
            _ => "Nothing was written.",
        });
        page.Send();
    }

    private static string Count(int count) => count == 1 ? "1 photo" : $"{count:N0} photos";
}
