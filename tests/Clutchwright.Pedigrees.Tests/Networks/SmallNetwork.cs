using Clutchwright.Pedigrees.Networks;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Pedigrees.Tests.Networks;

/// <summary>A made-up network, small enough that every combination of states can be written out.</summary>
internal sealed class SmallNetwork
{
    private SmallNetwork(int[] counts, List<Factor> factors) => (Counts, Factors) = (counts, factors);

    public int[] Counts { get; }

    public List<Factor> Factors { get; }

    /// <summary>Gets networks in which something is possible or nothing is.</summary>
    public static Gen<SmallNetwork> Any { get; } = Draw.Gen(Make);

    /// <summary>Gets every combination of states with its weight.</summary>
    public IEnumerable<(int[] States, double Weight)> Combinations()
    {
        var states = new int[Counts.Length];
        while (true)
        {
            yield return ((int[])states.Clone(), Factors.Aggregate(1.0, (w, f) => w * f.Values[Place(f, states)]));
            var at = 0;
            while (at < states.Length && ++states[at] == Counts[at])
            {
                states[at++] = 0;
            }

            if (at == states.Length)
            {
                yield break;
            }
        }
    }

    /// <inheritdoc/>
    public override string ToString() =>
        $"[{string.Join(' ', Counts)}] {string.Join(' ', Factors.Select(f => $"({string.Join(',', f.Variables)}: {string.Join(' ', f.Values)})"))}";

    private int Place(Factor factor, int[] states) => factor.Variables.Aggregate(0, (at, v) => (at * Counts[v]) + states[v]);

    private static SmallNetwork Make(Draw draw)
    {
        var counts = Enumerable.Range(0, 1 + draw.Below(7)).Select(_ => 2 + draw.Weighted(4, 3, 1)).ToArray();
        var factors = new List<Factor>();
        for (var i = draw.Below(2 + (2 * counts.Length)); i >= 0; i--)
        {
            var scope = Enumerable.Range(0, counts.Length).OrderBy(_ => draw.Below(1000)).Take(draw.Weighted(1, 6, 6, 6, 2)).ToArray();
            var size = scope.Aggregate(1, (s, v) => s * counts[v]);
            factors.Add(new(scope, [.. Enumerable.Range(0, size).Select(_ => draw.Chance(1, 4) ? 0.0 : (1 + draw.Below(1000)) * Math.Pow(10.0, -draw.Below(4)))]));
            draw.Count(size);
        }

        return new(counts, factors);
    }
}
