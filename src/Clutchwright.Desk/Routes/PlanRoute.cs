using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Routes;

namespace Clutchwright.Desk.Routes;

/// <summary>By which pairings over several seasons is a wanted genotype reached, with which odds, time and cost?</summary>
public sealed class PlanRoute
{
    private const int MostTries = 100_000;
    private const long PurchaseWork = 400_000;
    private const long LeastWork = 20_000;
    private const int LeastHorizon = 8;

    private readonly OpenCatalogue _catalogue;
    private readonly Func<StockBeliefs> _stock;
    private readonly TimeProvider _clock;

    internal PlanRoute(OpenCatalogue catalogue, Func<StockBeliefs> stock, TimeProvider clock)
    {
        _catalogue = catalogue;
        _stock = stock;
        _clock = clock;
    }

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="progress">Told what is being done, in a few words.</param>
    /// <param name="cancel">Stops the work.</param>
    public async Task<Answer<RoutesAnswer>> RunAsync(RoutesQuestion question, IProgress<string>? progress = null, CancellationToken cancel = default)
    {
        var problems = new List<AskedWrongly>();
        var catalogue = _catalogue.With(question.Recombination, problems);
        var wants = WantReader.Read(catalogue, [question.Want], problems);
        var (clutch, clutchText) = catalogue.Clutches.Of(question.Clutch, withLaying: true, problems);
        Check(question, problems);
        var lifted = Lifted(catalogue, question.Lifted, problems);
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var read = await PedigreeFile.StateAsync(catalogue, question.File, _stock, cancel);
        if (read.Value is not { } state)
        {
            return read.Problems.ToArray();
        }

        var (text, want) = wants[0];
        var notes = new List<string>();
        var stock = new RouteStock();
        stock.AddKept(catalogue, state, DateOnly.FromDateTime(_clock.GetLocalNow().DateTime), notes);
        stock.AddBought(catalogue, question.Buy, want, question.Costs.Bought, problems);
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var kin = new RouteKin([.. state.Animals.Select(a => a.Animal)], stock);
        var problem = new RouteProblem(catalogue.Species, want, stock.Animals, SettingsOf(question, catalogue, clutch, lifted))
        {
            Forbidden = question.MostInbreeding is { } most ? (sire, dam) => kin.Between(sire, dam) > most : null,
        };
        progress?.Report("Looking for routes");
        var found = RouteAnswer.Of(problem, progress: (round, known) => progress?.Report($"{round} generations bred, {known} routes known"), cancel: cancel);
        var routes = Accepted(question, kin, found, notes);

        // A route left out may have beaten one that would have been let in.
        var isProven = found.IsProven && routes.Count == found.Routes.Count;
        var told = RouteChoice.Of(routes, question.Most);
        ProgrammeOutlook? outlook = null;
        if (told.Count > 0 && question.Tries > 0)
        {
            progress?.Report("Trying the programme many times");
            outlook = Words(RouteSimulation.Replan(problem, [.. told, .. routes.Except(told).Take(20)], question.Tries, question.Seed, 2, cancel));
        }

        var purchases = question.WithPurchases ? Purchases(catalogue, problem, routes, progress, cancel) : [];
        var words = new RouteWording(catalogue, problem, stock, kin);
        AddNotes(question, stock, routes, notes);
        return new RoutesAnswer(
            text,
            question.Seasons,
            [.. told.Select((r, i) => words.Of(i + 1, r))],
            routes.Count,
            isProven,
            outlook,
            purchases,
            TargetNotes.Of(catalogue, want),
            [.. TargetNotes.Dangers(catalogue, want).Select(d => catalogue.Wording.Danger(d))],
            clutchText,
            notes);
    }

