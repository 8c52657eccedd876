namespace Clutchwright.Pedigrees.Networks;

/// <summary>A counted stream of random numbers. Source: docs/references.md [Steele2014].</summary>
internal static class SplitMix64
{
    /// <summary>The next number; <paramref name="state"/> moves on.</summary>
    public static ulong Next(ref ulong state)
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15UL;
            var z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }

    /// <summary>The next number from 0, included, to 1, not included.</summary>
    public static double NextShare(ref ulong state) => (Next(ref state) >> 11) * (1.0 / (1UL << 53));

    /// <summary>Draws a place, each as often as it weighs.</summary>
    /// <param name="weights">Weights from 0 up, of which one at least is not 0.</param>
    /// <param name="state">The state of the random numbers.</param>
    public static int NextState(ReadOnlySpan<double> weights, ref ulong state)
    {
        var total = 0.0;
        foreach (var weight in weights)
        {
            total += weight;
        }

        var left = NextShare(ref state) * total;
        var drawn = 0;
        while (drawn < weights.Length - 1 && (weights[drawn] == 0.0 || (left -= weights[drawn]) >= 0.0))
        {
            drawn++;
        }

        while (weights[drawn] == 0.0)
        {
            drawn--;
        }

        return drawn;
    }
}
