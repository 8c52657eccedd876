using System.Text.Json.Nodes;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Season;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Seasons;

namespace Clutchwright.Desk.Routes;

/// <summary>The routes that a keeper follows: adopting, asking the season at hand for what they need, ending.</summary>
public sealed class AdoptedRoutes
{
    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs _stock;
    private readonly KeptSeasons _seasons;
    private readonly ListDeeds _deeds;
    private readonly TimeProvider _clock;

    internal AdoptedRoutes(OpenBook book, OpenCatalogue catalogue, StockBeliefs stock, KeptSeasons seasons, ListDeeds deeds, TimeProvider clock) =>
        (_book, _catalogue, _stock, _seasons, _deeds, _clock) = (book, catalogue, stock, seasons, deeds, clock);

    /// <summary>The routes adopted, those that ended too, the latest first.</summary>
    public async Task<IReadOnlyList<AdoptedRouteLine>> ListAsync(CancellationToken cancel) =>
        [.. (await new ListRoutes(_book.Book).RunAsync(cancel)).Expect().Select(r => KeptRoute.Line(r, _clock.LocalTimeZone))];

    /// <summary>What is to be asked of <see cref="PlanRoute"/> to see how a route stands; <c>null</c>: there is no such route, or no season is left.</summary>
    public async Task<RoutesQuestion?> QuestionAsync(Guid id, CancellationToken cancel) =>
        await FindAsync(id, cancel) is { } route && SeasonsLeft(route) is > 0 and var left ? KeptRoute.Question(route, left) : null;

    /// <summary>Adopts a route: it is written down, and what it asks of the season at hand becomes goals of that season.</summary>
    /// <param name="question">How the route was asked for.</param>
    /// <param name="route">The route, of the answer to that question.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is written.</param>
    public async Task<Answer<DeedLine>> AdoptAsync(RoutesQuestion question, RouteWords route, string who, CancellationToken cancel)
    {
        if (question.File is not null)
        {
            return new AskedWrongly("stock", "Only a route from your own stock can be adopted. Import the file first.");
        }

        var year = SeasonYear.At(_clock);
        var id = AdoptedRouteId.New();
        var season = await SeasonAsync(year, s => RouteGoals.With(s, id.Value, question.Want, route.Goals), cancel);
        var entry = new AdoptedRouteEntry(question.Want, year, year + question.Seasons - 1, KeptRoute.Write(question), KeptRoute.Write(route));
        return await DoneAsync(await new AdoptRoute(_book.Book).RunAsync(id, entry, season, who, cancel), cancel);
    }

    /// <summary>Where a route stands.</summary>
    /// <param name="id">The route.</param>
    /// <param name="answer">The answer to <see cref="QuestionAsync"/>; <c>null</c>: nothing was to be asked.</param>
    /// <param name="number">The number of the route to go on with; <c>null</c>: the one that has most in common with the one adopted.</param>
    /// <param name="cancel">Stops the question.</param>
    /// <returns><c>null</c>: there is no such route.</returns>
    public async Task<RouteStanding?> StandingAsync(Guid id, RoutesAnswer? answer, int? number, CancellationToken cancel)
    {
        if (await FindAsync(id, cancel) is not { } route)
        {
            return null;
        }

        var line = KeptRoute.Line(route, _clock.LocalTimeZone);
        var year = SeasonYear.At(_clock);
        var state = await _stock.ReadAsync(cancel);
        var chosen = Chosen(line, answer, number);
        var keep = chosen?.Animals.Where(a => a.Tags.Count > 0 && a.Ready > 1).Select(a => new RouteKeep(a.Tags, a.Words, a.Ready)).ToArray() ?? [];
        var season = await _seasons.FindAsync(year, cancel) is var (_, goals, _) ? goals : [];
        return new(
            line,
            SeasonsLeft(route) is > 0 and var left ? KeptRoute.Question(route, left) : null,
            chosen?.Number,
            year,
            There(state, route.Want),
            keep,
            [.. chosen?.Goals.Select(g => Sentence(g, route.Want)) ?? []],
            RouteGoals.AreIn(season, id, route.Want, chosen?.Goals ?? []));
    }