    /// <summary>Gives what tells the fewest seasons in which the animals kept now can give a want; it tells <c>null</c> where no way was found within
    /// <see cref="LeastHorizon"/> in a short search.</summary>
    internal async Task<Func<Want, CancellationToken, int?>> LeastSeasonsAsync(CancellationToken cancel)
    {
        var state = await _stock().ReadAsync(_catalogue, cancel);
        var stock = new RouteStock();
        stock.AddKept(_catalogue, state, DateOnly.FromDateTime(_clock.GetLocalNow().DateTime), []);
        var (clutch, _) = _catalogue.Clutches.Of(new(null, null, null), withLaying: true, []);
        var settings = SettingsOf(new RoutesQuestion(string.Empty) { Seasons = LeastHorizon, MostDams = 1 }, _catalogue, clutch, []);
        var animals = stock.Animals;
        return (want, stop) =>
        {
            var found = RouteAnswer.Of(new(_catalogue.Species, want, animals, settings), LeastWork, cancel: stop);
            return found.Routes.Count == 0 ? null : found.Routes.Min(r => r.FirstSeason);
        };
    }

    private static void Check(RoutesQuestion question, List<AskedWrongly> problems)
    {
        if (question.Seasons is < 1 or > RouteSettings.MostSeasons)
        {
            problems.Add(new("seasons", $"{question.Seasons} is no horizon. Write 1 to {RouteSettings.MostSeasons} seasons."));
        }

        if (question.Most < 1)
        {
            problems.Add(new("most", $"{question.Most} is no number of routes to tell. Write 1 or more."));
        }

        if (question.Rearing is not (> 0.0 and <= 1.0))
        {
            problems.Add(new("rearing", $"{question.Rearing} is no chance to live. Write a number above 0 and up to 1, for example 0.95."));
        }

        if (question.Tries is < 0 or > MostTries)
        {
            problems.Add(new("tries", $"{question.Tries} is no number of tries. Write 0 to {MostTries}."));
        }

        if (question.MostRaised is < 0)
        {
            problems.Add(new("space", $"{question.MostRaised} is no number of animals. Write 0 or more."));
        }

        if (question.MostDams is < 1 or > 10)
        {
            problems.Add(new("dams", $"{question.MostDams} is no number of females for a step. Write 1 to 10."));
        }

        if (question.MostInbreeding is < 0.0 or > 1.0 or double.NaN)
        {
            problems.Add(new("most-inbreeding", $"{question.MostInbreeding} is no inbreeding coefficient. Write a number from 0 to 1, for example 0.125."));
        }

        if (question.Costs is { Clutch: < 0.0 or double.NaN } or { Animal: < 0.0 or double.NaN } or { Bought: < 0.0 or double.NaN })
        {
            problems.Add(new("cost", "A cost is 0 or more."));
        }
    }

    private static HashSet<Danger> Lifted(OpenCatalogue catalogue, IReadOnlyList<string> ids, List<AskedWrongly> problems)
    {
        var lifted = new HashSet<Danger>();
        foreach (var id in ids)
        {
            if (catalogue.Species.Dangers.FirstOrDefault(d => string.Equals(d.Id, id.Trim(), StringComparison.OrdinalIgnoreCase)) is { } danger)
            {
                lifted.Add(danger);
            }
            else
            {
                problems.Add(new("lift", $"'{id}' is no danger of the catalogue.", DidYouMean: NearWords.Of(id, catalogue.Species.Dangers.Select(d => d.Id))));
            }
        }

        return lifted;
    }

    private static RouteSettings SettingsOf(RoutesQuestion question, OpenCatalogue catalogue, GoodEggs clutch, HashSet<Danger> lifted)
    {
        var biology = catalogue.Catalogue.Biology;
        return new()
        {
            Seasons = question.Seasons,
            MaleMaturity = Years(biology.MaleBreedingAgeMonths?.Mean ?? 18.0),
            FemaleMaturity = Years(biology.FemaleBreedingAgeMonths?.Mean ?? 36.0),
            Clutch = clutch,
            Laying = biology.Laying is { Mean: > 0.0 and <= 1.0 } laying && question.Clutch.Eggs is null ? laying.Mean : 1.0,
            Rearing = question.Rearing,
            MostDams = question.MostDams,
            MostRaised = question.MostRaised,
            ClutchCost = question.Costs.Clutch,
            RearingCost = question.Costs.Animal,
            Lifted = lifted,
        };

        // An animal first breeds in the season in which it is of age.
        static int Years(double months) => Math.Max(1, (int)Math.Ceiling(months / 12.0));
    }

