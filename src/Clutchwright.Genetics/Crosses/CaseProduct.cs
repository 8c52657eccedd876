using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>Multiplies factors case by case, and keeps the distribution of the product over the cases of the parents.</summary>
/// <remarks>The chance sought is a sum over terms, each a product over factors: with c(t) the coefficient of term t and v(f, k, t) its value in
/// case k of factor f, the chance in a joint case (k1, k2, ...) is sum over t of c(t) v(1, k1, t) v(2, k2, t) ... Joint cases with equal values
/// are put together after each factor, so the number kept is that of distinct values, not of combinations.</remarks>
internal sealed class CaseProduct
{
    // Below this many cases a walk along them is quicker than a table.
    private const int MostWalked = 24;

    private Dictionary<Terms, Probability> _cases = [];
    private List<Weighted<Probability>>? _single;

    public CaseProduct(int terms)
    {
        if (terms == 1)
        {
            _single = [new(Probability.Certain, Probability.Certain)];
            return;
        }

        var ones = new Probability[terms];
        Array.Fill(ones, Probability.Certain);
        _cases = new() { [new(ones)] = Probability.Certain };
    }

    /// <summary>Multiplies a factor in.</summary>
    /// <param name="weights">The weight of each of its cases.</param>
    /// <param name="value">The value of each case and term.</param>
    public void Multiply(IReadOnlyList<Probability> weights, Func<int, int, Probability> value)
    {
        if (_single is not null)
        {
            MultiplySingle(weights, value);
            return;
        }

        var next = new Dictionary<Terms, Probability>();
        var terms = _cases.First().Key.Values.Length;
        for (var k = 0; k < weights.Count; k++)
        {
            var values = new Probability[terms];
            for (var t = 0; t < terms; t++)
            {
                values[t] = value(k, t);
            }

            foreach (var (old, weight) in _cases)
            {
                var product = new Probability[terms];
                for (var t = 0; t < terms; t++)
                {
                    product[t] = old.Values[t] * values[t];
                }

                var key = new Terms(product);
                var chance = weight * weights[k];
                next[key] = next.TryGetValue(key, out var sum) ? sum + chance : chance;
            }
        }

        _cases = next;
    }

    /// <summary>Sums the terms of every case, with whole-number coefficients.</summary>
    public SharedChance Sum(IReadOnlyList<int> coefficients) => _single is not null && coefficients[0] == 1
        ? SharedChance.OfDistinct([.. _single])
        : new(_cases.Select(c => new Weighted<Probability>(Total(c.Key.Values, coefficients), c.Value)));

    // One term, the usual case: the values themselves tell the cases apart.
    private void MultiplySingle(IReadOnlyList<Probability> weights, Func<int, int, Probability> value)
    {
        var next = new List<Weighted<Probability>>(Math.Min(_single!.Count * weights.Count, MostWalked));
        Dictionary<Probability, int>? places = null;
        for (var k = 0; k < weights.Count; k++)
        {
            if (weights[k].IsImpossible)
            {
                continue;
            }

            var factor = value(k, 0);
            foreach (var (old, weight) in _single)
            {
                Put(old * factor, weight * weights[k]);
            }
        }

        _single = next;

        void Put(Probability product, Probability weight)
        {
            var at = places is null ? Walk(product) : places.GetValueOrDefault(product, -1);
            if (at >= 0)
            {
                next[at] = new(product, next[at].Weight + weight);
                return;
            }

            next.Add(new(product, weight));
            if (places is not null)
            {
                places.Add(product, next.Count - 1);
            }
            else if (next.Count > MostWalked)
            {
                places = next.Select((n, i) => (n.Value, i)).ToDictionary(p => p.Value, p => p.i);
            }
        }

        int Walk(Probability product)
        {
            for (var i = 0; i < next.Count; i++)
            {
                if (next[i].Value == product)
                {
                    return i;
                }
            }

            return -1;
        }
    }

    internal static Probability Total(Probability[] values, IReadOnlyList<int> coefficients)
    {
        if (values.Length == 1 && coefficients[0] == 1)
        {
            return values[0];
        }

        if (Array.TrueForAll(values, v => v.Exact is not null))
        {
            var exact = Fraction.Zero;
            for (var t = 0; t < values.Length; t++)
            {
                exact += values[t].Exact!.Value * coefficients[t];
            }

            return Probability.From(exact);
        }

        var sum = 0.0;
        for (var t = 0; t < values.Length; t++)
        {
            sum += values[t].Value * coefficients[t];
        }

        return Probability.Rounded(sum);
    }

    private readonly struct Terms(Probability[] values) : IEquatable<Terms>
    {
        public Probability[] Values { get; } = values;

        public bool Equals(Terms other) => Values.AsSpan().SequenceEqual(other.Values);

        public override bool Equals(object? obj) => obj is Terms other && Equals(other);

        public override int GetHashCode()
        {
            var hash = new HashCode();
            foreach (var value in Values)
            {
                hash.Add(value.Value);
            }

            return hash.ToHashCode();
        }
    }
}
