namespace Clutchwright.Pedigrees.Networks;

/// <summary>A network solved exactly by summing its variables out one after the other, and then reading every variable's weights on the way back.</summary>
/// <remarks>
/// Each variable has one table, over itself and over those later variables it is tied to when its turn comes; the sum over it is passed on to the
/// table of the earliest of these. A second pass in the opposite order hands back what the rest of the network says. Messages are scaled to a largest entry of 1 and the scale
/// kept in logarithms. Cost: linear in <see cref="EliminationPlan.Entries"/>, in time and memory. Source: docs/references.md [LauritzenSpiegelhalter1988], [Dechter1999].
/// </remarks>
internal sealed class BucketTree
{
    private readonly int[] _order;
    private readonly int[] _rank;
    private readonly int[] _counts;
    private readonly Bucket[] _buckets;
    private bool _isReadBack;

    private BucketTree(int[] order, int[] stateCounts, Bucket[] buckets, int[] rank)
    {
        _order = order;
        _rank = rank;
        _buckets = buckets;
        _counts = [.. order.Select(v => stateCounts[v])];
    }

    /// <summary>Gets the natural logarithm of the sum over all combinations of states of the product of all tables; minus infinity if nothing is possible.</summary>
    public double LogTotal { get; private set; }

    /// <summary>Sums the network out.</summary>
    /// <param name="stateCounts">How many states each variable has.</param>
    /// <param name="factors">The tables; weights are not negative.</param>
    /// <param name="plan">The order.</param>
    /// <param name="cancel">Stops the work between two tables.</param>
    public static BucketTree Of(int[] stateCounts, IEnumerable<Factor> factors, EliminationPlan plan, CancellationToken cancel = default)
    {
        var n = stateCounts.Length;
        var rank = new int[n];
        for (var i = 0; i < n; i++)
        {
            rank[plan.Order[i]] = i;
        }

        var buckets = new Bucket[n];
        for (var i = 0; i < n; i++)
        {
            buckets[i] = new Bucket(i);
        }

        var tree = new BucketTree(plan.Order, stateCounts, buckets, rank);
        var constant = 0.0;
        foreach (var factor in factors)
        {
            if (factor.Variables.Length == 0)
            {
                constant += Math.Log(factor.Values[0]);
                continue;
            }

            var scope = factor.Variables.Select(v => rank[v]).ToArray();
            var (ordered, values) = Ordered(scope, factor.Values, tree._counts);
            buckets[ordered[^1]].Take(ordered, values, null);
        }

        tree.LogTotal = constant + tree.SumOut(cancel);
        return tree;
    }

    /// <summary>The weights of a variable's states given the whole network; they sum to 1.</summary>
    /// <remarks>The first reading makes the second pass.</remarks>
    /// <exception cref="InvalidOperationException">Nothing is possible.</exception>
    public double[] Marginal(int variable)
    {
        ReadBack();
        return _buckets[_rank[variable]].Marginal;
    }

    /// <summary>Draws the states of all variables together from the network's weights.</summary>
    /// <param name="states">Filled with a state for each variable.</param>
    /// <param name="random">The state of the random numbers.</param>
    /// <exception cref="InvalidOperationException">Nothing is possible, or the weights have been read back already.</exception>
    public void Draw(int[] states, ref ulong random)
    {
        if (_isReadBack || double.IsNegativeInfinity(LogTotal))
        {
            throw new InvalidOperationException("States can be drawn of what is possible, before the weights are read back.");
        }

        for (var i = _buckets.Length - 1; i >= 0; i--)
        {
            var bucket = _buckets[i];
            var start = 0;
            foreach (var later in bucket.Separator)
            {
                start = (start * _counts[later]) + states[_order[later]];
            }

            var row = bucket.Table.AsSpan(start * _counts[i], _counts[i]);
            var total = 0.0;
            foreach (var weight in row)
            {
                total += weight;
            }

            var left = SplitMix64.NextShare(ref random) * total;
            var state = 0;
            while (state < row.Length - 1 && (row[state] == 0.0 || (left -= row[state]) >= 0.0))
            {
                state++;
            }

            while (row[state] == 0.0)
            {
                state--;
            }

            states[_order[i]] = state;
        }
    }

    private static (int[] Scope, double[] Values) Ordered(int[] scope, double[] values, int[] counts)
    {
        var isOrdered = true;
        for (var i = 1; i < scope.Length; i++)
        {
            isOrdered &= scope[i - 1] > scope[i];
        }

        if (isOrdered)
        {
            return (scope, values);
        }

        var places = Enumerable.Range(0, scope.Length).OrderByDescending(i => scope[i]).ToArray();
        var strides = new int[scope.Length];
        var stride = 1;
        for (var i = scope.Length - 1; i >= 0; i--)
        {
            strides[i] = stride;
            stride *= counts[scope[i]];
        }

        var ordered = places.Select(p => scope[p]).ToArray();
        var result = new double[values.Length];
        var digits = new int[scope.Length];
        var from = 0;
        for (var to = 0; to < result.Length; to++)
        {
            result[to] = values[from];
            for (var d = scope.Length - 1; d >= 0; d--)
            {
                var step = strides[places[d]];
                from += step;
                if (++digits[d] < counts[ordered[d]])
                {
                    break;
                }

                from -= step * digits[d];
                digits[d] = 0;
            }
        }

        return (ordered, result);
    }

    private int[] CountsOf(int[] scope) => Array.ConvertAll(scope, r => _counts[r]);

    private double SumOut(CancellationToken cancel)
    {
        var log = 0.0;
        for (var i = 0; i < _buckets.Length; i++)
        {
            cancel.ThrowIfCancellationRequested();
            var bucket = _buckets[i];
            bucket.Gather(_counts);
            var own = _counts[i];
            var up = new double[bucket.Table.Length / own];
            var largest = 0.0;
            for (int s = 0, at = 0; s < up.Length; s++)
            {
                var sum = 0.0;
                for (var x = 0; x < own; x++)
                {
                    sum += bucket.Table[at++];
                }

                up[s] = sum;
                largest = Math.Max(largest, sum);
            }

            if (largest == 0.0)
            {
                return double.NegativeInfinity;
            }

            log += Math.Log(largest);
            for (var s = 0; s < up.Length; s++)
            {
                up[s] /= largest;
            }

            bucket.Up = up;
            if (bucket.Separator.Length > 0)
            {
                _buckets[bucket.Separator[^1]].Take(bucket.Separator, up, bucket);
            }
        }

        return log;
    }

    private void ReadBack()
    {
        if (_isReadBack)
        {
            return;
        }

        if (double.IsNegativeInfinity(LogTotal))
        {
            throw new InvalidOperationException("Nothing is possible, so there is nothing to weigh.");
        }

        _isReadBack = true;
        for (var i = _buckets.Length - 1; i >= 0; i--)
        {
            _buckets[i].HandBack(_counts);
        }
    }
}
