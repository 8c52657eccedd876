using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Routes;

/// <summary><c>route followed</c>: the routes that you follow, and how one stands.</summary>
internal sealed class FollowedCommand
{
    private readonly CommonOptions _common;
    private readonly Terminal _terminal;

    private readonly Argument<int?> _number = new("NUMBER")
    {
        Description = "How this one stands, planned anew from the animals as they are now. Its number in the list; left out: the list.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private readonly Option<bool> _ask = new("--ask-season") { Description = "Make what the route asks now the goals of the season at hand." };

    private readonly Option<bool> _reached = new("--reached") { Description = "What was wanted hatched: the route ends, and its goals go out of the season." };

    private readonly Option<bool> _giveUp = new("--give-up") { Description = "Give the route up; its goals go out of the season." };

    private readonly Option<string> _who = StockCommand.Who();

    private FollowedCommand(CommonOptions common, Terminal terminal) => (_common, _terminal) = (common, terminal);

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var followed = new FollowedCommand(common, terminal);
        var command = new Command("followed", "The routes that you follow, and how one stands.")
        {
            followed._number, followed._ask, followed._reached, followed._giveUp, followed._who,
        };
        command.SetAction(followed.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult asked, CancellationToken cancel)
    {
        await using var questions = _common.Open(asked);
        var adopted = questions.GetRequiredService<AdoptedRoutes>();
        var list = await adopted.ListAsync(cancel);
        var (ask, reached, giveUp) = (asked.GetValue(_ask), asked.GetValue(_reached), asked.GetValue(_giveUp));
        if (asked.GetValue(_number) is not { } number)
        {
            if (ask || reached || giveUp)
            {
                return _terminal.AskedWrongly("NUMBER: say which route; route followed lists them");
            }

            SendList(list, _common.IsJson(asked));
            return ExitCode.Answered;
        }

        if (number < 1 || number > list.Count)
        {
            return _terminal.AskedWrongly($"NUMBER: there is no route {number.ToString(CultureInfo.InvariantCulture)}; {(list.Count == 0 ? "you follow none" : $"route followed lists 1 to {list.Count}")}");
        }

        if ((ask ? 1 : 0) + (reached ? 1 : 0) + (giveUp ? 1 : 0) > 1)
        {
            return _terminal.AskedWrongly("--ask-season, --reached and --give-up: choose one of them");
        }

        var (id, who) = (list[number - 1].Id, asked.GetRequiredValue(_who));
        if (reached || giveUp)
        {
            return Done(await adopted.EndAsync(id, reached, who, cancel), _common.IsJson(asked));
        }

        RoutesAnswer? answer = null;
        if (await adopted.QuestionAsync(id, cancel) is { } question)
        {
            var found = await questions.GetRequiredService<PlanRoute>().RunAsync(question, null, cancel);
            if (found.Value is null)
            {
                return _terminal.AskedWrongly(found.Problems, _ => null);
            }

            answer = found.Value;
        }

        var standing = (await adopted.StandingAsync(id, answer, null, cancel))!;
        if (!ask)
        {
            Send(standing, answer, _common.IsJson(asked));
            return ExitCode.Answered;
        }

        return answer is not null && standing.Number is { } chosen
            ? Done(await adopted.AskOfSeasonAsync(id, answer, chosen, who, cancel), _common.IsJson(asked))
            : _terminal.AskedWrongly("--ask-season: from the animals as they are now no route leads there, so nothing is asked of the season");
    }

    private int Done(Answer<DeedLine> done, bool isJson) => HistoryCommand.Done(isJson, _terminal, done);

    private void SendList(IReadOnlyList<AdoptedRouteLine> list, bool isJson)
    {
        if (isJson)
        {
            _terminal.Send(new() { ["routes"] = JsonShapes.Array(list.Select((r, i) => (r, i + 1)), r => Json(r.r, r.Item2)) });
            return;
        }

        var page = new Page(_terminal);
        page.Heading("Routes you follow");
        if (list.Count == 0)
        {
            page.Line("None. `route --want TEXT --follow N` takes one up.");
        }
        else
        {
            page.Table(
                [">", "to", "since", "by", ">chance then", ""],
                [.. list.Select((r, i) => new[]
                {
                    Page.Plain((i + 1).ToString(CultureInfo.InvariantCulture)),
                    Page.Seen(r.Want),
                    Page.Plain(Day(r.AdoptedOn)),
                    Page.Plain(r.LastYear.ToString(CultureInfo.InvariantCulture)),
                    Page.Plain(OddsText.Percent(Probability.Rounded(r.Chance))),
                    Page.Plain(r.Ending),
                })]);
        }

        page.Send();
    }

    private void Send(RouteStanding standing, RoutesAnswer? answer, bool isJson)
    {
        var chosen = answer?.Routes.FirstOrDefault(r => r.Number == standing.Number);
        if (isJson)
        {
            _terminal.Send(Json(standing.Route, null)
                .With("year", standing.Year)
                .With("chanceNow", chosen?.Chance.Value)
                .With("replannedChanceNow", answer?.Outlook?.Chance)
                .With("there", JsonShapes.Array(standing.There, t => new JsonObject { ["id"] = t.Tag, ["probability"] = t.Chance.Value }))
                .With("keep", JsonShapes.Array(standing.Keep, k => new JsonObject { ["ids"] = JsonShapes.Array(k.Tags), ["genotype"] = k.Words.Text, ["readyInSeason"] = k.Ready }))
                .With("asks", JsonShapes.Array(standing.Asks))
                .With("inSeason", standing.IsInSeason));
            return;
        }

        var page = new Page(_terminal);
        page.Heading($"The route to {standing.Route.Want}");
        page.Line(Page.Plain($"Followed since {Day(standing.Route.AdoptedOn)}, to be there by {standing.Route.LastYear}; then in {OddsText.Percent(Probability.Rounded(standing.Route.Chance))}."));
        page.Line(Page.Plain(standing switch
        {
            { Route.Ending: { } ending } => $"It is {ending}.",
            { Question: null } => "Its seasons are over.",
            { Number: null } => "From the animals as they are now no route leads there in time.",
            _ => $"From the animals as they are now: {OddsText.Percent(chosen!.Chance)}{(answer!.Outlook is { } outlook ? $", planned anew after every hatch {OddsText.Percent(Probability.Rounded(outlook.Chance))}" : string.Empty)}.",
        }));
        if (standing.There.Count > 0)
        {
            page.Heading("There already?");
            page.Points([.. standing.There.Select(t => $"{t.Tag}: {OddsText.Percent(t.Chance)}")]);
        }

        if (standing.Keep.Count > 0)
        {
            page.Heading("Young to keep");
            page.Points([.. standing.Keep.Select(k => $"{string.Join(" or ", k.Tags)} as {k.Words.Text}; can be paired from the season of {standing.Year + k.Ready - 1}")]);
        }

        if (standing.Asks.Count > 0)
        {
            page.Heading($"What it asks of the season of {standing.Year}");
            page.Points([.. standing.Asks]);
            page.Line(standing.IsInSeason ? "These are goals of the season that your book keeps." : "Not yet goals of the season: --ask-season makes them so.");
        }

        page.Send();
    }

    private static JsonObject Json(AdoptedRouteLine route, int? number) => new JsonObject { ["number"] = number }
        .With("id", route.Id)
        .With("want", route.Want)
        .With("firstYear", route.FirstYear)
        .With("lastYear", route.LastYear)
        .With("followedSince", Day(route.AdoptedOn))
        .With("chance", route.Chance)
        .With("ending", route.Ending);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
