using System.CommandLine;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Routes;

/// <summary><c>route</c>: by which pairings over several seasons a wanted genotype is reached.</summary>
internal sealed class RouteCommand
{
    private readonly CommonOptions _common;
    private readonly Terminal _terminal;

    private readonly Option<string?> _want = new("--want")
    {
        Description = "What shall hatch in the end, as trade text; alternatives joined by 'or'.",
        HelpName = "TEXT",
    };

    private readonly Option<string?> _stock = new("--stock")
    {
        Description = "Start from the animals of a pedigree file. Left out: your stock.",
        HelpName = "FILE.csv",
    };

    private readonly Option<int?> _seasons = Options.Count("--seasons", "How many breeding seasons it may take. Default: 8.", "N", 1, RoutesQuestion.MostSeasons);

    private readonly Option<string[]> _buy = new("--buy")
    {
        Description = "An animal that could be bought, with its sex and perhaps its price: \"1.0 Clown=300\". 'singles': one of each sex for each wanted gene, "
            + "showing it alone. Any number of times.",
        HelpName = "TEXT[=PRICE]",
        Arity = ArgumentArity.OneOrMore,
    };

    private readonly Option<double?> _rearing = Options.Share("--rearing", "The chance that a held-back hatchling lives and breeds. Default: 95%.", "SHARE");

    private readonly Option<int?> _space = Options.Count("--space", "Hold back at most N animals in all.", "N", 0, 10_000);

    private readonly Option<int?> _dams = Options.Count("--dams", "Pair up to N equal females for one step in a season. Default: 3.", "N", 1, 10);

    private readonly Option<double?> _inbreeding = Options.Share("--most-inbreeding", "Leave out routes whose young would be inbred by more than this.", "F");

    private readonly Option<double?> _clutchCost = Cost("--clutch-cost", "What a clutch costs you, in any unit of your own. Default: 1.");

    private readonly Option<double?> _animalCost = Cost("--animal-cost", "What raising a held-back animal costs you. Default: 1.");

    private readonly Option<string[]> _lift = new("--lift")
    {
        Description = "Lift a danger, knowing it: pairings that can give it are no longer left out. Any number of times.",
        HelpName = "DANGER",
        Arity = ArgumentArity.OneOrMore,
    };

    private readonly Option<int?> _eggs = Options.Count("--eggs", "Reckon every clutch with N good eggs. Left out: as the species lays.", "N", 1, 60);

    private readonly Option<int?> _most = Options.Count("--most", "Tell at most N routes. Default: 6.", "N", 1, 400);

    private readonly Option<int?> _tries = Options.Count("--tries", "Try the programme N times over, planning anew after every hatch. Default: 1000; 0: not.", "N", 0, 100_000);

    private readonly Option<int?> _seed = Options.Count("--seed", "The seed of the tries: the same seed gives the same figures. Default: 1.", "N", 0, int.MaxValue);

    private readonly Option<bool> _purchases = new("--purchases")
    {
        Description = "Reckon what one purchase would change, in chance and in seasons.",
    };

    private readonly Option<int?> _follow = Options.Count("--follow", "Follow route N of the answer: it is written into your book, and what it asks becomes goals of the season.", "N", 1, 1000);

    private readonly Option<string> _who = StockCommand.Who();

    private readonly Option<Dictionary<string, double>> _recombination = Options.Recombination();

    private RouteCommand(CommonOptions common, Terminal terminal)
    {
        _common = common;
        _terminal = terminal;
    }

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var route = new RouteCommand(common, terminal);
        var command = new Command("route", "By which pairings over several seasons a wanted animal is bred, with odds, time, animals and cost.")
        {
            route._want,
            route._stock,
            route._seasons,
            route._buy,
            route._rearing,
            route._space,
            route._dams,
            route._inbreeding,
            route._clutchCost,
            route._animalCost,
            route._lift,
            route._eggs,
            route._most,
            route._tries,
            route._seed,
            route._purchases,
            route._recombination,
            route._follow,
            route._who,
        };
        command.Add(FollowedCommand.Create(common, terminal));
        command.SetAction(route.RunAsync);
        return command;
    }

    private static Option<double?> Cost(string name, string help) => new(name)
    {
        Description = help,
        HelpName = "COST",
        CustomParser = given =>
        {
            var text = given.Tokens[0].Value;
            if (double.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out var cost) && cost >= 0.0 && double.IsFinite(cost))
            {
                return cost;
            }

            given.AddError($"{name}: '{text}' is not a cost of 0 or more");
            return null;
        },
    };

    private async Task<int> RunAsync(ParseResult asked, CancellationToken cancel)
    {
        if (asked.GetValue(_want) is not { } want)
        {
            return _terminal.AskedWrongly("route: say what shall hatch: --want TEXT, for example --want \"Pastel Clown\"");
        }

        var path = asked.GetValue(_stock);
        var question = new RoutesQuestion(want)
        {
            File = path is null ? null : new NamedFile(Path.GetFileName(path), await File.ReadAllBytesAsync(path, cancel)),
            Seasons = asked.GetValue(_seasons) ?? 8,
            Most = asked.GetValue(_most) ?? 6,
            Buy = asked.GetValue(_buy) ?? [],
            Rearing = asked.GetValue(_rearing) ?? 0.95,
            MostRaised = asked.GetValue(_space),
            MostDams = asked.GetValue(_dams) ?? 3,
            MostInbreeding = asked.GetValue(_inbreeding),
            Costs = (asked.GetValue(_clutchCost) ?? 1.0, asked.GetValue(_animalCost) ?? 1.0, 1.0),
            Lifted = asked.GetValue(_lift) ?? [],
            Clutch = new(asked.GetValue(_eggs), null, null),
            Tries = asked.GetValue(_tries) ?? 1000,
            Seed = (ulong)(asked.GetValue(_seed) ?? 1),
            WithPurchases = asked.GetValue(_purchases),
            Recombination = asked.GetValue(_recombination) ?? [],
        };
        await using var questions = _common.Open(asked);
        var answer = await questions.GetRequiredService<PlanRoute>().RunAsync(question, null, cancel);
        if (answer.Value is not { } routes)
        {
            return _terminal.AskedWrongly(answer.Problems, where => where == "want" ? want : null);
        }

        DeedLine? followed = null;
        if (asked.GetValue(_follow) is { } number)
        {
            if (routes.Routes.FirstOrDefault(r => r.Number == number) is not { } chosen)
            {
                return _terminal.AskedWrongly($"--follow: there is no route {number}; {(routes.Routes.Count == 0 ? "none was found" : $"the answer has 1 to {routes.Routes.Count}")}");
            }

            var done = await questions.GetRequiredService<AdoptedRoutes>().AdoptAsync(question, chosen, asked.GetRequiredValue(_who), cancel);
            if (done.Value is null)
            {
                return _terminal.AskedWrongly(done.Problems, _ => null);
            }

            followed = done.Value;
        }

        if (_common.IsJson(asked))
        {
            var json = RouteJson.Of(routes);
            _terminal.Send(followed is null ? json : json.With("deed", HistoryCommand.Json(followed)));
        }
        else
        {
            RoutePage.Send(_terminal, routes);
            if (followed is not null)
            {
                _terminal.Output.Write($"{followed.Words}. To take it back: stock undo {followed.Id}\n");
            }
        }

        return ExitCode.Answered;
    }
}
