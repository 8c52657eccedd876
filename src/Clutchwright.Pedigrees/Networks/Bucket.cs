namespace Clutchwright.Pedigrees.Networks;

/// <summary>The table at which one variable is summed out, and what flows into it.</summary>
/// <param name="rank">The variable's place in the order; scopes here list such places, the latest first, so that the own variable stands last.</param>
internal sealed class Bucket(int rank)
{
    private readonly List<Inflow> _inflows = [];

    /// <summary>Gets the variable's place in the order.</summary>
    public int Rank => rank;

    /// <summary>Gets the other variables of the table.</summary>
    public int[] Separator { get; private set; } = [];

    /// <summary>Gets the variables of the table, the own one last.</summary>
    public int[] Scope { get; private set; } = [];

    /// <summary>Gets the product of all that flows in; after <see cref="HandBack"/> times what the rest of the network says, summing to 1.</summary>
    public double[] Table { get; private set; } = [];

    /// <summary>Gets or sets the message passed on.</summary>
    public double[] Up { get; set; } = [];

    /// <summary>Gets the weights of the own variable's states.</summary>
    public double[] Marginal { get; private set; } = [];

    private double[]? Down { get; set; }

    /// <summary>Takes in a table.</summary>
    /// <param name="scope">Its variables, the latest first.</param>
    /// <param name="values">Its weights.</param>
    /// <param name="from">The bucket it is the message of; <c>null</c>: a table of the network.</param>
    public void Take(int[] scope, double[] values, Bucket? from)
    {
        foreach (var inflow in _inflows)
        {
            if (inflow.Scope.AsSpan().SequenceEqual(scope))
            {
                inflow.Multiply(values);
                inflow.Add(from);
                return;
            }
        }

        var added = new Inflow(scope, values);
        added.Add(from);
        _inflows.Add(added);
    }

    /// <summary>Multiplies all that flowed in together.</summary>
    /// <param name="counts">States of each variable, by place in the order.</param>
    public void Gather(int[] counts)
    {
        var all = new SortedSet<int> { rank };
        foreach (var inflow in _inflows)
        {
            all.UnionWith(inflow.Scope);
        }

        Scope = [.. all.Reverse()];
        Separator = Scope[..^1];
        var size = 1;
        foreach (var r in Scope)
        {
            size = checked(size * counts[r]);
        }

        // A small table goes into the smallest larger one that has all its variables, so that the large table is walked with few.
        _inflows.Sort((a, b) => b.Scope.Length.CompareTo(a.Scope.Length));
        for (var i = _inflows.Count - 1; i > 0; i--)
        {
            for (var j = i - 1; j >= 0 && _inflows[i].Container is null; j--)
            {
                if (_inflows[j].Scope.Length > _inflows[i].Scope.Length && _inflows[j].Has(_inflows[i].Scope))
                {
                    _inflows[i].Container = _inflows[j];
                    _inflows[j].Own();
                    TableWalk.Over(_inflows[j].Scope, CountsOf(_inflows[j].Scope, counts)).Multiply(_inflows[j].Values, _inflows[i].Scope, _inflows[i].Values);
                }
            }
        }

        Table = new double[size];
        TableWalk.Over(Scope, CountsOf(Scope, counts))
            .Product(Table, [.. _inflows.Where(f => f.Container is null).Select(f => (f.Scope, f.Values))]);
    }

    /// <summary>Multiplies in what the rest of the network says, and hands to each bucket that flowed in what it has to know.</summary>
    public void HandBack(int[] counts)
    {
        var own = counts[rank];
        var total = 0.0;
        for (int s = 0, at = 0; s < Table.Length / own; s++)
        {
            var weight = Down is null ? 1.0 : Down[s];
            for (var x = 0; x < own; x++, at++)
            {
                Table[at] *= weight;
                total += Table[at];
            }
        }

        var marginal = new double[own];
        for (var at = 0; at < Table.Length;)
        {
            for (var x = 0; x < own; x++, at++)
            {
                Table[at] /= total;
                marginal[x] += Table[at];
            }
        }

        Marginal = marginal;
        Down = null;
        var wanted = _inflows.Where(f => f.Container is null && f.IsAsked).ToArray();
        if (wanted.Length > 0)
        {
            TableWalk.Over(Scope, CountsOf(Scope, counts)).Sum(Table, [.. wanted.Select(f => (f.Scope, f.Refilled()))]);
        }

        // Containers stand before what they contain.
        foreach (var inflow in _inflows.Where(f => f.IsAsked))
        {
            if (inflow.Container is { } container)
            {
                TableWalk.Over(container.Scope, CountsOf(container.Scope, counts)).Sum(container.Values, [(inflow.Scope, inflow.Refilled())]);
            }

            foreach (var bucket in inflow.From)
            {
                bucket.Down = Divide(inflow.Values, bucket.Up);
            }
        }

        _inflows.Clear();
    }

    private static double[] Divide(double[] weights, double[] by)
    {
        var result = new double[weights.Length];
        for (var i = 0; i < result.Length; i++)
        {
            result[i] = by[i] > 0.0 ? weights[i] / by[i] : 0.0;
        }

        return result;
    }

    private static int[] CountsOf(int[] scope, int[] counts) => Array.ConvertAll(scope, r => counts[r]);

    /// <summary>All that flowed in over the same variables.</summary>
    private sealed class Inflow(int[] scope, double[] values)
    {
        private bool _isOwned;
        private Inflow? _container;

        public int[] Scope => scope;

        public double[] Values { get; private set; } = values;

        public List<Bucket> From { get; } = [];

        /// <summary>Gets whether somebody below asks for the weights here.</summary>
        public bool IsAsked { get; private set; }

        public Inflow? Container
        {
            get => _container;
            set
            {
                _container = value;
                if (IsAsked)
                {
                    value!.Ask();
                }
            }
        }

        public void Add(Bucket? from)
        {
            if (from is not null)
            {
                From.Add(from);
                IsAsked = true;
            }
        }

        public bool Has(int[] other)
        {
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

        public void Multiply(double[] other)
        {
            Own();
            for (var i = 0; i < other.Length; i++)
            {
                Values[i] *= other[i];
            }
        }

        /// <summary>Makes the weights this inflow's own: those given belong to someone else.</summary>
        public void Own()
        {
            if (!_isOwned)
            {
                Values = (double[])Values.Clone();
                _isOwned = true;
            }
        }

        public double[] Refilled()
        {
            Values = new double[Values.Length];
            _isOwned = true;
            return Values;
        }

        private void Ask() => IsAsked = true;
    }
}
