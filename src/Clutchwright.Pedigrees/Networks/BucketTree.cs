namespace Clutchwright.Pedigrees.Networks;

/// <summary>A network solved exactly by summing its variables out one after the other, and then reading every variable's weights on the way back.</summary>
/// <remarks>
/// Each variable has one table, over itself and over those later variables it is tied to when its turn comes; the sum over it is passed on to the
/// table of the earliest of these. A second pass in the opposite order hands back what the rest of the network says. A table is never kept: it is multiplied together
/// block by block from what flows in, on the way there and again on the way back. Messages are scaled to a largest entry of about 1 and the scale
/// kept in logarithms. Cost: linear in <see cref="EliminationPlan.Entries"/>, in time and memory. Source: docs/references.md [LauritzenSpiegelhalter1988], [Dechter1999].
/// </remarks>
internal sealed class BucketTree
{
    // A message as large as this is scaled only if it has to be.
    private const int LargeMessage = 4_096;
    private const double LeastUnscaled = 1e-3;
    private readonly TreeShape _shape;
    private readonly double[]?[] _up;
    private readonly double[] _scales;
    private readonly double[]?[] _down;
    private readonly double[]?[] _slots;
    private readonly double[][] _marginals;
    private readonly TablePool _pool;
    private readonly double[] _block;
    private readonly int[] _states;
    private bool _isReadBack;

    /// <summary>Makes a tree without weights, to be filled as often as wanted.</summary>
    public BucketTree(TreeShape shape)
    {
        _shape = shape;
        var n = shape.Buckets.Length;
        (_up, _down, _scales, _states) = (new double[n][], new double[n][], new double[n], new int[n]);
        _slots = new double[shape.SlotCount][];
        _marginals = new double[n][];
        _pool = new(shape.PoolSizes);
        _block = new double[shape.LongestBlock];
        LogTotal = double.NegativeInfinity;
    }

    /// <summary>Gets the natural logarithm of the sum over all combinations of states of the product of all tables; minus infinity if nothing is possible.</summary>
    public double LogTotal { get; private set; }

    /// <summary>Sums a network out.</summary>
    /// <param name="stateCounts">How many states each variable has.</param>
    /// <param name="factors">The tables; weights are not negative.</param>
    /// <param name="plan">The order.</param>
    /// <param name="cancel">Stops the work between two tables.</param>
    public static BucketTree Of(int[] stateCounts, IEnumerable<Factor> factors, EliminationPlan plan, CancellationToken cancel = default)
    {
        Factor[] all = [.. factors];
        var tree = new BucketTree(new TreeShape(stateCounts, Array.ConvertAll(all, f => f.Variables), plan));
        tree.Fill(Array.ConvertAll(all, f => f.Values), cancel);
        return tree;
    }

    /// <summary>Sums the network out with other weights.</summary>
    /// <param name="weights">The weights of each table, in the order in which the shape has them; not negative. Not changed, and read until the weights are read back.</param>
    /// <param name="cancel">Stops the work between two tables.</param>
    public void Fill(IReadOnlyList<double[]> weights, CancellationToken cancel = default)
    {
        TakeBack();
        LogTotal = double.NegativeInfinity;
        _isReadBack = false;
        var log = 0.0;
        foreach (var f in _shape.Constants)
        {
            log += Math.Log(weights[f][0]);
        }

        for (var i = 0; i < _up.Length; i++)
        {
            cancel.ThrowIfCancellationRequested();
            var bucket = _shape.Buckets[i];
            Gather(bucket, weights);
            var up = _up[i] = _pool.Take(bucket.UpPool);
            var largest = SumOut(bucket, up);
            if (largest == 0.0)
            {
                return;
            }

            var scale = up.Length < LargeMessage || largest is < LeastUnscaled or > 1.0 / LeastUnscaled ? largest : 1.0;
            log += Math.Log(scale);
            _scales[i] = scale;
            if (scale != 1.0)
            {
                for (var s = 0; s < up.Length; s++)
                {
                    up[s] /= scale;
                }
            }
        }

        LogTotal = log;
    }

