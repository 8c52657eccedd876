using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Backups;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Backups;

/// <summary><c>book check</c>: looks through all of the book.</summary>
internal static class CheckCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var command = new Command("check", "Look through the whole book: the file, the rules of its tables, and whether its history leads to what it holds.");
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var answer = await questions.GetRequiredService<CheckStock>().RunAsync(cancel);
            if (answer.Value is not { } found)
            {
                return terminal.CouldNot(answer.Problems[0].Text);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(new()
                {
                    ["sound"] = found.IsSound,
                    ["checks"] = JsonShapes.Array(found.Checks, c => new JsonObject { ["looked"] = c.Looked, ["wrong"] = JsonShapes.Array(c.Wrong) }),
                    ["book"] = BookWords.Json(found.Book),
                });
            }
            else
            {
                Show(terminal, found);
            }

            return found.IsSound ? ExitCode.Answered : terminal.CouldNot("The book is not whole; the lines above say where. Restore a backup from before that.");
        });
        return command;
    }

    private static void Show(Terminal terminal, CheckAnswer found)
    {
        var page = new Page(terminal);
        page.Heading("The book");
        page.Table(["", ""], [.. BookWords.Rows(found.Book)]);
        page.Heading("Looked through");
        page.Table(["", ""], [.. found.Checks.Select(c => new[] { Page.Plain(c.Looked), c.Wrong.Count == 0 ? "sound" : "not sound" })]);
        page.Points(found.Checks.SelectMany(c => c.Wrong));
        page.Send();
    }
}
