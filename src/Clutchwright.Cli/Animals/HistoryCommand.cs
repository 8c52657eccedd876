using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Animals;

/// <summary><c>stock history</c>: what was done to the book, latest first.</summary>
internal static class HistoryCommand
{
    private const int Usual = 30;

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var most = Options.Count("--most", $"List at most N deeds. Default: {Usual}.", "N", 1, 1_000_000);
        var command = new Command("history", "What was done to your stock, latest first: who, when, before and after.") { most };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var deeds = await questions.GetRequiredService<ListDeeds>().RunAsync(before: null, asked.GetValue(most) ?? Usual, cancel);
            if (common.IsJson(asked))
            {
                terminal.Send(new() { ["deeds"] = JsonShapes.Array(deeds, Json) });
            }
            else
            {
                Show(terminal, deeds);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    /// <summary>One deed in JSON.</summary>
    /// <summary>Tells of a deed that was done, or why it was not.</summary>
    public static int Done(bool isJson, Terminal terminal, Answer<DeedLine> done)
    {
        if (done.Value is not { } deed)
        {
            return terminal.AskedWrongly(done.Problems, _ => null);
        }

        if (isJson)
        {
            terminal.Send(Json(deed));
        }
        else
        {
            terminal.Output.Write($"{deed.Words}. To take it back: stock undo {deed.Id}\n");
        }

        return ExitCode.Answered;
    }

    public static JsonObject Json(DeedLine deed) => new()
    {
        ["id"] = deed.Id,
        ["when"] = deed.When.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
        ["who"] = deed.Who,
        ["what"] = deed.Words,
        ["undone"] = deed.IsUndone,
        ["changes"] = JsonShapes.Array(deed.Changes, c => new JsonObject
        {
            ["record"] = c.Record,
            ["field"] = c.Field,
            ["before"] = c.Before,
            ["after"] = c.After,
        }),
    };

    private static void Show(Terminal terminal, IReadOnlyList<DeedLine> deeds)
    {
        var page = new Page(terminal);
        if (deeds.Count == 0)
        {
            page.Line("Nothing was done yet.");
        }
        else
        {
            page.Table(
                [">deed", "when (UTC)", "who", "what", "", "changes"],
                [.. deeds.Select(d => new[]
                {
                    $"{d.Id}",
                    d.When.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
                    Page.Plain(d.Who),
                    Page.Plain(d.Words),
                    d.IsUndone ? "undone" : string.Empty,
                    Page.Plain(Changes(d)),
                })]);
        }

        page.Send();
    }

    private static string Changes(DeedLine deed)
    {
        const int shown = 3;
        var changes = deed.Changes.Take(shown).Select(c => $"{c.Record} {c.Field}: {c.Before ?? "—"} → {c.After ?? "—"}");
        var more = deed.Changes.Count - shown;
        return string.Join("; ", changes) + (more > 0 ? $"; and {more:N0} more" : string.Empty);
    }
}
