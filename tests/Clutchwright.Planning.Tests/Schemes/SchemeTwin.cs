using Clutchwright.Planning.Schemes;

namespace Clutchwright.Planning.Tests.Schemes;

/// <summary>The slow twins: the cheapest tree by trying every pair of plants until nothing gets cheaper, and the cheapest scheme with plants
/// used again by trying every order of genotypes.</summary>
internal static class SchemeTwin
{
    public const int Never = int.MaxValue / 4;

    /// <summary>Costs by parents used and number of generations, in rounds of one generation.</summary>
    public static int CheapestTree(SchemeProblem problem, bool isOnce, Selfing selfing)
    {
        var genotypes = AllGenotypes(problem);
        var costs = new Dictionary<(int Used, HaplotypePair Pair), int>();
        for (var i = 0; i < problem.Parents.Count; i++)
        {
            costs[(isOnce ? 1 << i : 0, problem.Parents[i])] = 0;
        }

        for (var (best, generations) = (Never, 0); ; generations++)
        {
            var here = costs.Where(c => c.Key.Pair == problem.Target).Select(c => c.Value).DefaultIfEmpty(Never).Min();
            best = Math.Min(best, here + (generations * problem.PerGeneration));
            var next = new Dictionary<(int Used, HaplotypePair Pair), int>(costs);
            foreach (var (first, firstCost) in costs)
            {
                foreach (var (second, secondCost) in costs)
                {
                    var isSelfing = first == second;
                    if (!isSelfing && (first.Used & second.Used) != 0)
                    {
                        continue;
                    }

                    foreach (var child in genotypes.Where(c => !isSelfing || selfing == Selfing.AnyStep || c == problem.Target))
                    {
                        var cost = firstCost + (isSelfing ? 0 : secondCost) + CostOf(problem, first.Pair, second.Pair, child);
                        var key = (first.Used | second.Used, child);
                        if (cost < next.GetValueOrDefault(key, Never))
                        {
                            next[key] = cost;
                        }
                    }
                }
            }

            if (next.Count == costs.Count && next.All(n => costs[n.Key] == n.Value))
            {
                return best;
            }

            costs = next;
        }
    }

    /// <summary>Every order of genotypes made once each, from every two plants there are.</summary>
    public static int CheapestShared(SchemeProblem problem)
    {
        var genotypes = AllGenotypes(problem);
        var best = problem.Parents.Contains(problem.Target) ? 0 : Never;
        Grow([.. problem.Parents.Select(p => (p, 0))], 0);
        return best;

        void Grow(List<(HaplotypePair Pair, int Generation)> plants, int spent)
        {
            foreach (var child in genotypes.Where(g => plants.All(p => p.Pair != g)))
            {
                var ways = from one in plants
                           from other in plants
                           let cost = CostOf(problem, one.Pair, other.Pair, child)
                           where cost < Never
                           group cost by 1 + Math.Max(one.Generation, other.Generation) into byGeneration
                           select (Generation: byGeneration.Key, Cost: byGeneration.Min());
                foreach (var (generation, cost) in ways.ToArray())
                {
                    if (child == problem.Target)
                    {
                        best = Math.Min(best, spent + cost + (generation * problem.PerGeneration));
                    }
                    else if (spent + cost + generation < best)
                    {
                        Grow([.. plants, (child, generation)], spent + cost);
                    }
                }
            }
        }
    }

    private static int CostOf(SchemeProblem problem, HaplotypePair first, HaplotypePair second, HaplotypePair child) =>
        problem.OffspringFor(problem.Loci.ChildChance(first, second, child)) + problem.PerCrossing ?? Never;

    private static HaplotypePair[] AllGenotypes(SchemeProblem problem) =>
    [
        .. from high in Enumerable.Range(0, 1 << problem.Loci.Count)
           from low in Enumerable.Range(0, high + 1)
           select new HaplotypePair(low, high),
    ];
}