    private static List<Route> Accepted(RoutesQuestion question, RouteKin kin, RouteAnswer found, List<string> notes)
    {
        if (question.MostInbreeding is not { } most)
        {
            return [.. found.Routes];
        }

        var accepted = found.Routes.Where(r => kin.Of(r).All(f => f <= most + 1e-12)).ToList();
        if (found.Routes.Count - accepted.Count is > 0 and var dropped)
        {
            notes.Add($"{dropped} {(dropped == 1 ? "route was" : "routes were")} left out: young on the way would be inbred by more than {KinText.Percent(most)}.");
        }

        return accepted;
    }

    private static IReadOnlyList<PurchaseValue> Purchases(
        OpenCatalogue catalogue, RouteProblem problem, List<Route> routes, IProgress<string>? progress, CancellationToken cancel)
    {
        var best = routes.Count == 0 ? null : routes[0];
        var values = new List<PurchaseValue>();
        foreach (var (text, animal) in RouteStock.Singles(catalogue, problem.Want))
        {
            progress?.Report($"With {text}");
            var more = problem with { Animals = [.. problem.Animals, animal with { Price = 0.0 }] };
            var with = RouteAnswer.Of(more, PurchaseWork, cancel: cancel).Routes;
            if (with.Count == 0)
            {
                values.Add(new(text, 0.0, 0.0, null, null));
                continue;
            }

            // With one animal more no chance is lost; where the short search misses a route, the known one stands.
            var chance = Math.Max(with[0].Chance, best?.Chance ?? 0.0);
            int? saved = best is null ? null : problem.Settings.Seasons - SeasonOf(with, best.Chance);
            values.Add(new(text, chance, chance - (best?.Chance ?? 0.0), with.Min(r => r.FirstSeason), saved));
        }

        return [.. values.Where(v => v.Gain > 0.0005 || v.SeasonsSaved > 0).OrderByDescending(v => v.Gain).ThenBy(v => v.Animal, StringComparer.Ordinal)];
    }

    private static ProgrammeOutlook Words(RouteOutlook outlook)
    {
        return new(
            outlook.Tries, outlook.ChanceBySeason, outlook.StandardErrors, Spread(outlook.Clutches), Spread(outlook.Raised), Spread(outlook.Cost), outlook.StuckAt);

        static TrySpread Spread(SpreadOfTries spread) => new(spread.Mean, spread.Low, spread.Middle, spread.High);
    }

    private static int SeasonOf(IReadOnlyList<Route> routes, double chance)
    {
        var seasons = routes[0].ChanceBySeason.Count - 1;
        return Enumerable.Range(1, seasons).FirstOrDefault(t => routes.Any(r => r.ChanceBySeason[t] >= chance - 1e-12), seasons);
    }

    private static void AddNotes(RoutesQuestion question, RouteStock stock, List<Route> routes, List<string> notes)
    {
        if (routes.Count == 0)
        {
            notes.Add(stock.Animals.Count == 0
                ? "There is no animal to start from. Add animals to the stock, or say what could be bought: --buy singles, or --buy \"1.0 Clown=300\"."
                : $"No route gives it with a chance worth telling within {question.Seasons} seasons. More seasons, or an animal bought, may.");
        }

        notes.Add("The chances hold for the animals as they are believed to be now; odds are no promise.");
        notes.Add("The chance of a route is a floor where a better animal than asked may hatch: planning anew after each hatch does better.");
    }
}