    /// <summary>Makes what the route asks now the goals of the season at hand, in place of what it asked before.</summary>
    /// <param name="id">The route.</param>
    /// <param name="answer">The answer to <see cref="QuestionAsync"/>.</param>
    /// <param name="number">The number of the route to go on with.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is written.</param>
    public async Task<Answer<DeedLine>> AskOfSeasonAsync(Guid id, RoutesAnswer answer, int number, string who, CancellationToken cancel)
    {
        if (await FindAsync(id, cancel) is not { } route)
        {
            return Refusals.Of("route", new RouteProblem.NotFound(new(id)));
        }

        var chosen = Chosen(KeptRoute.Line(route, _clock.LocalTimeZone), answer, number);
        var season = await SeasonAsync(SeasonYear.At(_clock), s => RouteGoals.With(s, id, route.Want, chosen?.Goals ?? []), cancel);
        return await DoneAsync(await new Stock.Seasons.KeepSeason(_book.Book).RunAsync(season, who, cancel), cancel);
    }

    /// <summary>Ends a route; its goals go out of the season at hand.</summary>
    /// <param name="id">The route.</param>
    /// <param name="isReached">Whether what was wanted hatched; else it is given up.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is written.</param>
    public async Task<Answer<DeedLine>> EndAsync(Guid id, bool isReached, string who, CancellationToken cancel)
    {
        var year = SeasonYear.At(_clock);
        var season = await _seasons.FindAsync(year, cancel) is null ? null : await SeasonAsync(year, s => RouteGoals.Without(s, id), cancel);
        return await DoneAsync(
            await new EndRoute(_book.Book).RunAsync(new(id), isReached ? RouteEnding.Reached : RouteEnding.GivenUp, season, who, cancel), cancel);
    }

    private static RouteWords? Chosen(AdoptedRouteLine line, RoutesAnswer? answer, int? number) => number is { } asked
        ? answer?.Routes.FirstOrDefault(r => r.Number == asked)
        : answer?.Routes.OrderByDescending(r => KeptRoute.InCommon(line.Steps, r)).ThenBy(r => r.Number).FirstOrDefault();

    private static string Sentence(RouteGoal goal, string want) => goal.Want.Length == 0
        ? $"{goal.Sire} with {goal.Dam}: {want} can hatch."
        : $"{goal.Sire} with {goal.Dam}: hold back {(goal.Count > 1 ? $"{goal.Count} × " : string.Empty)}{goal.Want}.";

    private async Task<AdoptedRoute?> FindAsync(Guid id, CancellationToken cancel) =>
        (await new ListRoutes(_book.Book).RunAsync(cancel)).Expect().FirstOrDefault(r => r.AdoptedRouteId.Value == id);

    private int SeasonsLeft(AdoptedRoute route) => route.Ending is not null ? 0 : route.LastYear - SeasonYear.At(_clock) + 1;

    private async Task<SeasonEntry> SeasonAsync(int year, Func<JsonObject, JsonObject> change, CancellationToken cancel)
    {
        var state = await _stock.ReadAsync(cancel);
        var kept = await _seasons.FindAsync(year, cancel);
        return KeptSeasons.Entry(year, kept?.Season.Version, change(kept?.Goals ?? new JsonObject { ["goals"] = new JsonArray() }), state);
    }

    private async Task<Answer<DeedLine>> DoneAsync<T>(Stock.Outcome<T> done, CancellationToken cancel)
        where T : notnull =>
        done.IsDone ? (await _deeds.RunAsync(null, 1, cancel))[0] : KeptSeasons.Refused(done.Problem);

    // An animal that is sold or dead is no end of a route.
    private IReadOnlyList<(string Tag, Genetics.Numbers.Probability Chance)> There(StockState state, string text)
    {
        var read = _catalogue.Catalogue.Trade.ReadWant(text);
        return !read.IsRead
            ? []
            : [.. state.Animals
                .Where(a => a.IsHere)
                .Select(a => (a.Animal.Tag, Chance: WantedChance.Of(read.Value, a.Belief.Genotype)))
                .Where(a => a.Chance.Value >= 0.01)
                .OrderByDescending(a => a.Chance.Value)
                .Take(20)];
    }
}
