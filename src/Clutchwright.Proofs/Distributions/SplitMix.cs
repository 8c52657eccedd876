namespace Clutchwright.Proofs.Distributions;

/// <summary>A counted source of chance: the same seed gives the same numbers everywhere.</summary>
/// <remarks>SplitMix64. Not safe to share between threads.</remarks>
internal sealed class SplitMix(ulong seed)
{
    private ulong _state = seed;

    /// <summary>The next number in [0, 1).</summary>
    public double Next() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>The next whole number below a bound of at most 2^31.</summary>
    public int Below(int bound) => (int)(((UInt128)NextBits() * (ulong)bound) >> 64);

    /// <summary>The number of successes in n trials, by going out from the likeliest number.</summary>
    /// <remarks>Cost: about the standard deviation of the number.</remarks>
    public int Binomial(int n, double chance)
    {
        if (n == 0 || chance <= 0.0 || chance >= 1.0)
        {
            return chance >= 1.0 ? n : 0;
        }

        var mode = Math.Min(n, (int)((n + 1) * chance));
        var odds = chance / (1.0 - chance);
        var left = Next();
        var (low, high) = (mode, mode);
        var (atLow, atHigh) = (BinomialDistribution.Exactly(mode, n, chance), 0.0);
        atHigh = atLow;
        left -= atLow;
        while (left > 0.0 && (low > 0 || high < n))
        {
            if (low > 0)
            {
                atLow *= low / ((n - low + 1) * odds);
                low--;
                left -= atLow;
                if (left <= 0.0)
                {
                    return low;
                }
            }

            if (high < n)
            {
                atHigh *= (n - high) * odds / (high + 1);
                high++;
                left -= atHigh;
                if (left <= 0.0)
                {
                    return high;
                }
            }
        }

        return mode;
    }

    private ulong NextBits() => unchecked(Mix(_state += 0x9E3779B97F4A7C15));

    private static ulong Mix(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
