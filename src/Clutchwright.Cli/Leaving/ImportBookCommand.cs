using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Backups;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Leaving;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Leaving;

/// <summary><c>book import</c>: shows what a file of a whole book holds, and with <c>--yes</c> fills the book with it.</summary>
internal static class ImportBookCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "A .zip or .json as book export writes them." };
        var yes = new Option<bool>("--yes") { Description = "Do it; without this it is only shown what would be done." };
        var replace = new Option<bool>("--replace") { Description = "Also if the book holds something: that is backed up, and gives way." };
        var withoutPhotos = new Option<bool>("--without-photos") { Description = "Take a .json that names photos without them; their pictures are in the .zip only." };
        var who = StockCommand.Who();
        var command = new Command("import", "Fill an empty book with everything that book export wrote: all of it or nothing; shown first.") { file, yes, replace, withoutPhotos, who };
        command.SetAction(async (asked, cancel) =>
        {
            var path = asked.GetRequiredValue(file);
            if (!File.Exists(path))
            {
                return terminal.CouldNot($"There is no file {path}.");
            }

            await using var questions = common.Open(asked, BackupVariables.Read(common.DataFolder(asked)));
            var come = questions.GetRequiredService<ReturnBook>();
            var returning = new ReturningFile(path, Path.GetFileName(path), asked.GetValue(withoutPhotos));
            var preview = await come.PreviewAsync(returning, cancel);
            if (preview.Value is not { } shown)
            {
                return Refused(terminal, preview.Problems);
            }

            ReturnDone? done = null;
            if (asked.GetValue(yes))
            {
                var answer = await come.RunAsync(returning, shown.Mark, asked.GetValue(replace), asked.GetRequiredValue(who), cancel);
                if (answer.Value is null)
                {
                    return answer.Problems is [{ Where: "book" }, ..]
                        ? terminal.AskedWrongly($"{answer.Problems[0].Text} --replace does that.")
                        : Refused(terminal, answer.Problems);
                }

                done = answer.Value;
            }

            if (common.IsJson(asked))
            {
                terminal.Send(Json(shown, done));
            }
            else
            {
                Show(terminal, shown, done, asked.GetValue(replace));
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static int Refused(Terminal terminal, IReadOnlyList<AskedWrongly> problems) =>
        problems[0].Where == LeaveBook.Disk ? terminal.CouldNot(problems[0].Text) : terminal.AskedWrongly(problems, _ => null);

    private static JsonObject Json(ReturnAnswer shown, ReturnDone? done) => new()
    {
        ["file"] = shown.File,
        ["counts"] = ExportBookCommand.Counts(shown.Counts),
        ["photosLeftOut"] = shown.PhotosLeftOut,
        ["present"] = BookWords.Json(shown.Present),
        ["empty"] = shown.IsEmpty,
        ["written"] = done is not null,
        ["before"] = BookWords.Json(done?.Before),
    };

    private static void Show(Terminal terminal, ReturnAnswer shown, ReturnDone? done, bool isReplacing)
    {
        var page = new Page(terminal);
        page.Heading("What would come back");
        page.Table(["", ""], [.. shown.Counts.Where(c => c.Count > 0).Select(c => new[] { Page.Plain(c.Words), c.Count.ToString("N0", CultureInfo.InvariantCulture) })]);
        if (shown.PhotosLeftOut > 0)
        {
            page.Line($"{shown.PhotosLeftOut:N0} photos stay behind: their pictures are in the .zip only.");
        }

        if (!shown.IsEmpty && done is null)
        {
            page.Heading("What the book holds now");
            page.Table(["", ""], [.. BookWords.Rows(shown.Present)]);
            page.Line("It is not empty. With --replace all that is backed up and gives way, the history too.");
        }

        page.Heading(done switch
        {
            null => $"Nothing was written. To do it: the same with {(shown.IsEmpty || isReplacing ? "--yes" : "--replace --yes")}",
            { Before: { } before } => $"Everything came back. What was there before lies in {before.File}; to take it back, restore that.",
            _ => "Everything came back. The book was empty before. To take it back: stock undo 1",
        });
        page.Send();
    }
}
