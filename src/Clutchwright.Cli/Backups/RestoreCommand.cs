using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Backups;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Backups;

/// <summary><c>book restore</c>: shows what a backup would change, and with <c>--yes</c> puts it back.</summary>
internal static class RestoreCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "A backup, or another book's own file." };
        var yes = new Option<bool>("--yes") { Description = "Do it; without this it is only shown what would be done." };
        var command = new Command("restore", "Put back everything that a backup holds, in place of everything that is in the book; shown first.") { file, yes };
        command.SetAction(async (asked, cancel) =>
        {
            var path = asked.GetRequiredValue(file);
            if (!File.Exists(path))
            {
                return terminal.CouldNot($"There is no file {path}.");
            }

            await using var questions = common.Open(asked, BackupVariables.Read(common.DataFolder(asked)));
            var restore = questions.GetRequiredService<RestoreStock>();
            var preview = await restore.PreviewAsync(path, cancel);
            if (preview.Value is not { } shown)
            {
                return terminal.CouldNot(preview.Problems[0].Text);
            }

            RestoreDone? done = null;
            if (asked.GetValue(yes))
            {
                var answer = await restore.RunAsync(path, shown.Mark, cancel);
                if (answer.Value is null)
                {
                    return terminal.CouldNot(answer.Problems[0].Text);
                }

                done = answer.Value;
            }

            if (common.IsJson(asked))
            {
                terminal.Send(Json(shown, done));
            }
            else
            {
                Show(terminal, shown, done);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static JsonObject Json(RestoreAnswer shown, RestoreDone? done) => new()
    {
        ["file"] = shown.File,
        ["backup"] = BookWords.Json(shown.Backup),
        ["present"] = BookWords.Json(shown.Present),
        ["same"] = shown.IsSame,
        ["lastCommonDeed"] = BookWords.Json(shown.Common),
        ["deedsLost"] = shown.Lost,
        ["deedsGained"] = shown.Gained,
        ["lastLost"] = JsonShapes.Array(shown.LastLost, BookWords.Json),
        ["restored"] = done is not null,
        ["before"] = BookWords.Json(done?.Before),
    };

    private static void Show(Terminal terminal, RestoreAnswer shown, RestoreDone? done)
    {
        var page = new Page(terminal);
        page.Heading("What would be put back");
        var counts = shown.Backup.Counts.Select(c => c.Words).Where(w => w == "animals" || shown.Backup[w] > 0 || shown.Present[w] > 0);
        page.Table(
            ["", ">backup", ">book now"],
            [.. counts.Select(w => new[] { Page.Plain(w), Number(shown.Backup[w]), Number(shown.Present[w]) })]);
        page.Table(
            ["", ""],
            [
                ["last deed of the backup", Page.Plain(BookWords.Deed(shown.Backup.LastDeed))],
                ["last deed of the book", Page.Plain(BookWords.Deed(shown.Present.LastDeed))],
                ["last deed in both", Page.Plain(BookWords.Deed(shown.Common))],
            ]);
        page.Line(shown.IsSame ? "The book holds just this already." : $"{Deeds(shown.Lost)} of the book would be lost, {Deeds(shown.Gained)} would come.");
        if (shown.LastLost.Count > 0)
        {
            page.Heading(shown.Lost > shown.LastLost.Count ? $"The last {shown.LastLost.Count} of those that would be lost" : "Would be lost");
            page.Points(shown.LastLost.Select(BookWords.Deed));
        }

        page.Heading(done switch
        {
            null => "Nothing was written. To do it: the same with --yes",
            { Before: { } before } => $"Restored. What was there before lies in {before.File}; to take it back, restore that.",
            _ => "Restored. The book was empty before.",
        });
        page.Send();
    }

    private static string Number(long count) => count.ToString("N0", CultureInfo.InvariantCulture);

    private static string Deeds(long count) => count == 1 ? "1 deed" : $"{Number(count)} deeds";
}
