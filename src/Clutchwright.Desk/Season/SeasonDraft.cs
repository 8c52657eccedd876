using Clutchwright.Desk.Kin;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Planning.Seasons;

namespace Clutchwright.Desk.Season;

/// <summary>Turns the stock and the goals into a problem for the planner, and its plan into an answer.</summary>
internal sealed class SeasonDraft(
    OpenCatalogue catalogue,
    StockState state,
    GoalsFile goals,
    SeasonCandidates candidates,
    GoodEggs clutch,
    IReadOnlyDictionary<StockAnimal, string> notReady,
    int matings)
{
    private readonly List<string> _notes = [];
    private readonly Dictionary<StockAnimal, SeasonNamed> _named = [];

    /// <summary>Gets how many pairs that can be used are not among the candidates, since there are too many to weigh.</summary>
    public int PairsLeftOut { get; init; }

    /// <summary>Makes the problem.</summary>
    public (SeasonProblem Problem, SeasonReckoning? Reckoning) Make(CancellationToken cancel)
    {
        if (candidates.Sires.Length == 0 || candidates.Dams.Length == 0)
        {
            _notes.Add(candidates.Dams.Length == 0 ? "No female is ready." : "No male is ready.");
            return (new(Sires(), Dams(), [], [.. goals.Wishes.Select(w => new SeasonGoal.Sum(w.Name, 0.0, []))]), null);
        }

        var reckoning = new SeasonReckoning(state, candidates, clutch, cancel);
        var hatchlings = reckoning.Hatchlings();
        var kin = new KinStock([.. state.Animals.Select(a => a.Animal)]);
        var kinship = kin.Reckoner.Table([.. candidates.Sires.Select(Position)], [.. candidates.Dams.Select(Position)]);
        var biology = catalogue.Catalogue.Biology;
        var eggs = (biology.Eggs?.Mean ?? 1.0) * (biology.Laying?.Mean ?? 1.0);
        var pairs = candidates.Pairs.Select((p, i) => new SeasonPair(p.Sire, p.Dam)
        {
            Inbreeding = Math.Clamp(kinship[p.Sire, p.Dam], 0.0, 1.0),
            Eggs = eggs,
            Hatchlings = hatchlings[i],
            IsDangerous = Grave(reckoning, p).Any(),
            IsLifted = IsNamed(goals.Lifted, p),
            IsBanned = IsNamed(goals.Banned, p),
            IsPinned = IsNamed(goals.Pinned, p),
        }).ToArray();
        var rules = goals.Rules;
        var limits = new SeasonLimits
        {
            Clutches = rules.Clutches, Eggs = rules.Eggs, Hatchlings = rules.Hatchlings, Inbreeding = rules.Inbreeding, MeanInbreeding = rules.MeanInbreeding,
        };
        return (new(Sires(), Dams(), pairs, [.. goals.Wishes.Select(Goal)], limits), reckoning);

        int Position(StockAnimal animal) => kin.PositionOf(kin.Find(animal.Animal.Tag)!.Value);

        SeasonGoal Goal(SeasonWish wish) => wish switch
        {
            SeasonWish.AtLeast w => reckoning.AtLeast(w),
            SeasonWish.Prove w => reckoning.Doubt(w, _notes),
            SeasonWish.Expect w => new SeasonGoal.Sum(w.Name, w.Weight, reckoning.Expected(w.Want)) { Least = w.Least },
            SeasonWish.Value w => new SeasonGoal.Sum(w.Name, w.Weight, Worth(reckoning, w, hatchlings)) { Least = w.Least },
            _ => throw new InvalidOperationException("A wish of an unknown kind."),
        };
    }

    /// <summary>Puts a plan into words.</summary>
    public SeasonAnswer Answer(
        DateOnly on, SeasonProblem problem, SeasonPlan plan, SeasonReckoning? reckoning, SeasonTradeOffLines? tradeOff, string clutchText)
    {
        var open = Enumerable.Range(0, problem.Pairs.Count).Where(p => problem.Bars[p] is null).ToArray();
        var alone = open.ToDictionary(p => p, p => SeasonPlanner.FiguresOf(problem, [p]));
        var used = plan.Chosen.Select(p => problem.Pairs[p].Dam).ToHashSet();
        if (reckoning is { Blurred.Count: > 0 })
        {
            _notes.Add($"{string.Join(", ", reckoning.Blurred.Order(StringComparer.Ordinal))}: too much is in doubt to keep it all apart; part of that doubt is taken as new in each clutch.");
        }

        if (state.Animals.Count(a => a.IsHere && a.Animal.Sex is null) is > 0 and var unsexed)
        {
            _notes.Add(unsexed == 1 ? "1 animal is not sexed and was left out." : $"{unsexed} animals are not sexed and were left out.");
        }

        if (PairsLeftOut > 0)
        {
            _notes.Add($"The stock has {PairsLeftOut + problem.Pairs.Count:N0} pairs, more than can be weighed: {problem.Pairs.Count:N0} of the animals that promise most for each goal were, and what is proven holds among these.");
        }

        _notes.Add("What two males may be is taken as independent, also where they are brothers; what one male may be is shared by all his clutches.");
        return new(
            on,
            (PairsLeftOut > 0 && plan.Status == SeasonStatus.Optimal ? SeasonStatus.Feasible : plan.Status).ToString().ToLowerInvariant(),
            plan.Objective,
            plan.Bound,
            plan.Gap,
            [.. problem.Goals.Select((g, i) => new SeasonGoalLine(
                g.Name, Sentence(goals.Wishes[i]), SeasonWords.KindOf(g), g.Weight, plan.Figures.Count > 0 ? plan.Figures[i] : 0.0, g.Least, open.Count(p => alone[p][i] != 0.0)))],
            [.. plan.Choices.Select(c => Pairing(problem, c, reckoning!, plan.Objective))],
            [.. notReady.Select(n => new SeasonNotReady(n.Key.Animal.Tag, n.Key.Animal.Name, n.Value))],
            [.. Enumerable.Range(0, candidates.Dams.Length).Where(d => !used.Contains(d) && !notReady.ContainsKey(candidates.Dams[d])).Select(d => candidates.Dams[d].Animal.Tag)],
            problem.Bars.Count(b => b == SeasonBar.Danger),
            problem.Bars.Count(b => b == SeasonBar.Inbreeding),
            plan.Chosen.Count == 0 ? 0.0 : plan.Chosen.Average(p => problem.Pairs[p].Inbreeding),
            [.. plan.Clashes.Select(c => SeasonWords.Clash(problem, c, p => WhyBarred(problem, p, reckoning)))],
            tradeOff,
            clutchText,
            _notes);
    }

    private static string Sentence(SeasonWish wish) => wish switch
    {
        SeasonWish.AtLeast { Count: 1 } w => $"At least one {w.Text} this season.",
        SeasonWish.AtLeast w => $"At least {w.Count} {w.Text} this season.",
        SeasonWish.Prove w => $"Whether {w.Tag} is het {w.Allele.Name} is to be settled.",
        SeasonWish.Expect w => $"Hatchlings that are {w.Text}, on average.",
        SeasonWish.Value => "What the hatchlings are worth, on average.",
        _ => wish.Name,
    };

    private static double[] Worth(SeasonReckoning reckoning, SeasonWish.Value wish, double[] hatchlings)
    {
        var sum = Array.ConvertAll(hatchlings, h => h * wish.Each);
        foreach (var (_, want, worth) in wish.Kinds)
        {
            var expected = reckoning.Expected(want);
            for (var p = 0; p < sum.Length; p++)
            {
                sum[p] += worth * expected[p];
            }
        }

        return sum;
    }

    private SeasonPairing Pairing(SeasonProblem problem, SeasonChoice choice, SeasonReckoning reckoning, double objective)
    {
        var pair = problem.Pairs[choice.Pair];
        var dangers = reckoning.Dangers(pair.Sire, pair.Dam);
        var instead = choice.RunnerUp?.Instead is { } other ? problem.Sires[problem.Pairs[other].Sire].Name : null;
        return new(
            Named(candidates.Sires[pair.Sire]),
            Named(candidates.Dams[pair.Dam]),
            [.. problem.Goals.Select((g, i) => new SeasonServed(g.Name, SeasonWords.KindOf(g), choice.Alone[i], choice.Adds[i])).Where(s => s.Alone != 0.0)],
            pair.Inbreeding,
            pair.IsPinned,
            [.. dangers.Where(d => d.Severity >= Severity.Suffering).Select(d => catalogue.Wording.Danger(d))],
            [.. dangers.Where(d => d.Severity < Severity.Suffering).Select(d => catalogue.Wording.Danger(d))],
            choice.RunnerUp is { } up ? RunnerUp(problem, choice.Pair, up, instead, objective) : null,
            instead,
            choice.RunnerUp is { IsPossible: true } possible ? possible.Cost : null);
    }

    private static string RunnerUp(SeasonProblem problem, int pair, SeasonRunnerUp up, string? instead, double objective)
    {
        var dam = problem.Dams[problem.Pairs[pair].Dam].Name;
        if (!up.IsPossible)
        {
            return problem.Pairs[pair].IsPinned ? "You pinned it." : "Without it there is no plan.";
        }

        var what = instead is null ? $"{dam} would not be paired" : $"{dam} would go to {instead}";
        return up.Cost <= 1e-6
            ? $"Without it {what}, and the plan would be as good."
            : $"Without it {what}, and the plan would lose {(objective > up.Cost ? OddsText.Percent(Probability.Rounded(up.Cost / objective)) : $"{up.Cost:0.####}")} of what it weighs.";
    }

    private static IEnumerable<Danger> Grave(SeasonReckoning reckoning, (int Sire, int Dam) pair) =>
        reckoning.Dangers(pair.Sire, pair.Dam).Where(d => d.Severity >= Severity.Suffering);

    private string? WhyBarred(SeasonProblem problem, int place, SeasonReckoning? reckoning)
    {
        var pair = problem.Pairs[place];
        return problem.Bars[place] switch
        {
            SeasonBar.SireNotReady => Why(candidates.Sires[pair.Sire]),
            SeasonBar.DamNotReady => Why(candidates.Dams[pair.Dam]),
            SeasonBar.Danger when reckoning is not null => string.Join(" ", Grave(reckoning, (pair.Sire, pair.Dam)).Select(d => catalogue.Wording.Danger(d).Text)),
            _ => null,
        };

        string Why(StockAnimal animal) => $"{animal.Animal.Tag}: {notReady.GetValueOrDefault(animal, "it is not here, or not sexed.")}";
    }

    private SeasonNamed Named(StockAnimal animal)
    {
        if (!_named.TryGetValue(animal, out var known))
        {
            _named.Add(animal, known = new(animal.Animal.Tag, animal.Animal.Name, catalogue.Wording.Animal(animal.Belief.Genotype)));
        }

        return known;
    }

    private bool IsNamed(IReadOnlyList<SeasonCouple> couples, (int Sire, int Dam) pair) => couples.Any(c =>
        c.Sire == candidates.Sires[pair.Sire].Animal.Tag && c.Dam == candidates.Dams[pair.Dam].Animal.Tag);

    private SeasonSire[] Sires() => Array.ConvertAll(candidates.Sires, a => new SeasonSire(a.Animal.Tag, Told(a)?.Matings ?? goals.Rules.Matings ?? matings)
    {
        IsReady = IsReady(a), IsBanned = Told(a)?.IsLeftOut ?? false, IsPinned = Told(a)?.IsPinned ?? false,
    });

    private SeasonDam[] Dams() => Array.ConvertAll(candidates.Dams, a => new SeasonDam(a.Animal.Tag)
    {
        IsReady = IsReady(a), IsBanned = Told(a)?.IsLeftOut ?? false, IsPinned = Told(a)?.IsPinned ?? false,
    });

    private bool IsReady(StockAnimal animal) => animal.IsHere && animal.Animal.Sex is not null && !notReady.ContainsKey(animal);

    private SeasonAnimal? Told(StockAnimal animal) => goals.Animals.GetValueOrDefault(animal.Animal.Tag);
}
