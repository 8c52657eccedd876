namespace Clutchwright.Pedigrees.Networks;

/// <summary>The outer part of a network summed out once, so that only the tangle in the middle has to be worked on again and again.</summary>
internal sealed class Fringe
{
    private readonly int[] _counts;
    private readonly List<(int Variable, int[] Scope, double[] Shares)> _rows = [];

    private Fringe(int[] counts) => _counts = counts;

    /// <summary>Gets the tables over what is left, its variables renumbered in the order of <see cref="Core"/>.</summary>
    public List<Factor> Factors { get; private set; } = [];

    /// <summary>Gets the variables that are left.</summary>
    public int[] Core { get; private set; } = [];

    /// <summary>Sums out the variables that tie nothing together.</summary>
    /// <param name="counts">How many states each variable has.</param>
    /// <param name="factors">The tables.</param>
    /// <param name="plan">The plan of the whole.</param>
    public static Fringe Of(int[] counts, IReadOnlyList<Factor> factors, EliminationPlan plan)
    {
        var fringe = new Fringe(counts);
        var ofVariable = new List<Factor>[counts.Length];
        for (var v = 0; v < counts.Length; v++)
        {
            ofVariable[v] = [];
        }

        foreach (var factor in factors)
        {
            Put(factor);
        }

        foreach (var v in plan.Order.Take(plan.Fringe))
        {
            Put(fringe.SumOut(v, [.. ofVariable[v].Distinct()], Drop));
        }

        fringe.Core = [.. plan.Order.Skip(plan.Fringe).Order()];
        var place = fringe.Core.Select((v, i) => (v, i)).ToDictionary(p => p.v, p => p.i);
        fringe.Factors = Merged(fringe.Core.SelectMany(v => ofVariable[v]).Distinct()
            .Select(f => fringe.Sorted(f))
            .Select(f => f with { Variables = Array.ConvertAll(f.Variables, v => place[v]) }));
        return fringe;

        void Put(Factor factor)
        {
            foreach (var v in factor.Variables)
            {
                ofVariable[v].Add(factor);
            }
        }

        void Drop(Factor factor)
        {
            foreach (var v in factor.Variables)
            {
                ofVariable[v].Remove(factor);
            }
        }
    }

    /// <summary>Draws the outer variables, given the states of the others.</summary>
    /// <param name="states">The states; those of the core are read, the others filled.</param>
    /// <param name="random">The state of the random numbers.</param>
    /// <param name="sums">By variable, the weights are added here that each outer variable had, which sum to 1.</param>
    public void Draw(int[] states, ref ulong random, double[][] sums)
    {
        for (var i = _rows.Count - 1; i >= 0; i--)
        {
            var (variable, scope, shares) = _rows[i];
            var start = 0;
            foreach (var other in scope)
            {
                start = (start * _counts[other]) + states[other];
            }

            var row = shares.AsSpan(start * _counts[variable], _counts[variable]);
            var sum = sums[variable];
            for (var x = 0; x < row.Length; x++)
            {
                sum[x] += row[x];
            }

            states[variable] = SplitMix64.NextState(row, ref random);
        }
    }

    // Tables over the same variables as one.
    private static List<Factor> Merged(IEnumerable<Factor> factors) =>
    [
        .. factors.GroupBy(f => string.Join(',', f.Variables), StringComparer.Ordinal).Select(g => g.Aggregate((a, b) =>
            new Factor(a.Variables, [.. a.Values.Select((x, i) => x * b.Values[i])]))).Select(f =>
        {
            // Many small weights multiplied: kept from running out of the range of numbers.
            var largest = f.Values.Max();
            return largest > 0.0 ? f with { Values = Array.ConvertAll(f.Values, x => x / largest) } : f;
        }),
    ];

    private Factor Sorted(Factor factor)
    {
        int[] scope = [.. factor.Variables.Order()];
        return new(scope, Product(scope, [factor]));
    }

    private double[] Product(int[] scope, IReadOnlyList<Factor> inflow)
    {
        var counts = Array.ConvertAll(scope, v => _counts[v]);
        var table = new double[counts.Aggregate(1, (a, b) => checked(a * b))];
        Array.Fill(table, 1.0);
        var digits = new int[scope.Length];
        for (var at = 0; at < table.Length; at++)
        {
            foreach (var factor in inflow)
            {
                var from = 0;
                foreach (var v in factor.Variables)
                {
                    from = (from * _counts[v]) + digits[Array.IndexOf(scope, v)];
                }

                table[at] *= factor.Values[from];
            }

            for (var d = scope.Length - 1; d >= 0 && ++digits[d] == counts[d]; d--)
            {
                digits[d] = 0;
            }
        }

        return table;
    }

    private Factor SumOut(int variable, IReadOnlyList<Factor> inflow, Action<Factor> drop)
    {
        int[] scope = [.. inflow.SelectMany(f => f.Variables).Where(v => v != variable).Distinct().Order(), variable];
        var table = Product(scope, inflow);
        foreach (var factor in inflow)
        {
            drop(factor);
        }

        var own = _counts[variable];
        var sums = new double[table.Length / own];
        for (var at = 0; at < table.Length; at++)
        {
            sums[at / own] += table[at];
        }

        _rows.Add((variable, scope[..^1], [.. table.Select((weight, at) => sums[at / own] > 0.0 ? weight / sums[at / own] : 0.0)]));

        var largest = sums.Max();
        return new(scope[..^1], largest > 0.0 ? Array.ConvertAll(sums, s => s / largest) : sums);
    }
}
