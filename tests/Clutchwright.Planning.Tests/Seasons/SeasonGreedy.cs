using Clutchwright.Planning.Seasons;

namespace Clutchwright.Planning.Tests.Seasons;

/// <summary>What a keeper does without a planner: again and again the pair that adds most is taken, until none adds anything or fits.</summary>
internal static class SeasonGreedy
{
    public static double Worth(SeasonProblem problem)
    {
        var plan = Enumerable.Range(0, problem.Pairs.Count).Where(p => problem.Pairs[p].IsPinned).ToList();
        var worth = Weigh([.. plan]);
        while (true)
        {
            var best = Enumerable.Range(0, problem.Pairs.Count)
                .Where(p => !plan.Contains(p) && SeasonTwin.IsAllowed(problem, [.. plan, p]))
                .Select(p => (Pair: p, Worth: Weigh([.. plan, p])))
                .DefaultIfEmpty((-1, double.NegativeInfinity))
                .MaxBy(p => p.Item2);
            if (best.Item2 <= worth + 1e-12)
            {
                return worth;
            }

            plan.Add(best.Item1);
            worth = best.Item2;
        }

        double Weigh(int[] chosen) => problem.Goals.Zip(SeasonPlanner.FiguresOf(problem, chosen)).Sum(g => g.First.Weight * g.Second);
    }
}
