namespace Clutchwright.Pedigrees.Networks;

/// <summary>A network of which some variables are held at a state, so that the rest can be solved.</summary>
internal sealed class CutNetwork
{
    private readonly int[] _counts;
    private readonly IReadOnlyList<Factor> _factors;
    private readonly int[] _liveCounts;
    private readonly Slice[] _slices;

    private CutNetwork(int[] counts, IReadOnlyList<Factor> factors, int[] cut)
    {
        _counts = counts;
        _factors = factors;
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

        _liveCounts = Array.ConvertAll(Live, v => counts[v]);
        _slices = [.. factors.Select(f => Slice.Of(f, counts, isCut, place))];
        Plan = EliminationPlan.For(_liveCounts, _slices.Select(s => s.Scope), isQuick: cut.Length > 0);
    }

    private CutNetwork(CutNetwork other, IReadOnlyList<Factor> factors)
    {
        _counts = other._counts;
        _factors = factors;
        Cut = other.Cut;
        Live = other.Live;
        _liveCounts = other._liveCounts;
        _slices = other._slices;
        Plan = other.Plan;
    }

    /// <summary>Gets the variables that are held.</summary>
    public int[] Cut { get; }

    /// <summary>Gets the others.</summary>
    public int[] Live { get; }

    /// <summary>Gets the plan for the rest.</summary>
    public EliminationPlan Plan { get; }

    /// <summary>Gets how many combinations of states the held variables have.</summary>
    public double Cases => Cut.Aggregate(1.0, (product, v) => product * _counts[v]);

    /// <summary>Holds variables until the rest is small enough.</summary>
    /// <param name="counts">How many states each variable has.</param>
    /// <param name="factors">The tables.</param>
    /// <param name="budget">How many entries the rest may need.</param>
    /// <param name="worn">For each variable how often it was held elsewhere: such ones are held less gladly. Counted on.</param>
    /// <param name="random">The state of the random numbers; equally good choices are drawn.</param>
    /// <param name="most">The most variables to hold.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns><c>null</c> if holding so many is not enough.</returns>
    public static CutNetwork? Choose(
        int[] counts, IReadOnlyList<Factor> factors, double budget, int[] worn, ref ulong random, int most, CancellationToken cancel)
    {
        var cut = new List<int>();
        while (true)
        {
            cancel.ThrowIfCancellationRequested();
            var network = new CutNetwork(counts, factors, [.. cut]);
            if (network.Plan.Entries <= budget)
            {
                foreach (var v in cut)
                {
                    worn[v]++;
                }

                return network;
            }

            var over = (int)(Math.Log(network.Plan.Entries / budget) / Math.Log(3.0) / 4.0);
            for (var i = 0; i <= over; i++)
            {
                if (cut.Count == most)
                {
                    return null;
                }

                cut.Add(network.Heaviest(cut, worn, ref random));
            }
        }
    }

    /// <summary>Holds all variables but one.</summary>
    /// <param name="counts">How many states each variable has.</param>
    /// <param name="factors">The tables.</param>
    /// <param name="free">The one that is not held.</param>
    public static CutNetwork FreeingOnly(int[] counts, IReadOnlyList<Factor> factors, int free) =>
        new(counts, factors, [.. Enumerable.Range(0, counts.Length).Where(v => v != free)]);

    /// <summary>The same variables held in tables of other weights over the same variables.</summary>
    public CutNetwork With(IReadOnlyList<Factor> factors) => new(this, factors);

    /// <summary>Solves the rest, given the states of those held.</summary>
    /// <param name="states">A state for each variable; those of variables that are not held do not matter.</param>
    /// <param name="cancel">Stops the work.</param>
    public BucketTree Given(int[] states, CancellationToken cancel = default) => BucketTree.Of(
        _liveCounts, _slices.Select((s, i) => s.Read(_factors[i].Values, states)), Plan, cancel);

    /// <summary>Draws the states of all that is not held from their exact distribution given those held.</summary>
    /// <param name="states">A state for each variable; those that are not held are drawn anew.</param>
    /// <param name="random">The state of the random numbers.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>What it was drawn from.</returns>
    public BucketTree Redraw(int[] states, ref ulong random, CancellationToken cancel)
    {
        var tree = Given(states, cancel);
        var drawn = new int[Live.Length];
        tree.Draw(drawn, ref random);
        for (var i = 0; i < drawn.Length; i++)
        {
            states[Live[i]] = drawn[i];
        }

        return tree;
    }

    // Of those in the largest tables the one that was held least often elsewhere, so that all are free in their turn.
    private int Heaviest(List<int> cut, int[] worn, ref ulong random)
    {
        var most = 0.0;
        for (var i = 0; i < Live.Length; i++)
        {
            most = Math.Max(most, cut.Contains(Live[i]) ? 0.0 : Plan.Pressure[i]);
        }

        var (chosen, ties) = (-1, 0UL);
        for (var i = 0; i < Live.Length; i++)
        {
            if (Plan.Pressure[i] < most * 0.1 || cut.Contains(Live[i]) || (chosen >= 0 && worn[Live[i]] > worn[chosen]))
            {
                continue;
            }

            if (chosen >= 0 && worn[Live[i]] < worn[chosen])
            {
                ties = 0;
            }

            if (SplitMix64.Next(ref random) % ++ties == 0)
            {
                chosen = Live[i];
            }
        }

        return chosen;
    }

    /// <summary>How the live part of a table is read.</summary>
    private sealed class Slice
    {
        private readonly (int Variable, int Stride)[] _held;
        private readonly int[] _places;

        private Slice(int[] scope, (int Variable, int Stride)[] held, int[] places)
        {
            Scope = scope;
            _held = held;
            _places = places;
        }

        public int[] Scope { get; }

        public static Slice Of(Factor factor, int[] counts, bool[] isCut, int[] place)
        {
            var strides = new int[factor.Variables.Length];
            var stride = 1;
            for (var i = strides.Length - 1; i >= 0; i--)
            {
                strides[i] = stride;
                stride *= counts[factor.Variables[i]];
            }

            var places = new[] { 0 };
            var scope = new List<int>();
            var held = new List<(int, int)>();
            for (var i = 0; i < strides.Length; i++)
            {
                var variable = factor.Variables[i];
                if (isCut[variable])
                {
                    held.Add((variable, strides[i]));
                }
                else
                {
                    scope.Add(place[variable]);
                    var step = strides[i];
                    places = [.. places.SelectMany(p => Enumerable.Range(0, counts[variable]).Select(x => p + (x * step)))];
                }
            }

            return new([.. scope], [.. held], places);
        }

        public Factor Read(double[] values, int[] states)
        {
            if (_held.Length == 0)
            {
                return new(Scope, values);
            }

            var start = 0;
            foreach (var (variable, stride) in _held)
            {
                start += states[variable] * stride;
            }

            return new(Scope, Array.ConvertAll(_places, p => values[start + p]));
        }
    }
}
