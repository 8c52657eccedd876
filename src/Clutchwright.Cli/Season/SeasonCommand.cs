using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Calendar;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Season;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Season;

/// <summary><c>season plan</c>: which male goes to which female this season.</summary>
internal sealed class SeasonCommand
{
    private readonly CommonOptions _common;
    private readonly Terminal _terminal;

    private readonly Option<string?> _goals = new("--goals")
    {
        Description = "What is wanted of the season, and its limits: a JSON file, described in docs/how-to/season.md. Left out: the season that your book keeps.",
        HelpName = "FILE",
    };

    private readonly Option<int?> _year = KeptSeasonCommands.Year();

    private readonly Option<string?> _stock = new("--stock")
    {
        Description = "A pedigree file that stands for the stock. Left out: your stock.",
        HelpName = "FILE.csv",
    };

    private readonly Option<string?> _before = new("--before")
    {
        Description = "An earlier answer of this command with --json, to begin from. The plan is the same, found sooner.",
        HelpName = "FILE.json",
    };

    private readonly Option<bool> _quick = new("--quick")
    {
        Description = "Leave out what each choice would cost to change.",
    };

    private readonly Option<bool> _progress = new("--progress")
    {
        Description = "Tell on standard error how far the plan is.",
    };

    private SeasonCommand(CommonOptions common, Terminal terminal)
    {
        _common = common;
        _terminal = terminal;
    }

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var season = new SeasonCommand(common, terminal);
        var plan = new Command("plan", "Which male goes to which female, for the goals and within the limits of a file; proven best, or with the gap that is left.")
        {
            season._goals,
            season._year,
            season._stock,
            season._before,
            season._quick,
            season._progress,
        };
        plan.SetAction(season.RunAsync);
        return new Command("season", "The plan of this season's pairings, and the calendar of what to expect.")
        {
            plan,
            KeptSeasonCommands.Keep(common, terminal),
            KeptSeasonCommands.Show(common, terminal),
            CalendarCommand.Create(common, terminal),
        };
    }

    private async Task<int> RunAsync(ParseResult asked, CancellationToken cancel)
    {
        var path = asked.GetValue(_goals);
        var stock = asked.GetValue(_stock);
        var before = new List<(string, string)>();
        if (asked.GetValue(_before) is { } earlier && !Read(await File.ReadAllTextAsync(earlier, cancel), before))
        {
            return _terminal.AskedWrongly($"--before: {Path.GetFileName(earlier)} is no answer of season plan --json");
        }

        await using var questions = _common.Open(asked);
        NamedFile goals;
        if (path is not null)
        {
            goals = new(Path.GetFileName(path), await File.ReadAllBytesAsync(path, cancel));
        }
        else
        {
            var kept = await questions.GetRequiredService<ShowSeason>().RunAsync(asked.GetValue(_year), cancel);
            if (kept.Goals is null)
            {
                return _terminal.AskedWrongly($"--goals: your book keeps no season of {kept.Year} yet; name a goals file, or keep one with season keep");
            }

            goals = new($"season of {kept.Year}", Encoding.UTF8.GetBytes(kept.Goals));
        }

        var question = new SeasonQuestion(goals)
        {
            Stock = stock is null ? null : new(Path.GetFileName(stock), await File.ReadAllBytesAsync(stock, cancel)),
            WithRunnersUp = !asked.GetValue(_quick),
            Before = before,
        };
        var answer = await questions.GetRequiredService<PlanSeason>().RunAsync(question, asked.GetValue(_progress) ? new Told(_terminal) : null, cancel);
        if (answer.Value is not { } plan)
        {
            return _terminal.AskedWrongly(answer.Problems, _ => null);
        }

        if (_common.IsJson(asked))
        {
            _terminal.Send(SeasonJson.Of(plan));
        }
        else
        {
            SeasonPage.Send(_terminal, plan);
        }

        return ExitCode.Answered;
    }

    private static bool Read(string text, List<(string, string)> before)
    {
        try
        {
            foreach (var pairing in JsonNode.Parse(text)!.AsObject()["pairings"]!.AsArray())
            {
                before.Add((pairing!["sire"]!.GetValue<string>(), pairing["dam"]!.GetValue<string>()));
            }

            return true;
        }
        catch (Exception broken) when (broken is JsonException or InvalidOperationException or NullReferenceException)
        {
            return false;
        }
    }

    private sealed class Told(Terminal terminal) : IProgress<(double? Objective, double Bound)>
    {
        public void Report((double? Objective, double Bound) value) => terminal.Error.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"best so far {value.Objective?.ToString("0.######", CultureInfo.InvariantCulture) ?? "none"}, none above {value.Bound:0.######}"));
    }
}
