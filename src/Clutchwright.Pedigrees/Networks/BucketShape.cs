namespace Clutchwright.Pedigrees.Networks;

/// <summary>What the table has in it at which one variable is summed out, but for the weights.</summary>
/// <remarks>Scopes list places in the order of summing out, the latest first, so that the own variable stands last.</remarks>
internal sealed class BucketShape
{
    // Below this a small table goes into any other that has its variables; above only into one of at most half the size of the whole.
    private const int SmallTable = 4_096;

    /// <summary>Lays out a table.</summary>
    /// <param name="rank">The own variable's place in the order.</param>
    /// <param name="slots">What flows in, each over other variables.</param>
    /// <param name="counts">How many states each variable has, by place in the order.</param>
    public BucketShape(int rank, List<SlotShape> slots, int[] counts)
    {
        Own = counts[rank];
        var scope = ScopeOf(rank, slots);
        Separator = scope.Length == 1 ? [] : scope[..^1];
        Walk = new(scope, counts);
        slots.Sort((a, b) => b.Size != a.Size ? b.Size.CompareTo(a.Size) : a.Index.CompareTo(b.Index));
        Slots = [.. slots];
        for (var i = Slots.Length - 1; i > 0; i--)
        {
            for (var j = i - 1; j >= 0 && Slots[i].Container is null; j--)
            {
                // A small table goes into the smallest larger one that has all its variables, so that the large table is walked with few.
                if ((Walk.Size <= SmallTable || Slots[j].Size * 2 <= Walk.Size) && Slots[j].Has(Slots[i].Scope))
                {
                    Slots[i].PutInto(Slots[j], counts);
                }
            }
        }

        Tops = Array.FindAll(Slots, s => s.Container is null);
        Lanes = Array.ConvertAll(Tops, t => new Lane(Walk, t.Scope));
    }

    /// <summary>Gets how many states the own variable has.</summary>
    public int Own { get; }

    /// <summary>Gets the other variables of the table.</summary>
    public int[] Separator { get; }

    /// <summary>Gets the walk over the table.</summary>
    public TableWalk Walk { get; }

    /// <summary>Gets how many entries the message passed on has.</summary>
    public int UpSize => Walk.Size / Own;

    /// <summary>Gets or sets the pool that arrays of the message's size come from.</summary>
    public int UpPool { get; set; }

    /// <summary>Gets what flows in; what contains another stands before it.</summary>
    public SlotShape[] Slots { get; }

    /// <summary>Gets those that no other contains.</summary>
    public SlotShape[] Tops { get; }

    /// <summary>Gets the places of <see cref="Tops"/> on the walk.</summary>
    public Lane[] Lanes { get; }

    private static int[] ScopeOf(int rank, List<SlotShape> slots)
    {
        var scope = new List<int>();
        foreach (var slot in slots)
        {
            foreach (var r in slot.Scope)
            {
                if (!scope.Contains(r))
                {
                    scope.Add(r);
                }
            }
        }

        if (scope.Count == 0)
        {
            return [rank];
        }

        scope.Sort((a, b) => b.CompareTo(a));
        return [.. scope];
    }
}

/// <summary>All that flows into a table over the same variables.</summary>
/// <param name="index">Its number among all of a tree.</param>
/// <param name="scope">The variables, the latest first.</param>
/// <param name="size">How many entries it has.</param>
internal sealed class SlotShape(int index, int[] scope, int size)
{
    /// <summary>Gets its number among all of a tree.</summary>
    public int Index => index;

    /// <summary>Gets the variables.</summary>
    public int[] Scope => scope;

    /// <summary>Gets how many entries it has.</summary>
    public int Size => size;

    /// <summary>Gets or sets the pool that arrays of its size come from.</summary>
    public int Pool { get; set; }

    /// <summary>Gets the tables of the network that go in: the number of each, and where its entries are found if its variables stand in another order.</summary>
    public List<(int Factor, int[]? Places)> Factors { get; } = [];

    /// <summary>Gets the tables whose messages go in.</summary>
    public List<int> Buckets { get; } = [];

    /// <summary>Gets the one that this goes into, if any.</summary>
    public SlotShape? Container { get; private set; }

    /// <summary>Gets the walk over this table with those that go into it.</summary>
    public TableWalk? Walk { get; private set; }

    /// <summary>Gets the places of this table on the walk over its container.</summary>
    public Lane? Lane { get; private set; }

    /// <summary>Gets whether somebody below asks for the weights here.</summary>
    public bool IsAsked { get; private set; }

    /// <summary>Gets whether its weights are those of one table as they are.</summary>
    public bool IsPlain => Walk is null && Factors.Count + Buckets.Count == 1 && (Factors.Count == 0 || Factors[0].Places is null);

    /// <summary>Takes in the message of a table.</summary>
    public void Take(int bucket)
    {
        Buckets.Add(bucket);
        IsAsked = true;
    }

    /// <summary>Whether it has all of some variables.</summary>
    public bool Has(int[] other)
    {
        if (other.Length >= scope.Length)
        {
            return false;
        }

        var at = 0;
        foreach (var r in other)
        {
            while (at < scope.Length && scope[at] > r)
            {
                at++;
            }

            if (at == scope.Length || scope[at] != r)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Puts this into another.</summary>
    public void PutInto(SlotShape container, int[] counts)
    {
        Container = container;
        container.Walk ??= new(container.Scope, counts);
        container.IsAsked |= IsAsked;
        Lane = new(container.Walk, scope);
    }
}