    /// <summary>The weights of a variable's states given the whole network; they sum to 1.</summary>
    /// <remarks>The first reading makes the second pass. The array is overwritten when the tree is filled and read again.</remarks>
    /// <exception cref="InvalidOperationException">Nothing is possible.</exception>
    public double[] Marginal(int variable)
    {
        ReadBack();
        return _marginals[_shape.Rank[variable]];
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

        var counts = _shape.Counts;
        for (var i = _shape.Buckets.Length - 1; i >= 0; i--)
        {
            var bucket = _shape.Buckets[i];
            var row = _block.AsSpan(0, bucket.Own);
            row.Fill(1.0);
            foreach (var slot in bucket.Tops)
            {
                var start = 0;
                for (var k = 0; k < slot.Scope.Length - 1; k++)
                {
                    start = (start * counts[slot.Scope[k]]) + _states[slot.Scope[k]];
                }

                var own = _slots[slot.Index].AsSpan(start * bucket.Own, bucket.Own);
                for (var x = 0; x < row.Length; x++)
                {
                    row[x] *= own[x];
                }
            }

            _states[i] = SplitMix64.NextState(row, ref random);
            states[_shape.Order[i]] = _states[i];
        }
    }

    // The weights of each slot: those given, or their product.
    private void Gather(BucketShape bucket, IReadOnlyList<double[]> weights)
    {
        foreach (var slot in bucket.Slots)
        {
            if (slot.IsPlain)
            {
                _slots[slot.Index] = slot.Factors.Count > 0 ? weights[slot.Factors[0].Factor] : _up[slot.Buckets[0]];
                continue;
            }

            var product = _slots[slot.Index] = _pool.Take(slot.Pool);
            var isFirst = true;
            foreach (var (factor, places) in slot.Factors)
            {
                TableRows.Multiply(product, weights[factor], places, isFirst);
                isFirst = false;
            }

            foreach (var from in slot.Buckets)
            {
                TableRows.Multiply(product, _up[from]!, null, isFirst);
                isFirst = false;
            }
        }

        for (var i = bucket.Slots.Length - 1; i > 0; i--)
        {
            if (bucket.Slots[i] is { Container: { } container, Lane: { } lane } slot)
            {
                container.Walk!.Multiply(_slots[container.Index]!, lane, _slots[slot.Index]!);
            }
        }
    }

    // The next block of the table.
    private Span<double> Product(BucketShape bucket, ReadOnlySpan<int> starts)
    {
        var block = _block.AsSpan(0, bucket.Walk.Block);
        if (bucket.Tops.Length == 0)
        {
            block.Fill(1.0);
            return block;
        }

        bucket.Lanes[0].Assign(block, _slots[bucket.Tops[0].Index]!, starts[0]);
        for (var s = 1; s < bucket.Tops.Length; s++)
        {
            bucket.Lanes[s].Multiply(block, _slots[bucket.Tops[s].Index]!, starts[s]);
        }

        return block;
    }

    private double SumOut(BucketShape bucket, double[] up)
    {
        var walk = bucket.Walk;
        if (bucket.Tops.Length == 1 && bucket.Tops[0].Size == walk.Size)
        {
            return TableRows.SumRows(_slots[bucket.Tops[0].Index].AsSpan(0, walk.Size), up);
        }

        Span<int> starts = stackalloc int[bucket.Lanes.Length];
        Span<int> digits = stackalloc int[walk.Inner];
        starts.Clear();
        digits.Clear();
        var largest = 0.0;
        var own = bucket.Own;
        var s = 0;
        for (var start = 0; start < walk.Size; start += walk.Block)
        {
            var block = Product(bucket, starts);
            var sums = up.AsSpan(s, block.Length / own);
            largest = Math.Max(largest, TableRows.SumRows(block, sums));
            s += sums.Length;
            walk.Advance(digits, bucket.Lanes, starts);
        }

        return largest;
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
        for (var i = _shape.Buckets.Length - 1; i >= 0; i--)
        {
            HandBack(i);
        }
    }

