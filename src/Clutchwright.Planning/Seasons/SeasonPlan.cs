namespace Clutchwright.Planning.Seasons;

/// <summary>How far a plan is proven.</summary>
public enum SeasonStatus
{
    /// <summary>No plan is better by more than <see cref="SeasonSettings.Tolerance"/> of the objective.</summary>
    Optimal = 1,

    /// <summary>A plan, with a bound on how much better another could be.</summary>
    Feasible = 2,

    /// <summary>No plan meets all limits and pins.</summary>
    Infeasible = 3,
}

/// <summary>How a plan is looked for.</summary>
public sealed record SeasonSettings
{
    /// <summary>Gets the settings used where none are given.</summary>
    public static SeasonSettings Default { get; } = new();

    /// <summary>Gets the gap, as a share of the objective, at which a plan counts as optimal.</summary>
    public double Tolerance { get; init; } = 1e-6;

    /// <summary>Gets how often the bound is tightened and the choices solved in whole numbers, at most.</summary>
    public int MostRounds { get; init; } = 40;

    /// <summary>Gets how many nodes one solution in whole numbers may search, at most. A count, not a time, so that a plan repeats.</summary>
    public long MostNodes { get; init; } = 5_000;

    /// <summary>Gets how much work is done before the best plan so far is given with the gap that is left: steps of the simplex method times
    /// rows of the programme. Some millions take some seconds.</summary>
    public long MostWork { get; init; } = 2_500_000;

    /// <summary>Gets after how many rounds without a better plan, and with a bound that hardly falls, it stops.</summary>
    public int MostStalled { get; init; } = 6;

    /// <summary>Gets an earlier plan to begin from, by the places of its pairs; one that no longer fits is passed over.</summary>
    public IReadOnlyList<int>? Hint { get; init; }

    /// <summary>Gets whether each choice is compared with the best plan without it.</summary>
    public bool WithRunnersUp { get; init; }
}

/// <summary>How the search stands.</summary>
/// <param name="Step">The number of the step, from 1.</param>
/// <param name="Objective">What the best plan so far is worth; <c>null</c>: none yet.</param>
/// <param name="Bound">No plan is worth more.</param>
public sealed record SeasonProgress(int Step, double? Objective, double Bound);

/// <summary>A plan of a season, or why there is none.</summary>
/// <param name="Status">How far it is proven.</param>
/// <param name="Chosen">The pairs, by their places in the problem, in order.</param>
/// <param name="Figures">The exact figure of each goal, in the order of the goals.</param>
/// <param name="Objective">What the figures weigh in all.</param>
/// <param name="Bound">No plan weighs more; at least <paramref name="Objective"/>.</param>
/// <param name="Choices">For each chosen pair what it serves, in the order of <paramref name="Chosen"/>.</param>
/// <param name="Clashes">Where there is no plan: the limits and pins that cannot hold together.</param>
public sealed record SeasonPlan(
    SeasonStatus Status,
    IReadOnlyList<int> Chosen,
    IReadOnlyList<double> Figures,
    double Objective,
    double Bound,
    IReadOnlyList<SeasonChoice> Choices,
    IReadOnlyList<SeasonClash> Clashes)
{
    /// <summary>Gets how much better another plan could be, as a share of the objective; 0: none is better.</summary>
    public double Gap => Bound <= Objective ? 0.0 : (Bound - Objective) / Math.Max(1e-9, Math.Abs(Objective));
}

/// <summary>What one chosen pair does for the plan.</summary>
/// <param name="Pair">The pair, by its place.</param>
/// <param name="Adds">For each goal how much its figure falls if this pair is left out and nothing else changes.</param>
/// <param name="Alone">For each goal its figure from this pair alone.</param>
/// <param name="RunnerUp">What would be done without it; <c>null</c>: not asked for.</param>
public sealed record SeasonChoice(int Pair, IReadOnlyList<double> Adds, IReadOnlyList<double> Alone, SeasonRunnerUp? RunnerUp);

/// <summary>The best plan without one pair.</summary>
/// <param name="Instead">The pair its female has then; <c>null</c>: none.</param>
/// <param name="Cost">How much less the plan weighs then; 0: it is as good.</param>
/// <param name="MostCost">The cost is proven to be no less than <paramref name="Cost"/> by more than the tolerance where the two are
/// equal; else it lies between <see cref="LeastCost"/> and this.</param>
/// <param name="LeastCost">The cost is at least this.</param>
/// <param name="IsPossible">Whether there is a plan without it at all; a pinned pair has none.</param>
public sealed record SeasonRunnerUp(int? Instead, double Cost, double MostCost, double LeastCost, bool IsPossible);

/// <summary>Something that the keeper asked for and that cannot hold together with the others of its list.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Place">The place of the male, female, pair or goal concerned; <c>null</c>: it concerns the whole season.</param>
/// <param name="Asked">The number asked; <c>null</c>: it has none.</param>
/// <param name="Enough">The nearest number with which, all else as it is, there would be a plan; <c>null</c>: no number of this one would help
/// alone, or it has none.</param>
public sealed record SeasonClash(SeasonDemand Kind, int? Place, double? Asked, double? Enough);

/// <summary>What a keeper can ask for that may clash.</summary>
public enum SeasonDemand
{
    /// <summary>A pair is pinned.</summary>
    PinnedPair = 1,

    /// <summary>A male is pinned.</summary>
    PinnedSire = 2,

    /// <summary>A female is pinned.</summary>
    PinnedDam = 3,

    /// <summary>A male's number of matings.</summary>
    Matings = 4,

    /// <summary>A female has one clutch.</summary>
    OneClutch = 5,

    /// <summary>The number of clutches.</summary>
    Clutches = 6,

    /// <summary>Room for eggs.</summary>
    Eggs = 7,

    /// <summary>Room for hatchlings.</summary>
    Hatchlings = 8,

    /// <summary>The mean of inbreeding.</summary>
    MeanInbreeding = 9,

    /// <summary>The least figure of a goal.</summary>
    Least = 10,

    /// <summary>A pair, pinned or the only one of a pinned animal, is barred: not ready, left out, dangerous or too inbred.</summary>
    Barred = 11,
}
