namespace Clutchwright.Pedigrees.Networks;

/// <summary>All of a <see cref="BucketTree"/> that does not hang on the weights, so that it is made once for many.</summary>
internal sealed class TreeShape
{
    /// <summary>Lays out the tables.</summary>
    /// <param name="stateCounts">How many states each variable has.</param>
    /// <param name="scopes">The variables of each table of the network.</param>
    /// <param name="plan">The order.</param>
    public TreeShape(int[] stateCounts, IReadOnlyList<int[]> scopes, EliminationPlan plan)
    {
        var n = stateCounts.Length;
        Order = plan.Order;
        Rank = new int[n];
        Counts = new int[n];
        for (var i = 0; i < n; i++)
        {
            Rank[Order[i]] = i;
            Counts[i] = stateCounts[Order[i]];
        }

        var constants = new List<int>();
        var inflow = new List<SlotShape>?[n];
        for (var f = 0; f < scopes.Count; f++)
        {
            if (scopes[f].Length == 0)
            {
                constants.Add(f);
                continue;
            }

            var (ordered, places) = Ordered(Array.ConvertAll(scopes[f], v => Rank[v]));
            SlotOf(ordered).Factors.Add((f, places));
        }

        var pools = new Dictionary<int, int>();
        Buckets = new BucketShape[n];
        for (var i = 0; i < n; i++)
        {
            var bucket = Buckets[i] = new(i, inflow[i] ?? [], Counts);
            inflow[i] = null;
            foreach (var slot in bucket.Slots)
            {
                slot.Pool = PoolOf(slot.Size);
            }

            bucket.UpPool = PoolOf(bucket.UpSize);
            LongestBlock = Math.Max(LongestBlock, bucket.Walk.Block);
            if (bucket.Separator.Length > 0)
            {
                SlotOf(bucket.Separator).Take(i);
            }
        }

        Constants = [.. constants];
        PoolSizes = [.. pools.OrderBy(p => p.Value).Select(p => p.Key)];

        SlotShape SlotOf(int[] scope)
        {
            var slots = inflow[scope[^1]] ??= [];
            foreach (var slot in slots)
            {
                if (slot.Scope.AsSpan().SequenceEqual(scope))
                {
                    return slot;
                }
            }

            var size = 1;
            foreach (var r in scope)
            {
                size = checked(size * Counts[r]);
            }

            slots.Add(new(SlotCount++, scope, size));
            return slots[^1];
        }

        int PoolOf(int size)
        {
            if (!pools.TryGetValue(size, out var pool))
            {
                pools.Add(size, pool = pools.Count);
            }

            return pool;
        }
    }

    /// <summary>Gets the variables, first summed out first.</summary>
    public int[] Order { get; }

    /// <summary>Gets the place of each variable in the order.</summary>
    public int[] Rank { get; }

    /// <summary>Gets the numbers of states by place in the order.</summary>
    public int[] Counts { get; }

    /// <summary>Gets the tables, in the order.</summary>
    public BucketShape[] Buckets { get; }

    /// <summary>Gets how many slots all tables have together.</summary>
    public int SlotCount { get; private set; }

    /// <summary>Gets the tables of the network that have no variables.</summary>
    public int[] Constants { get; }

    /// <summary>Gets the sizes of arrays that are needed.</summary>
    public int[] PoolSizes { get; }

    /// <summary>Gets the entries of the longest block of a walk.</summary>
    public int LongestBlock { get; }

    // The latest variable first, and for each entry then its place before; null where nothing moves.
    private (int[] Scope, int[]? Places) Ordered(int[] scope)
    {
        var isOrdered = true;
        for (var i = 1; i < scope.Length; i++)
        {
            isOrdered &= scope[i - 1] > scope[i];
        }

        if (isOrdered)
        {
            return (scope, null);
        }

        var size = 1;
        var strides = new int[scope.Length];
        for (var i = scope.Length - 1; i >= 0; i--)
        {
            strides[i] = size;
            size = checked(size * Counts[scope[i]]);
        }

        // Few variables: sorted where they stand, the strides with them.
        for (var i = 1; i < scope.Length; i++)
        {
            for (var j = i; j > 0 && scope[j - 1] < scope[j]; j--)
            {
                (scope[j - 1], scope[j]) = (scope[j], scope[j - 1]);
                (strides[j - 1], strides[j]) = (strides[j], strides[j - 1]);
            }
        }

        var places = new int[size];
        var filled = 1;
        for (var d = scope.Length - 1; d >= 0; d--)
        {
            for (var x = 1; x < Counts[scope[d]]; x++)
            {
                for (var i = 0; i < filled; i++)
                {
                    places[(x * filled) + i] = places[i] + (x * strides[d]);
                }
            }

            filled *= Counts[scope[d]];
        }

        return (scope, places);
    }
}
