using Clutchwright.Planning.Seasons;

namespace Clutchwright.Planning.Tests.Seasons;

/// <summary>The slow twin: every plan written out, every figure from its definition.</summary>
internal static class SeasonTwin
{
    /// <summary>Every plan that meets the limits: for each female one of her pairs or none.</summary>
    public static IEnumerable<int[]> Plans(SeasonProblem problem)
    {
        var byDam = Enumerable.Range(0, problem.Dams.Count)
            .Select(d => Enumerable.Range(0, problem.Pairs.Count).Where(p => problem.Pairs[p].Dam == d).Prepend(-1).ToArray())
            .ToArray();
        return Choose(0, []).Where(plan => IsAllowed(problem, plan));

        IEnumerable<int[]> Choose(int dam, int[] before) => dam == byDam.Length
            ? [before]
            : byDam[dam].SelectMany(p => Choose(dam + 1, p < 0 ? before : [.. before, p]));
    }

    /// <summary>The rules, one by one.</summary>
    public static bool IsAllowed(SeasonProblem problem, IReadOnlyList<int> plan)
    {
        var (limits, pairs) = (problem.Limits, plan.Select(p => problem.Pairs[p]).ToArray());
        return pairs.All(p => problem.Sires[p.Sire].IsReady && problem.Dams[p.Dam].IsReady)
            && pairs.All(p => !problem.Sires[p.Sire].IsBanned && !problem.Dams[p.Dam].IsBanned && !p.IsBanned)
            && pairs.All(p => !p.IsDangerous || p.IsLifted)
            && pairs.All(p => limits.Inbreeding is null || p.Inbreeding <= limits.Inbreeding)
            && problem.Sires.Select((s, i) => pairs.Count(p => p.Sire == i) <= s.Matings && (!s.IsPinned || pairs.Any(p => p.Sire == i))).All(ok => ok)
            && problem.Dams.Select((d, i) => pairs.Count(p => p.Dam == i) <= 1 && (!d.IsPinned || pairs.Any(p => p.Dam == i))).All(ok => ok)
            && problem.Pairs.Select((p, i) => !p.IsPinned || plan.Contains(i)).All(ok => ok)
            && (limits.Clutches is null || pairs.Length <= limits.Clutches)
            && (limits.Eggs is null || pairs.Sum(p => p.Eggs) <= limits.Eggs + 1e-9)
            && (limits.Hatchlings is null || pairs.Sum(p => p.Hatchlings) <= limits.Hatchlings + 1e-9)
            && (limits.MeanInbreeding is null || pairs.Length == 0 || pairs.Average(p => p.Inbreeding) <= limits.MeanInbreeding + 1e-9)
            && problem.Goals.All(g => g.Least is null || Figure(problem, g, plan) >= g.Least - 1e-9);
    }

    public static double Worth(SeasonProblem problem, IReadOnlyList<int> plan) => problem.Goals.Sum(g => g.Weight * Figure(problem, g, plan));

    public static double Figure(SeasonProblem problem, SeasonGoal goal, IReadOnlyList<int> plan) => goal switch
    {
        SeasonGoal.AtLeast g => AtLeast(problem, g, plan),
        SeasonGoal.Doubt g => Bits(g, plan),
        SeasonGoal.Sum g => plan.Sum(p => g.Values[p]),
        _ => throw new InvalidOperationException(),
    };

    // Every way the males can be, and every number from every clutch.
    private static double AtLeast(SeasonProblem problem, SeasonGoal.AtLeast goal, IReadOnlyList<int> plan)
    {
        var total = 0.0;
        Males(0, 1.0, []);
        return total;

        void Males(int sire, double weight, int[] cases)
        {
            if (sire == problem.Sires.Count)
            {
                Clutches(0, weight, 0, cases);
                return;
            }

            for (var c = 0; c < goal.SireCases[sire].Count; c++)
            {
                Males(sire + 1, weight * goal.SireCases[sire][c], [.. cases, c]);
            }
        }

        void Clutches(int at, double weight, int found, int[] cases)
        {
            if (at == plan.Count)
            {
                total += found >= goal.Count ? weight : 0.0;
                return;
            }

            if (goal.Yields[plan[at]] is not { } yield)
            {
                Clutches(at + 1, weight, found, cases);
                return;
            }

            var numbers = yield.Numbers[cases[problem.Pairs[plan[at]].Sire]];
            for (var n = 0; n < numbers.Count; n++)
            {
                Clutches(at + 1, weight * numbers[n], found + n, cases);
            }
        }
    }

    // Shannon's mutual information of the claim and what is seen of each clutch: its circumstance and whether it shows anything.
    private static double Bits(SeasonGoal.Doubt goal, IReadOnlyList<int> plan)
    {
        return Outcomes(0, 1.0, 1.0);

        // Chances of what is seen so far if the claim holds and if not.
        double Outcomes(int at, double ifSo, double ifNot)
        {
            if (at == plan.Count)
            {
                var outcome = (goal.Prior * ifSo) + ((1.0 - goal.Prior) * ifNot);
                return Term(goal.Prior, ifSo, outcome) + Term(1.0 - goal.Prior, ifNot, outcome);
            }

            if (goal.Silences[plan[at]] is not { } silence)
            {
                return Outcomes(at + 1, ifSo, ifNot);
            }

            return silence.Chances.Select((c, i) =>
                Outcomes(at + 1, ifSo * c * silence.Silent[i], ifNot * c)
                + Outcomes(at + 1, ifSo * c * (1.0 - silence.Silent[i]), 0.0)).Sum();
        }

        static double Term(double prior, double chance, double outcome) =>
            prior * chance <= 0.0 ? 0.0 : prior * chance * Math.Log2(chance / outcome);
    }
}
