namespace Clutchwright.Pedigrees.Networks;

/// <summary>A network of which some variables are held at a state, so that the rest can be solved.</summary>
internal sealed class CutNetwork
{
    private const double NearBudget = 100.0;
    private readonly int[] _counts;
    private readonly Lazy<TreeShape> _shape;

    private CutNetwork(int[] counts, IReadOnlyList<Factor> factors, int[] cut, int[]? order)
    {
        _counts = counts;
        Cut = cut;
        var isCut = new bool[counts.Length];
        foreach (var v in cut)
        {
            isCut[v] = true;
        }

        Live = [.. Enumerable.Range(0, counts.Length).Where(v => !isCut[v])];
        var place = new int[counts.Length];
        for (var i = 0; i < Live.Length; i++)
        {
            place[Live[i]] = i;
        }

        var liveCounts = Array.ConvertAll(Live, v => counts[v]);
        Slices = [.. factors.Select(f => FactorSlice.Of(f, counts, isCut, place))];
        int[][] scopes = Array.ConvertAll(Slices, s => s.Scope);
        Plan = order is null
            ? EliminationPlan.For(liveCounts, scopes, isQuick: true)
            : EliminationPlan.By(liveCounts, scopes, Array.ConvertAll(order, v => place[v]));
        _shape = new(() => new(liveCounts, scopes, Plan));
    }

    /// <summary>Gets the variables that are held.</summary>
    public int[] Cut { get; }

    /// <summary>Gets the others.</summary>
    public int[] Live { get; }

    /// <summary>Gets the plan for the rest.</summary>
    public EliminationPlan Plan { get; }

    /// <summary>Gets how the tables are read.</summary>
    public FactorSlice[] Slices { get; }

    /// <summary>Gets the tables of the rest, but for the weights.</summary>
    public TreeShape Shape => _shape.Value;

    /// <summary>Gets how many combinations of states the held variables have.</summary>
    public double Cases => Cut.Aggregate(1.0, (product, v) => product * _counts[v]);

    /// <summary>Holds variables until the rest is small enough.</summary>
    /// <param name="counts">How many states each variable has.</param>
    /// <param name="factors">The tables.</param>
    /// <param name="order">A good order in which to sum all of them out: where to begin.</param>
    /// <param name="budget">How many entries the rest may need.</param>
    /// <param name="worn">For each variable how often it was held elsewhere: such ones are held less gladly. Counted on.</param>
    /// <param name="random">The state of the random numbers; equally good choices are drawn.</param>
    /// <param name="most">The most variables to hold.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns><c>null</c> if holding so many is not enough.</returns>
    public static CutNetwork? Choose(
        int[] counts, IReadOnlyList<Factor> factors, int[] order, double budget, int[] worn, ref ulong random, int most, CancellationToken cancel)
    {
        var graph = new TieGraph(counts.Length);
        foreach (var factor in factors)
        {
            graph.TieAll(factor.Variables);
        }

        var cut = new List<int>();
        while (true)
        {
            cancel.ThrowIfCancellationRequested();

            // Far above the budget the same order will do, without those held; near it a better one is looked for.
            int[] left = Array.FindAll(order, graph.IsAlive);
            var found = GreedyOrder.Try(graph, counts, GreedyRule.FewestTies, 0.0, left, double.PositiveInfinity, ref random);
            if (found.Entries < budget * NearBudget)
            {
                var other = GreedyOrder.Try(graph, counts, GreedyRule.FewestTies, 0.0, [], found.Entries, ref random);
                found = other.Entries < found.Entries ? other : found;
                order = found.Order;
            }

            if (found.Entries <= budget)
            {
                foreach (var v in cut)
                {
                    worn[v]++;
                }

                return new(counts, factors, [.. cut], order);
            }

            var over = (int)(Math.Log(found.Entries / budget) / Math.Log(3.0) / 4.0);
            for (var i = 0; i <= over; i++)
            {
                if (cut.Count == most)
                {
                    return null;
                }

                cut.Add(Heaviest(graph, found.Pressure, worn, ref random));
                graph.Drop(cut[^1]);
            }
        }
    }

    /// <summary>Holds all variables but one.</summary>
    /// <param name="counts">How many states each variable has.</param>
    /// <param name="factors">The tables.</param>
    /// <param name="free">The one that is not held.</param>
    public static CutNetwork FreeingOnly(int[] counts, IReadOnlyList<Factor> factors, int free) =>
        new(counts, factors, [.. Enumerable.Range(0, counts.Length).Where(v => v != free)], null);

    // Of those in the largest tables the one that was held least often elsewhere, so that all are free in their turn.
    private static int Heaviest(TieGraph graph, double[] pressure, int[] worn, ref ulong random)
    {
        var most = 0.0;
        for (var v = 0; v < pressure.Length; v++)
        {
            most = Math.Max(most, graph.IsAlive(v) ? pressure[v] : 0.0);
        }

        var (chosen, ties) = (-1, 0UL);
        for (var v = 0; v < pressure.Length; v++)
        {
            if (!graph.IsAlive(v) || pressure[v] < most * 0.1 || (chosen >= 0 && worn[v] > worn[chosen]))
            {
                continue;
            }

            if (chosen >= 0 && worn[v] < worn[chosen])
            {
                ties = 0;
            }

            if (SplitMix64.Next(ref random) % ++ties == 0)
            {
                chosen = v;
            }
        }

        return chosen;
    }
}
