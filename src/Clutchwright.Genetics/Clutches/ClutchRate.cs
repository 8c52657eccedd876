namespace Clutchwright.Genetics.Clutches;

/// <summary>A share of eggs that varies from clutch to clutch: a beta distribution by its mean and standard deviation, or one fixed number.</summary>
/// <remarks>Equality is by both numbers. <c>default</c> is a share of 0.</remarks>
public readonly record struct ClutchRate
{
    private ClutchRate(double mean, double standardDeviation)
    {
        Mean = mean;
        StandardDeviation = standardDeviation;
    }

    /// <summary>Gets the mean share, in [0, 1].</summary>
    public double Mean { get; }

    /// <summary>Gets the standard deviation between clutches; 0: every clutch the same.</summary>
    public double StandardDeviation { get; }

    /// <summary>A share that is the same in every clutch.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="share"/> is NaN or outside [0, 1].</exception>
    public static ClutchRate Fixed(double share) => Of(share, 0.0);

    /// <summary>A share that varies.</summary>
    /// <param name="mean">In [0, 1].</param>
    /// <param name="standardDeviation">At least 0, and below sqrt(mean (1 - mean)), the most a share can vary.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of the numbers is out of its range.</exception>
    public static ClutchRate Of(double mean, double standardDeviation)
    {
        if (mean is not (>= 0.0 and <= 1.0))
        {
            throw new ArgumentOutOfRangeException(nameof(mean), mean, "A share lies in [0, 1].");
        }

        if (standardDeviation is not >= 0.0 || (standardDeviation > 0.0 && standardDeviation * standardDeviation >= mean * (1.0 - mean)))
        {
            throw new ArgumentOutOfRangeException(
                nameof(standardDeviation), standardDeviation, "A share varies by less than sqrt(mean (1 - mean)).");
        }

        return new(mean, standardDeviation);
    }

    /// <summary>The distribution of how many are left of a number of eggs, when each stays with this share.</summary>
    /// <param name="number">Index n holds the chance of n eggs.</param>
    internal double[] Thin(double[] number)
    {
        var result = new double[number.Length];
        for (var n = 0; n < number.Length; n++)
        {
            if (number[n] == 0.0)
            {
                continue;
            }

            var left = LeftOf(n);
            for (var k = 0; k <= n; k++)
            {
                result[k] += number[n] * left[k];
            }
        }

        return result;
    }

    private double[] LeftOf(int n)
    {
        var left = new double[n + 1];
        if (StandardDeviation == 0.0)
        {
            for (var k = 0; k <= n; k++)
            {
                left[k] = Binomial.Exactly(k, n, Mean);
            }

            return left;
        }

        // Polya's urn: each egg that stays makes the next likelier to stay. Sequential, so no gamma function is needed.
        var concentration = (Mean * (1.0 - Mean) / (StandardDeviation * StandardDeviation)) - 1.0;
        var (a, b) = (Mean * concentration, (1.0 - Mean) * concentration);
        left[0] = 1.0;
        for (var egg = 0; egg < n; egg++)
        {
            for (var k = egg + 1; k >= 0; k--)
            {
                var stays = k > 0 ? left[k - 1] * (a + k - 1) / (a + b + egg) : 0.0;
                var goes = k <= egg ? left[k] * (b + egg - k) / (a + b + egg) : 0.0;
                left[k] = stays + goes;
            }
        }

        return left;
    }
}
