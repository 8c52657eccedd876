namespace Clutchwright.Planning.Simulation;

/// <summary>Draws one of several outcomes by their weights in constant time. Immutable, and safe to use from many threads.</summary>
/// <remarks>The alias method (docs/references.md [Walker1977]): one random number tells a place and whether its own outcome or its alias is drawn. Chances are
/// exact to 2^-52 or so of the sum of weights.</remarks>
public sealed class AliasTable
{
    private readonly ulong[] _own;
    private readonly int[] _alias;

    private AliasTable(ulong[] own, int[] alias)
    {
        _own = own;
        _alias = alias;
    }

    /// <summary>Gets how many outcomes there are.</summary>
    public int Count => _alias.Length;

    /// <summary>Makes a table.</summary>
    /// <param name="weights">One for each outcome, at least 0, in any unit; not all 0.</param>
    /// <exception cref="ArgumentException">There is no weight above 0, or one is negative, infinite or NaN.</exception>
    public static AliasTable Of(IReadOnlyList<double> weights)
    {
        if (weights.Any(w => !double.IsFinite(w) || w < 0.0) || weights.Sum() is not (> 0.0 and < double.PositiveInfinity))
        {
            throw new ArgumentException("Weights are finite, not negative and not all zero.", nameof(weights));
        }

        var count = weights.Count;
        var scale = count / weights.Sum();
        var left = weights.Select(w => w * scale).ToArray();
        var (own, alias) = (new ulong[count], new int[count]);
        var small = new Stack<int>(Enumerable.Range(0, count).Where(i => left[i] < 1.0).Reverse());
        var large = new Stack<int>(Enumerable.Range(0, count).Where(i => left[i] >= 1.0).Reverse());
        while (small.TryPop(out var few))
        {
            if (!large.TryPop(out var many))
            {
                // Rounding left it a hair below one.
                (own[few], alias[few]) = (ulong.MaxValue, few);
                continue;
            }

            (own[few], alias[few]) = ((ulong)(Math.Max(0.0, left[few]) * 18446744073709551616.0), many);
            left[many] -= 1.0 - left[few];
            (left[many] < 1.0 ? small : large).Push(many);
        }

        foreach (var place in large)
        {
            (own[place], alias[place]) = (ulong.MaxValue, place);
        }

        return new(own, alias);
    }

    /// <summary>Draws an outcome.</summary>
    /// <returns>Its place in the weights, from 0.</returns>
    public int Draw(CountedRandom random)
    {
        var place = (int)Math.BigMul(random.Next(), (ulong)_alias.Length, out var rest);
        return rest < _own[place] ? place : _alias[place];
    }
}
