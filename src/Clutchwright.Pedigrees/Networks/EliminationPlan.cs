using System.Numerics;

namespace Clutchwright.Pedigrees.Networks;

/// <summary>An order in which to sum the variables of a network out, and what that costs.</summary>
/// <remarks>
/// Variables whose neighbours are already tied to each other go first (that is never worse than another order); the rest by greedy
/// rules (fewest new ties, lightest new ties, smallest table), each tried with several counted ways of choosing among the best and the nearly best, the cheapest
/// order kept; the more work an order would save, the more are tried. Source: docs/references.md [Kjaerulff1990].
/// </remarks>
internal sealed class EliminationPlan
{
    private const int MostTries = 120;

    // Further tries make an order some ten times cheaper at best.
    private const double Hopeless = 1e11;
    private const int TriesIfHopeless = 6;

    // One try costs about as much as summing out so many entries.
    private const double EntriesATry = 300_000.0;

    private EliminationPlan(int[] order, double entries, double[] pressure, int fringe)
    {
        Fringe = fringe;
        Order = order;
        Entries = entries;
        Pressure = pressure;
    }

    /// <summary>Gets how many variables at the start of the order were summed out without tying others together.</summary>
    public int Fringe { get; }

    /// <summary>Gets for each variable how many entries the tables have that it stands in.</summary>
    public double[] Pressure { get; }

    /// <summary>Gets the variables, first summed out first.</summary>
    public int[] Order { get; }

    /// <summary>Gets how many entries the tables will have together.</summary>
    public double Entries { get; }

    /// <summary>Plans the order.</summary>
    /// <param name="stateCounts">How many states each variable has.</param>
    /// <param name="scopes">The variables of each table.</param>
    /// <param name="isQuick">Whether the first order that comes will do.</param>
    public static EliminationPlan For(int[] stateCounts, IEnumerable<int[]> scopes, bool isQuick = false)
    {
        var pressure = new double[stateCounts.Length];
        var graph = new TieGraph(stateCounts.Length);
        foreach (var scope in scopes)
        {
            graph.TieAll(scope);
        }

        var order = new List<int>(stateCounts.Length);
        var entries = TakeSimplicial(graph, stateCounts, order, pressure);
        var core = Enumerable.Range(0, stateCounts.Length).Where(graph.IsAlive).ToArray();
        if (core.Length == 0)
        {
            return new([.. order], entries, pressure, order.Count);
        }

        var coreGraph = graph.Restrict(core);
        var coreCounts = core.Select(v => stateCounts[v]).ToArray();
        var best = double.PositiveInfinity;
        int[] bestOrder = [];
        var bestPressure = new double[core.Length];
        var random = 0x5EEDUL;
        for (var attempt = 0; attempt < (isQuick ? 1 : MostTries) && (attempt == 0 || attempt * EntriesATry * 4.0 < best) && (attempt < TriesIfHopeless || best < Hopeless); attempt++)
        {
            var tried = new int[core.Length];
            var tables = new double[core.Length];
            var slack = attempt < 3 ? 0.0 : 0.05 * (attempt % 7);
            var cost = Greedy(coreGraph.Copy(), coreCounts, (GreedyRule)(attempt % 3), slack, ref random, tried, tables, best);
            if (cost < best)
            {
                best = cost;
                bestOrder = tried;
                bestPressure = tables;
            }
        }

        var fringe = order.Count;
        for (var i = 0; i < core.Length; i++)
        {
            order.Add(core[bestOrder[i]]);
            pressure[core[i]] += bestPressure[i];
        }

        return new([.. order], entries + best, pressure, fringe);
    }

    private static double TakeSimplicial(TieGraph graph, int[] counts, List<int> order, double[] pressure)
    {
        var entries = 0.0;
        var queue = new Queue<int>(Enumerable.Range(0, counts.Length));
        var neighbours = new List<int>();
        while (queue.TryDequeue(out var v))
        {
            if (!graph.IsAlive(v))
            {
                continue;
            }

            graph.ReadNeighbours(v, neighbours);
            if (!graph.IsComplete(neighbours))
            {
                continue;
            }

            var table = (double)counts[v];
            foreach (var u in neighbours)
            {
                table *= counts[u];
                queue.Enqueue(u);
            }

            entries += table;
            pressure[v] += table;
            foreach (var u in neighbours)
            {
                pressure[u] += table;
            }

            graph.Remove(v, neighbours);
            order.Add(v);
        }

        return entries;
    }

    private static double Greedy(TieGraph graph, int[] counts, GreedyRule rule, double slack, ref ulong random, int[] order, double[] pressure, double limit)
    {
        var n = counts.Length;
        var weights = counts.Select(c => Math.Log(c)).ToArray();
        var score = new double[n];
        var neighbours = new List<int>();
        for (var v = 0; v < n; v++)
        {
            graph.ReadNeighbours(v, neighbours);
            score[v] = Score(graph, v, neighbours, weights, rule);
        }

        var touched = new ulong[graph.Words];
        var cost = 0.0;
        for (var step = 0; step < n; step++)
        {
            var least = double.PositiveInfinity;
            for (var v = 0; v < n; v++)
            {
                if (graph.IsAlive(v))
                {
                    least = Math.Min(least, score[v]);
                }
            }

            var chosen = -1;
            var ties = 0UL;
            var bound = (least * (1.0 + slack)) + 1e-9;
            for (var v = 0; v < n; v++)
            {
                if (graph.IsAlive(v) && score[v] <= bound && SplitMix64.Next(ref random) % ++ties == 0)
                {
                    chosen = v;
                }
            }

            graph.ReadNeighbours(chosen, neighbours);
            var table = (double)counts[chosen];
            foreach (var u in neighbours)
            {
                table *= counts[u];
            }

            pressure[chosen] += table;
            foreach (var u in neighbours)
            {
                pressure[u] += table;
            }

            cost += table;
            if (cost >= limit)
            {
                return double.PositiveInfinity;
            }

            Array.Clear(touched);
            graph.TieNeighbours(neighbours);
            graph.Remove(chosen, neighbours);
            foreach (var u in neighbours)
            {
                touched[u >> 6] |= 1UL << u;
                graph.AddNeighboursTo(u, touched);
            }

            order[step] = chosen;
            for (var word = 0; word < touched.Length; word++)
            {
                for (var bits = touched[word]; bits != 0; bits &= bits - 1)
                {
                    var u = (word << 6) + BitOperations.TrailingZeroCount(bits);
                    graph.ReadNeighbours(u, neighbours);
                    score[u] = Score(graph, u, neighbours, weights, rule);
                }
            }
        }

        return cost;
    }

    private static double Score(TieGraph graph, int v, List<int> neighbours, double[] weights, GreedyRule rule)
    {
        var size = weights[v];
        foreach (var u in neighbours)
        {
            size += weights[u];
        }

        return rule switch
        {
            GreedyRule.FewestTies => graph.MissingTies(neighbours) + (size * 1e-3),
            GreedyRule.LightestTies => graph.MissingWeight(neighbours, weights),
            GreedyRule.SmallestTable => size,
            _ => throw new ArgumentOutOfRangeException(nameof(rule)),
        };
    }

    private enum GreedyRule
    {
        FewestTies,
        LightestTies,
        SmallestTable,
    }
}
