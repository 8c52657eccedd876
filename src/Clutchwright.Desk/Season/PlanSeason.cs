using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Planning.Seasons;

namespace Clutchwright.Desk.Season;

/// <summary>Which male goes to which female this season?</summary>
public sealed class PlanSeason
{
    private const int MatingsUnlessSaid = 4;
    private const int TradeOffPoints = 7;

    private readonly OpenCatalogue _catalogue;
    private readonly Func<StockBeliefs> _stock;
    private readonly TimeProvider _clock;

    internal PlanSeason(OpenCatalogue catalogue, Func<StockBeliefs> stock, TimeProvider clock) => (_catalogue, _stock, _clock) = (catalogue, stock, clock);

    /// <summary>Answers, or says everything that is wrong with the goals or the stock file.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="progress">Is told how far the plan is: what the best so far weighs, and what none can pass.</param>
    /// <param name="cancel">Stops the work.</param>
    public async Task<Answer<SeasonAnswer>> RunAsync(
        SeasonQuestion question, IProgress<(double? Objective, double Bound)>? progress, CancellationToken cancel)
    {
        var read = await PedigreeFile.StateAsync(_catalogue, question.Stock, _stock, cancel);
        if (read.Value is not { } state)
        {
            return read.Problems.ToArray();
        }

        var problems = new List<AskedWrongly>();
        var goals = new GoalsReader(_catalogue, state, problems).Read(question.Goals);
        return goals is null || problems.Count > 0 ? problems.ToArray() : Plan(question, state, goals, progress, cancel);
    }

    /// <summary>The question as the engine is asked it, for those who answer it in another way.</summary>
    internal async Task<SeasonProblem> ProblemAsync(SeasonQuestion question, CancellationToken cancel)
    {
        var state = (await PedigreeFile.StateAsync(_catalogue, question.Stock, _stock, cancel)).Value!;
        return Draft(state, new GoalsReader(_catalogue, state, []).Read(question.Goals)!).Draft.Make(cancel).Problem;
    }

    private SeasonAnswer Plan(
        SeasonQuestion question, StockState state, GoalsFile goals, IProgress<(double? Objective, double Bound)>? progress, CancellationToken cancel)
    {
        var (draft, candidates, on, clutchText) = Draft(state, goals);
        var (problem, reckoning) = draft.Make(cancel);

        var hint = question.Before
            .Select(b => Array.FindIndex(candidates.Pairs, p => Is(candidates.Sires[p.Sire], b.Sire) && Is(candidates.Dams[p.Dam], b.Dam)))
            .ToArray();
        var settings = new SeasonSettings { Hint = hint.Length > 0 && !hint.Contains(-1) ? hint : null, WithRunnersUp = question.WithRunnersUp };
        var told = progress is null ? null : new Relay(progress);
        var plan = SeasonPlanner.Plan(problem, settings, told, cancel);
        var tradeOff = goals.TradeOff is var (first, second) && plan.Status != SeasonStatus.Infeasible
            ? new SeasonTradeOffLines(
                problem.Goals[first].Name,
                problem.Goals[second].Name,
                [.. SeasonTradeOff.Of(problem, first, second, TradeOffPoints, null, cancel).Select(p => (p.Figures[first], p.Figures[second]))])
            : null;
        return draft.Answer(on, problem, plan, reckoning, tradeOff, clutchText);

        static bool Is(StockAnimal animal, string tag) => string.Equals(animal.Animal.Tag, tag.Trim(), StringComparison.OrdinalIgnoreCase);
    }

    private (SeasonDraft Draft, SeasonCandidates Candidates, DateOnly On, string ClutchText) Draft(StockState state, GoalsFile goals)
    {
        var on = goals.On ?? DateOnly.FromDateTime(_clock.GetLocalNow().DateTime);
        var readiness = new SeasonReadiness(_catalogue.Catalogue.Biology, goals.Rules, state, on);
        var notReady = state.Animals
            .Where(a => a.IsHere && a.Animal.Sex is not null)
            .Select(a => (Animal: a, Why: readiness.WhyNot(a, Told(a))))
            .Where(a => a.Why is not null)
            .ToDictionary(a => a.Animal, a => a.Why!);
        var every = SeasonCandidates.Of(state, goals, a => a.IsHere && a.Animal.Sex is not null && !notReady.ContainsKey(a) && !IsLeftOut(a));
        var candidates = SeasonNarrowing.Of(
            every, goals, a => Told(a)?.IsPinned == true || goals.Pinned.Any(c => c.Sire == a.Animal.Tag || c.Dam == a.Animal.Tag));
        var (clutch, clutchText) = _catalogue.Clutches.Of(new(null, null, null), withLaying: true, []);
        return (new SeasonDraft(_catalogue, state, goals, candidates, clutch, notReady, MatingsUnlessSaid) { PairsLeftOut = every.Pairs.Length - candidates.Pairs.Length }, candidates, on, clutchText);

        SeasonAnimal? Told(StockAnimal animal) => goals.Animals.GetValueOrDefault(animal.Animal.Tag);

        bool IsLeftOut(StockAnimal animal) => Told(animal)?.IsLeftOut == true;
    }

    private sealed class Relay(IProgress<(double? Objective, double Bound)> progress) : IProgress<SeasonProgress>
    {
        public void Report(SeasonProgress value) => progress.Report((value.Objective, value.Bound));
    }
}
