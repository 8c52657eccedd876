using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>Multiplies factors case by case, and keeps the distribution of the product over the cases of the parents.</summary>
/// <remarks>The chance sought is a sum over terms, each a product over factors: with c(t) the coefficient of term t and v(f, k, t) its value in
/// case k of factor f, the chance in a joint case (k1, k2, ...) is sum over t of c(t) v(1, k1, t) v(2, k2, t) ... Joint cases with equal values
/// are put together after each factor, so the number kept is that of distinct values, not of combinations.</remarks>
internal sealed class CaseProduct
{
    private Dictionary<Terms, Probability> _cases;

    public CaseProduct(int terms)
    {
        var ones = new Probability[terms];
        Array.Fill(ones, Probability.Certain);
        _cases = new() { [new(ones)] = Probability.Certain };
    }

    /// <summary>Multiplies a factor in.</summary>
    /// <param name="weights">The weight of each of its cases.</param>
    /// <param name="value">The value of each case and term.</param>
    public void Multiply(IReadOnlyList<Probability> weights, Func<int, int, Probability> value)
    {
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
    public SharedChance Sum(IReadOnlyList<int> coefficients) =>
        new(_cases.Select(c => new Weighted<Probability>(Total(c.Key.Values, coefficients), c.Value)));

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
