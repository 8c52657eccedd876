using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Backups;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Leaving;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Leaving;

/// <summary><c>book export</c>: everything in a file that other programs can read.</summary>
internal static class ExportBookCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var file = new Argument<string>("FILE")
        {
            Description = "Where to write, by its ending: .zip (everything, with the photos), .json (everything but the pictures) or .ped (the pedigree in linkage format). "
                + "An existing file is not overwritten.",
        };
        var command = new Command("export", "Write everything but the history to a file that other programs can read, and this one can read back.") { file };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var answer = await questions.GetRequiredService<LeaveBook>().RunAsync(asked.GetRequiredValue(file), cancel);
            if (answer.Value is not { } left)
            {
                return answer.Problems[0].Where == LeaveBook.Disk ? terminal.CouldNot(answer.Problems[0].Text) : terminal.AskedWrongly(answer.Problems, _ => null);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(new()
                {
                    ["files"] = JsonShapes.Array(left.Files),
                    ["bytes"] = left.Bytes,
                    ["counts"] = Counts(left.Counts),
                    ["pictures"] = left.Pictures,
                });
                return ExitCode.Answered;
            }

            var page = new Page(terminal);
            page.Heading("Written");
            page.Table(
                ["", ""],
                [
                    .. left.Files.Select(f => new[] { "file", Page.Plain(f) }),
                    ["size", BookWords.Size(left.Bytes)],
                    .. left.Counts.Where(c => c.Count > 0).Select(c => new[] { Page.Plain(c.Words), c.Count.ToString("N0", CultureInfo.InvariantCulture) }),
                ]);
            page.Line("The history of who changed what is not in it; a backup carries that.");
            page.Send();
            return ExitCode.Answered;
        });
        return command;
    }

    /// <summary>Counts by their words.</summary>
    public static JsonObject Counts(IEnumerable<Desk.Backups.BookCount> counts)
    {
        var json = new JsonObject();
        foreach (var count in counts)
        {
            json[count.Words] = count.Count;
        }

        return json;
    }
}
