using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Leaving;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Backups;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Backups;

/// <summary><c>book</c>: what the book holds, its backups, and whether it is whole.</summary>
internal static class BookCommand
{
    private const int MostShown = 10;

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var command = new Command("book", "What your book holds and where it lies; its backups; whether it is whole; leaving with everything and coming back.")
        {
            BackupCommand.Create(common, terminal),
            RestoreCommand.Create(common, terminal),
            CheckCommand.Create(common, terminal),
            ExportBookCommand.Create(common, terminal),
            ImportBookCommand.Create(common, terminal),
        };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked, BackupVariables.Read(common.DataFolder(asked)));
            var answer = await questions.GetRequiredService<ShowBook>().RunAsync(cancel);
            if (answer.Value is not { } standing)
            {
                return terminal.CouldNot(answer.Problems[0].Text);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(Json(standing));
            }
            else
            {
                Show(terminal, standing);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static JsonObject Json(BookStanding standing) => new()
    {
        ["place"] = standing.Place,
        ["book"] = BookWords.Json(standing.Book),
        ["backups"] = new JsonObject
        {
            ["folder"] = standing.Settings.Folder,
            ["hour"] = standing.Settings.Hour,
            ["keep"] = new JsonObject { ["daily"] = standing.Settings.Daily, ["weekly"] = standing.Settings.Weekly, ["monthly"] = standing.Settings.Monthly },
            ["changedSince"] = standing.IsChangedSince,
            ["files"] = JsonShapes.Array(standing.Backups, b => new JsonObject
            {
                ["name"] = b.Name,
                ["bytes"] = b.Bytes,
                ["when"] = BookWords.Instant(b.MadeAt),
                ["reason"] = b.Reason is { } reason ? BookWords.Of(reason) : null,
            }),
        },
    };

    private static void Show(Terminal terminal, BookStanding standing)
    {
        var page = new Page(terminal);
        page.Heading("The book");
        page.Table(["", ""], [["lies in", Page.Plain(standing.Place)], .. BookWords.Rows(standing.Book)]);
        page.Heading("Backups");
        page.Line(Page.Plain($"In {standing.Settings.Folder}; serve makes one {(standing.Settings.Hour is { } hour ? $"a day after {hour}:00, if anything was done since the last" : "only when asked")}."));
        if (standing.Backups.Count == 0)
        {
            page.Line("There is none yet. book backup makes one.");
        }
        else
        {
            page.Table(
                ["made (UTC)", ">size", "why", "file"],
                [.. standing.Backups.Take(MostShown).Select(b => new[]
                {
                    b.MadeAt.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
                    BookWords.Size(b.Bytes),
                    Page.Plain(b.Reason is { } reason ? BookWords.Of(reason) : string.Empty),
                    Page.Plain(b.Name),
                })]);
            page.Line(standing.IsChangedSince is true ? "Something was done since the latest of them." : "Nothing was done since the latest of them.");
        }

        page.Send();
    }
}
