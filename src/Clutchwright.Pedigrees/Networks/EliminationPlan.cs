namespace Clutchwright.Pedigrees.Networks;

/// <summary>An order in which to sum the variables of a network out, and what that costs.</summary>
/// <remarks>
/// Variables whose neighbours are already tied to each other go first (that is never worse than another order); the rest by greedy
/// rules (fewest new ties, lightest new ties, smallest table), tried with several counted ways of choosing among the best and the nearly best, from the start and from
/// somewhere in the best order so far, the cheapest order kept; the more work an order would save, the more are tried. Source: docs/references.md [Kjaerulff1990].
/// </remarks>
internal sealed class EliminationPlan
{
    private const int MostTries = 120;

    // Further tries make an order some ten times cheaper at best.
    private const double Hopeless = 1e11;
    private const int TriesIfHopeless = 6;

    // A try costs about as much as summing out a fifth of this, and seldom finds an order that is much better.
    private const double EntriesATry = 800_000.0;

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

        var best = Search(graph.Restrict(core), Array.ConvertAll(core, v => stateCounts[v]), isQuick);
        var fringe = order.Count;
        for (var i = 0; i < core.Length; i++)
        {
            order.Add(core[best.Order[i]]);
            pressure[core[i]] += best.Pressure[i];
        }

        return new([.. order], entries + best.Entries, pressure, fringe);
    }

    /// <summary>What an order costs that is known already.</summary>
    /// <param name="stateCounts">How many states each variable has.</param>
    /// <param name="scopes">The variables of each table.</param>
    /// <param name="order">The variables, first summed out first.</param>
    public static EliminationPlan By(int[] stateCounts, IEnumerable<int[]> scopes, int[] order)
    {
        var graph = new TieGraph(stateCounts.Length);
        foreach (var scope in scopes)
        {
            graph.TieAll(scope);
        }

        var random = 0UL;
        var found = GreedyOrder.Try(graph, stateCounts, GreedyRule.FewestTies, 0.0, order, double.PositiveInfinity, ref random);
        return new(order, found.Entries, found.Pressure, 0);
    }

    private static GreedyOrder Search(TieGraph graph, int[] counts, bool isQuick)
    {
        var random = 0x5EEDUL;
        var best = GreedyOrder.Try(graph, counts, GreedyRule.FewestTies, 0.0, [], double.PositiveInfinity, ref random);
        for (var attempt = 1; !isQuick && attempt < MostTries && attempt * EntriesATry < best.Entries && (attempt < TriesIfHopeless || best.Entries < Hopeless); attempt++)
        {
            // Every other time from somewhere in the best order on.
            var kept = attempt > 4 && attempt % 2 == 0 ? (int)(SplitMix64.NextShare(ref random) * counts.Length * 0.8) : 0;
            var slack = attempt < 3 ? 0.0 : 0.03 * (1 + (attempt % 6));
            var tried = GreedyOrder.Try(graph, counts, RuleOf(attempt), slack, best.Order.AsSpan(0, kept), best.Entries, ref random);
            best = tried.Entries < best.Entries ? tried : best;
        }

        return best;
    }

    // The fewest ties are the best rule nearly always; the others find what it misses in small networks, and where numbers of states differ much.
    private static GreedyRule RuleOf(int attempt) => attempt switch
    {
        1 => GreedyRule.LightestTies,
        2 => GreedyRule.SmallestTable,
        _ => attempt % 8 == 7 ? GreedyRule.LightestTies : GreedyRule.FewestTies,
    };

    private static double TakeSimplicial(TieGraph graph, int[] counts, List<int> order, double[] pressure)
    {
        var entries = 0.0;
        var queue = new Queue<int>(Enumerable.Range(0, counts.Length).Where(graph.IsAlive));
        var isQueued = new bool[counts.Length];
        Array.Fill(isQueued, true);
        var neighbours = new List<int>();
        while (queue.TryDequeue(out var v))
        {
            isQueued[v] = false;
            if (!graph.IsSimplicial(v))
            {
                continue;
            }

            graph.ReadNeighbours(v, neighbours);
            var table = (double)counts[v];
            foreach (var u in neighbours)
            {
                table *= counts[u];
                if (!isQueued[u])
                {
                    isQueued[u] = true;
                    queue.Enqueue(u);
                }
            }

            entries += table;
            pressure[v] += table;
            foreach (var u in neighbours)
            {
                pressure[u] += table;
            }

            graph.Drop(v);
            order.Add(v);
        }

        return entries;
    }
}
