using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Season;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Season;

/// <summary><c>season keep</c> and <c>season show</c>: what your book keeps of a season.</summary>
internal static class KeptSeasonCommands
{
    public const int FirstYear = 1900;
    public const int LastYear = 2200;

    public static Command Keep(CommonOptions common, Terminal terminal)
    {
        var year = Year();
        var goals = new Option<string>("--goals")
        {
            Description = "What is wanted of the season, and its limits: a JSON file, described in docs/how-to/season.md.",
            HelpName = "FILE",
            Required = true,
        };
        var who = StockCommand.Who();
        var command = new Command("keep", "Keep the goals, limits and choices of a file in your book, in place of what was kept of that season.") { goals, year, who };
        command.SetAction(async (asked, cancel) =>
        {
            var path = asked.GetRequiredValue(goals);
            var file = new NamedFile(Path.GetFileName(path), await File.ReadAllBytesAsync(path, cancel));
            await using var questions = common.Open(asked);
            var known = await questions.GetRequiredService<ShowSeason>().RunAsync(asked.GetValue(year), cancel);
            var done = await questions.GetRequiredService<KeepSeason>().RunAsync(known.Year, known.Version, file, asked.GetRequiredValue(who), cancel);
            if (done.Value is not { } deed)
            {
                return terminal.AskedWrongly(done.Problems, _ => null);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(new() { ["year"] = known.Year, ["deed"] = HistoryCommand.Json(deed) });
            }
            else
            {
                terminal.Output.Write($"{deed.Words}. To take it back: stock undo {deed.Id}\n");
            }

            return ExitCode.Answered;
        });
        return command;
    }

    public static Command Show(CommonOptions common, Terminal terminal)
    {
        var year = Year();
        var command = new Command("show", "The goals, limits and choices that your book keeps of a season, as a goals file.") { year };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var kept = await questions.GetRequiredService<ShowSeason>().RunAsync(asked.GetValue(year), cancel);
            if (common.IsJson(asked))
            {
                terminal.Send(new()
                {
                    ["year"] = kept.Year,
                    ["season"] = kept.Goals is null ? null : JsonNode.Parse(kept.Goals),
                    ["years"] = new JsonArray([.. kept.Years.Select(y => (JsonNode?)y)]),
                    ["notes"] = JsonShapes.Array(kept.Notes),
                });
            }
            else if (kept.Goals is null)
            {
                terminal.Output.Write($"Your book keeps nothing of the season of {kept.Year}.\n");
            }
            else
            {
                terminal.Output.Write($"{kept.Goals}\n");
            }

            return ExitCode.Answered;
        });
        return command;
    }

    public static Option<int?> Year() => Options.Count(
        "--year", "The season, by the year in which its clutches hatch. Default: the one at hand, the year it will be in six months.", "YEAR", FirstYear, LastYear);
}
