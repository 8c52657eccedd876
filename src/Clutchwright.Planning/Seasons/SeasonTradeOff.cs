namespace Clutchwright.Planning.Seasons;

/// <summary>What more of one goal costs of another.</summary>
public static class SeasonTradeOff
{
    private const double Little = 1e-4;

    /// <summary>Finds plans from the best for one goal to the best for another; no goal else is weighed, all limits and least figures hold.</summary>
    /// <param name="problem">The season.</param>
    /// <param name="first">The place of one goal.</param>
    /// <param name="second">The place of the other.</param>
    /// <param name="points">How many plans are sought, 2 or more; plans that come twice or are worse in both are left out.</param>
    /// <param name="settings">How to look; <c>null</c>: the default.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>Plans with the second goal's figure rising; empty where there is no plan. Each has the first goal as high as it can be with
    /// the second at that level (epsilon constraint). [Haimes1971]</returns>
    /// <exception cref="ArgumentOutOfRangeException">A goal is not there, the two are one, or there are fewer than 2 points.</exception>
    public static IReadOnlyList<SeasonPlan> Of(
        SeasonProblem problem, int first, int second, int points = 5, SeasonSettings? settings = null, CancellationToken cancel = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)first, (uint)problem.Goals.Count, nameof(first));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)second, (uint)problem.Goals.Count, nameof(second));
        ArgumentOutOfRangeException.ThrowIfEqual(first, second);
        settings = (settings ?? SeasonSettings.Default) with { WithRunnersUp = false };
        var plans = new List<SeasonPlan>();
        var (left, right) = (Best(first, second, null), Best(second, first, null));
        if (left is null || right is null)
        {
            return [];
        }

        plans.Add(left);
        var (low, high) = (left.Figures[second], right.Figures[second]);
        for (var i = 1; i < points - 1; i++)
        {
            if (Best(first, second, low + ((high - low) * i / (points - 1))) is { } between)
            {
                plans.Add(between);
            }
        }

        plans.Add(right);
        return [.. plans
            .Where(p => !plans.Exists(o => o.Figures[first] >= p.Figures[first] && o.Figures[second] >= p.Figures[second]
                && (o.Figures[first] > p.Figures[first] + 1e-9 || o.Figures[second] > p.Figures[second] + 1e-9)))
            .DistinctBy(p => (Math.Round(p.Figures[first], 9), Math.Round(p.Figures[second], 9)))
            .OrderBy(p => p.Figures[second])];

        SeasonPlan? Best(int weighed, int little, double? least)
        {
            var goals = problem.Goals.Select((g, i) => g with
            {
                Weight = i == weighed ? Sign(g) : i == little ? Little * Sign(g) : 0.0,
                Least = i == second && least is { } floor ? Math.Max(floor, g.Least ?? double.NegativeInfinity) : g.Least,
            });
            var plan = SeasonPlanner.Plan(problem.With([.. goals]), settings, null, cancel);
            return plan.Status == SeasonStatus.Infeasible ? null : plan;
        }
    }

    // A goal that weighs below 0 is one of which less is better.
    private static double Sign(SeasonGoal goal) => goal.Weight < 0.0 ? -1.0 : 1.0;
}
