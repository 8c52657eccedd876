using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Clutches;

/// <summary>The number of successes in independent trials.</summary>
internal static class Binomial
{
    /// <summary>The chance of exactly k successes in n trials.</summary>
    public static double Exactly(int k, int n, double chance)
    {
        // Multiplied so that no partial product leaves the range of a double for the clutch sizes of any animal.
        if (chance <= 0.0)
        {
            return k == 0 ? 1.0 : 0.0;
        }

        if (chance >= 1.0)
        {
            return k == n ? 1.0 : 0.0;
        }

        var (few, share) = k <= n - k ? (k, chance) : (n - k, 1.0 - chance);
        var log = 0.0;
        for (var i = 1; i <= few; i++)
        {
            log += Math.Log((double)(n - few + i) / i);
        }

        return Math.Exp(log + (few * Math.Log(share)) + ((n - few) * Math.Log(1.0 - share)));
    }

    /// <summary>The chance of at least k successes in n trials; exact where the chance is.</summary>
    public static Probability AtLeast(int k, int n, Probability chance)
    {
        if (k <= 0)
        {
            return Probability.Certain;
        }

        if (k > n)
        {
            return Probability.Impossible;
        }

        if (chance.Exact is not { } exact)
        {
            var upper = 0.0;
            for (var i = k; i <= n; i++)
            {
                upper += Exactly(i, n, chance.Value);
            }

            return Probability.Rounded(upper);
        }

        var sum = Fraction.Zero;
        var ways = Fraction.One;
        for (var i = 0; i <= n; i++)
        {
            if (i >= k)
            {
                sum += ways * exact.Power(i) * (Fraction.One - exact).Power(n - i);
            }

            ways = ways * (n - i) / (i + 1);
        }

        return Probability.From(sum);
    }
}
