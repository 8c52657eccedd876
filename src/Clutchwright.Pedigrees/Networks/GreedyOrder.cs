using System.Numerics;

namespace Clutchwright.Pedigrees.Networks;

/// <summary>What a greedy order takes next.</summary>
internal enum GreedyRule
{
    /// <summary>The variable that ties the fewest pairs anew; among these the one of the smaller table.</summary>
    FewestTies,

    /// <summary>The same, a tie weighing more between variables of more states.</summary>
    LightestTies,

    /// <summary>The variable of the smallest table.</summary>
    SmallestTable,
}

/// <summary>An order of elimination found by always taking what looks best next, with ties and near ties drawn.</summary>
internal sealed class GreedyOrder
{
    private readonly TieGraph _graph;
    private readonly int[] _counts;
    private readonly double[] _weights;
    private readonly double[] _score;
    private readonly ulong[] _touched;
    private readonly ulong[] _neighbours;

    private GreedyOrder(TieGraph graph, int[] counts, int steps)
    {
        _graph = graph.Copy();
        _counts = counts;
        _weights = Array.ConvertAll(counts, c => Math.Log(c));
        _score = new double[counts.Length];
        _touched = new ulong[graph.Words];
        _neighbours = new ulong[graph.Words];
        Order = new int[steps];
        Pressure = new double[counts.Length];
    }

    /// <summary>Gets the variables, first summed out first.</summary>
    public int[] Order { get; }

    /// <summary>Gets for each variable how many entries the tables have that it stands in.</summary>
    public double[] Pressure { get; }

    /// <summary>Gets how many entries the tables have together; infinite if the limit was reached.</summary>
    public double Entries { get; private set; }

    /// <summary>Tries one order.</summary>
    /// <param name="graph">What is tied to what; not changed. What has been taken out of it has no place in the order.</param>
    /// <param name="counts">How many states each variable has.</param>
    /// <param name="rule">What to take next.</param>
    /// <param name="slack">How much worse than the best, as a share, counts as good as it.</param>
    /// <param name="kept">Distinct variables that go first in this order; may be none or all.</param>
    /// <param name="limit">Orders that need as many entries are of no use.</param>
    /// <param name="random">The state of the random numbers.</param>
    public static GreedyOrder Try(TieGraph graph, int[] counts, GreedyRule rule, double slack, ReadOnlySpan<int> kept, double limit, ref ulong random)
    {
        var steps = graph.AliveCount;
        var order = new GreedyOrder(graph, counts, steps);
        for (var step = 0; step < steps && order.Entries < limit; step++)
        {
            if (step == kept.Length)
            {
                for (var v = 0; v < counts.Length; v++)
                {
                    if (order._graph.IsAlive(v))
                    {
                        order._score[v] = order.Score(v, rule);
                    }
                }
            }

            var chosen = step < kept.Length ? kept[step] : order.Choose(slack, ref random);
            order.Order[step] = chosen;
            order.Take(chosen, step >= kept.Length);
            for (var word = 0; step >= kept.Length && word < order._touched.Length; word++)
            {
                for (var bits = order._touched[word]; bits != 0; bits &= bits - 1)
                {
                    var u = (word << 6) + BitOperations.TrailingZeroCount(bits);
                    order._score[u] = order.Score(u, rule);
                }
            }
        }

        order.Entries = order.Entries < limit ? order.Entries : double.PositiveInfinity;
        return order;
    }

    private int Choose(double slack, ref ulong random)
    {
        var least = double.PositiveInfinity;
        for (var v = 0; v < _score.Length; v++)
        {
            least = Math.Min(least, _graph.IsAlive(v) ? _score[v] : double.PositiveInfinity);
        }

        var (chosen, ties) = (-1, 0UL);
        var bound = (least * (1.0 + slack)) + 1e-9;
        for (var v = 0; v < _score.Length; v++)
        {
            if (_score[v] <= bound && _graph.IsAlive(v) && SplitMix64.Next(ref random) % ++ties == 0)
            {
                chosen = v;
            }
        }

        return chosen;
    }

    // Sums a variable out; those whose score may be another then are in the set of touched ones, if anyone wants to know.
    private void Take(int chosen, bool isScored)
    {
        _graph.Row(chosen).CopyTo(_neighbours);
        var table = (double)_counts[chosen];
        for (var word = 0; word < _neighbours.Length; word++)
        {
            for (var bits = _neighbours[word]; bits != 0; bits &= bits - 1)
            {
                table *= _counts[(word << 6) + BitOperations.TrailingZeroCount(bits)];
            }
        }

        Entries += table;
        Pressure[chosen] += table;
        var isTied = isScored && !_graph.IsSimplicial(chosen);
        _neighbours.CopyTo(_touched, 0);
        for (var word = 0; word < _neighbours.Length; word++)
        {
            for (var bits = _neighbours[word]; bits != 0; bits &= bits - 1)
            {
                var u = (word << 6) + BitOperations.TrailingZeroCount(bits);
                Pressure[u] += table;
                if (isTied)
                {
                    _graph.AddNeighboursTo(u, _touched);
                }
            }
        }

        _touched[chosen >> 6] &= ~(1UL << chosen);
        _graph.Eliminate(chosen);

        // A tie more or less between two matters to those only that are tied to both.
        for (var word = 0; isTied && word < _touched.Length; word++)
        {
            for (var bits = _touched[word] & ~_neighbours[word]; bits != 0; bits &= bits - 1)
            {
                var u = (word << 6) + BitOperations.TrailingZeroCount(bits);
                if (_graph.CommonTies(u, _neighbours) < 2)
                {
                    _touched[word] &= ~(1UL << u);
                }
            }
        }
    }

    private double Score(int v, GreedyRule rule)
    {
        if (rule == GreedyRule.LightestTies)
        {
            return _graph.MissingWeight(v, _weights);
        }

        var size = _weights[v];
        var row = _graph.Row(v);
        for (var word = 0; word < row.Length; word++)
        {
            for (var bits = row[word]; bits != 0; bits &= bits - 1)
            {
                size += _weights[(word << 6) + BitOperations.TrailingZeroCount(bits)];
            }
        }

        return rule == GreedyRule.FewestTies ? _graph.MissingTies(v) + (size * 1e-3) : size;
    }
}
