using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Condition;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Condition;

/// <summary><c>stock watch</c>: who is off feed, loses mass or is due to be weighed; of one animal its figures.</summary>
internal static class WatchCommand
{
    private static readonly (WatchLevel Level, string Words, string Json)[] Levels =
    [
        (WatchLevel.AskVeterinarian, "Ask a reptile veterinarian", "ask"),
        (WatchLevel.Look, "Look at these", "look"),
        (WatchLevel.Due, "Due to be weighed", "due"),
        (WatchLevel.Told, "Told, not alarmed", "told"),
    ];

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var tag = new Argument<string?>("ID") { Description = "The animal; left out: all that are in the room.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("watch", "Who is off feed, loses mass or is due to be weighed, against its own record; of one animal its figures. No diagnosis.") { tag };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            if (asked.GetValue(tag) is not { } one)
            {
                var watch = await questions.GetRequiredService<ShowWatch>().RunAsync(cancel);
                if (common.IsJson(asked))
                {
                    terminal.Send(Json(watch));
                }
                else
                {
                    Show(terminal, watch);
                }

                return ExitCode.Answered;
            }

            var answer = await questions.GetRequiredService<ShowCondition>().RunAsync(one, cancel);
            if (answer.Value is not { } condition)
            {
                return terminal.AskedWrongly(answer.Problems, _ => null);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(Json(condition));
            }
            else
            {
                Show(terminal, condition);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static void Show(Terminal terminal, WatchAnswer watch)
    {
        var page = new Page(terminal);
        foreach (var (level, words, _) in Levels)
        {
            if (watch.Of(level) is { Count: > 0 } lines)
            {
                page.Heading(words);
                page.Table(["animal", "", ""], [.. lines.SelectMany(l => l.Remarks.Select((r, i) => new[] { i == 0 ? Page.Seen(l.Tag) : string.Empty, i == 0 ? Page.Plain(l.Name) : string.Empty, Page.Plain(r.Text) }))]);
            }
        }

        if (watch.Incubators.Count > 0)
        {
            page.Heading("Incubators");
            page.Table(["incubator", ""], [.. watch.Incubators.Select(i => new[] { Page.Seen(i.Name), Page.Plain(string.Join(' ', i.Remarks)) })]);
        }

        page.Heading(string.Create(CultureInfo.InvariantCulture, $"{watch.Animals} animals in the room, {watch.FoodDue} due to be fed, {watch.NeverWeighed} never weighed"));
        if (!watch.IsFeedingKept)
        {
            page.Line(watch.LastOffer is { } day ? $"No meal has been written down since {Day(day)}, so no gap is held against an animal." : "No meal has been written down yet, so no gap is held against an animal.");
        }

        page.Send();
    }

    private static void Show(Terminal terminal, ConditionAnswer answer)
    {
        var page = new Page(terminal);
        page.Heading($"Condition of {answer.Tag}");
        page.Points(answer.Remarks.Select(r => $"{r.Text} ({r.Source.TrimEnd('.')})"));
        page.Table(["", ""], [.. Facts(answer).Select(f => new[] { Page.Plain(f.What), Page.Plain(f.Is) })]);
        page.Send();
    }

    private static IEnumerable<(string What, string Is)> Facts(ConditionAnswer answer)
    {
        var feeding = answer.Feeding;
        yield return ("days since the last meal", Number(feeding.DaysSinceMeal));
        yield return ("meals, refusals in a row", $"{feeding.MealsInARow}, {feeding.RefusalsInARow}");
        yield return ("days since the last shed", Number(answer.DaysSinceShed));
        yield return ("days since the last weighing", Number(answer.DaysSinceWeighing));
        yield return ("days from meal to meal", $"{feeding.Rhythm.UsualDays} as a rule, {feeding.Rhythm.LongDays} long ({Basis(feeding.Rhythm.Basis)})");
        if (answer.Mass is { } mass)
        {
            yield return ("mass in g", string.Create(CultureInfo.InvariantCulture, $"{mass.Last.Grams:0.#} on {Day(mass.Last.Day)}, at most {mass.Peak.Grams:0.#} on {Day(mass.Peak.Day)}"));
        }

        if (answer.Aim is { } aim)
        {
            yield return ("least g to breed", string.Create(CultureInfo.InvariantCulture, $"{aim.LeastGrams:0}{(aim.IsReached ? ", reached" : aim.At?.Likely is { } likely ? $", about {Day(likely)} at its growth" : string.Empty)}"));
        }
    }

    private static JsonObject Json(WatchAnswer watch) => new()
    {
        ["animals"] = JsonShapes.Array(watch.Lines, l => new JsonObject
        {
            ["id"] = l.Tag,
            ["name"] = l.Name,
            ["level"] = Level(l.Level),
            ["remarks"] = JsonShapes.Array(l.Remarks, Json),
        }),
        ["inTheRoom"] = watch.Animals,
        ["foodDue"] = watch.FoodDue,
        ["neverWeighed"] = watch.NeverWeighed,
        ["lastOffer"] = watch.LastOffer is { } day ? Day(day) : null,
        ["isFeedingKept"] = watch.IsFeedingKept,
        ["incubators"] = JsonShapes.Array(watch.Incubators, i => new JsonObject { ["name"] = i.Name, ["remarks"] = JsonShapes.Array(i.Remarks) }),
    };

    private static JsonObject Json(ConditionAnswer answer) => new()
    {
        ["id"] = answer.Tag,
        ["level"] = Level(answer.Level),
        ["remarks"] = JsonShapes.Array(answer.Remarks, Json),
        ["daysSinceMeal"] = answer.Feeding.DaysSinceMeal,
        ["mealsInARow"] = answer.Feeding.MealsInARow,
        ["refusalsInARow"] = answer.Feeding.RefusalsInARow,
        ["refusalsBeforeShed"] = answer.Feeding.RefusalsBeforeShed,
        ["fast"] = answer.Feeding.Fast,
        ["rhythm"] = new JsonObject
        {
            ["usualDays"] = answer.Feeding.Rhythm.UsualDays,
            ["longDays"] = answer.Feeding.Rhythm.LongDays,
            ["gaps"] = answer.Feeding.Rhythm.Gaps,
            ["basis"] = Basis(answer.Feeding.Rhythm.Basis),
        },
        ["dueInDays"] = answer.Feeding.DueInDays,
        ["daysSinceShed"] = answer.DaysSinceShed,
        ["daysSinceWeighing"] = answer.DaysSinceWeighing,
        ["mass"] = answer.Mass is { } mass
            ? new JsonObject
            {
                ["grams"] = mass.Last.Grams,
                ["day"] = Day(mass.Last.Day),
                ["peakGrams"] = mass.Peak.Grams,
                ["peakDay"] = Day(mass.Peak.Day),
                ["lossSincePeak"] = mass.LossSincePeak,
                ["normalLoss"] = mass.NormalLoss,
                ["unexplained"] = mass.Unexplained,
                ["growthFactor"] = mass.Growth?.Factor,
                ["growthExpected"] = mass.Growth?.Expected,
            }
            : null,
        ["breeding"] = answer.Aim is { } aim
            ? new JsonObject
            {
                ["leastGrams"] = aim.LeastGrams,
                ["reached"] = aim.IsReached,
                ["gramsADay"] = aim.At?.GramsADay,
                ["likely"] = DayOrNull(aim.At?.Likely),
                ["earliest"] = DayOrNull(aim.At?.Earliest),
                ["latest"] = DayOrNull(aim.At?.Latest),
            }
            : null,
        ["weighings"] = JsonShapes.Array(answer.Weighings, w => new JsonObject { ["day"] = Day(w.Day), ["grams"] = w.Grams }),
    };

    private static JsonObject Json(WatchRemark remark) => new()
    {
        ["level"] = Level(remark.Level),
        ["about"] = remark.About,
        ["text"] = remark.Text,
        ["source"] = remark.Source,
    };

    private static string Level(WatchLevel level) => Levels.First(l => l.Level == level).Json;

    private static string Basis(RhythmBasis basis) => basis switch { RhythmBasis.Own => "own", RhythmBasis.Stock => "stock", RhythmBasis.Practice => "practice" };

    private static string Number(int? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "none written down";

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string? DayOrNull(DateOnly? day) => day is { } known ? Day(known) : null;
}