    // Multiplies in what the rest of the network says, and hands to each table that flowed in what it has to know.
    private void HandBack(int rank)
    {
        var bucket = _shape.Buckets[rank];
        if (bucket.Separator.Length == 0)
        {
            _down[rank] = _pool.Take(bucket.UpPool);
            _down[rank]![0] = 1.0 / (_up[rank]![0] * _scales[rank]);
            _pool.Give(bucket.UpPool, ref _up[rank]);
        }

        var sums = new double[]?[bucket.Slots.Length];
        for (var i = 0; i < sums.Length; i++)
        {
            if (bucket.Slots[i].IsAsked)
            {
                sums[i] = _pool.Take(bucket.Slots[i].Pool);
                if (bucket.Slots[i].Size < bucket.Walk.Size)
                {
                    Array.Clear(sums[i]!);
                }
            }
        }

        var marginal = _marginals[rank] ??= new double[bucket.Own];
        SumBack(bucket, _down[rank]!, marginal, sums);
        _pool.Give(bucket.UpPool, ref _down[rank]);
        foreach (var slot in bucket.Slots)
        {
            if (slot.IsPlain)
            {
                _slots[slot.Index] = null;
            }
            else
            {
                _pool.Give(slot.Pool, ref _slots[slot.Index]);
            }
        }

        // Containers stand before what they contain.
        for (var i = 0; i < sums.Length; i++)
        {
            if (bucket.Slots[i] is { IsAsked: true, Container: { } container, Lane: { } lane })
            {
                container.Walk!.Sum(sums[Array.IndexOf(bucket.Slots, container)]!, lane, sums[i]!);
            }
        }

        for (var i = 0; i < sums.Length; i++)
        {
            var slot = bucket.Slots[i];
            for (var k = 0; k < slot.Buckets.Count; k++)
            {
                var from = slot.Buckets[k];
                var isLast = k == slot.Buckets.Count - 1;
                var down = isLast ? sums[i]! : _pool.Take(slot.Pool);
                TableRows.Divide(sums[i]!, _up[from]!, _scales[from], down);
                _pool.Give(slot.Pool, ref _up[from]);
                _down[from] = down;
                sums[i] = isLast ? null : sums[i];
            }

            if (sums[i] is not null)
            {
                _pool.Give(slot.Pool, ref sums[i]);
            }
        }
    }

    private void SumBack(BucketShape bucket, double[] down, double[] marginal, double[]?[] sums)
    {
        var walk = bucket.Walk;
        Span<int> starts = stackalloc int[bucket.Lanes.Length];
        Span<int> digits = stackalloc int[walk.Inner];
        Span<int> asked = stackalloc int[bucket.Lanes.Length];
        starts.Clear();
        digits.Clear();
        Array.Clear(marginal);
        for (var t = 0; t < asked.Length; t++)
        {
            asked[t] = bucket.Tops[t].IsAsked ? Array.IndexOf(bucket.Slots, bucket.Tops[t]) : -1;
        }

        var s = 0;
        for (var start = 0; start < walk.Size; start += walk.Block)
        {
            var block = Product(bucket, starts);
            TableRows.Weigh(block, down.AsSpan(s, block.Length / bucket.Own), marginal);
            s += block.Length / bucket.Own;
            for (var t = 0; t < asked.Length; t++)
            {
                if (asked[t] < 0)
                {
                    continue;
                }

                // What is over all variables is met once everywhere.
                if (bucket.Tops[t].Size == walk.Size)
                {
                    block.CopyTo(sums[asked[t]].AsSpan(start));
                }
                else
                {
                    bucket.Lanes[t].AddTo(sums[asked[t]]!, starts[t], block);
                }
            }

            walk.Advance(digits, bucket.Lanes, starts);
        }

        var total = 0.0;
        foreach (var weight in marginal)
        {
            total += weight;
        }

        for (var x = 0; x < marginal.Length; x++)
        {
            marginal[x] /= total;
        }
    }

    // All that a filling left behind that was not read back, or found impossible.
    private void TakeBack()
    {
        for (var i = 0; i < _up.Length; i++)
        {
            var bucket = _shape.Buckets[i];
            foreach (var slot in bucket.Slots)
            {
                if (slot.IsPlain)
                {
                    _slots[slot.Index] = null;
                }
                else if (_slots[slot.Index] is not null)
                {
                    _pool.Give(slot.Pool, ref _slots[slot.Index]);
                }
            }

            if (_up[i] is not null)
            {
                _pool.Give(bucket.UpPool, ref _up[i]);
            }
        }
    }
}
