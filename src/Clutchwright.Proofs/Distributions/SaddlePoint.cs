namespace Clutchwright.Proofs.Distributions;

/// <summary>The two small quantities by which chances of counts are written without the cancellation of large logarithms.</summary>
/// <remarks>Source: docs/references.md [Loader2000].</remarks>
internal static class SaddlePoint
{
    /// <summary>What Stirling's formula leaves off: ln n! - (n + 1/2) ln n + n - ln(2π)/2, for any n above 0.</summary>
    public static double StirlingError(double n)
    {
        // From n + 1 to n it grows by (n + 1/2) ln((n+1)/n) - 1, whose series in 1/(2n+1) has positive terms only.
        var rise = 0.0;
        for (; n < 16.0; n += 1.0)
        {
            var square = 1.0 / ((2.0 * n + 1.0) * (2.0 * n + 1.0));
            var power = square;
            for (var odd = 3; odd < 200 && power > 1e-19; odd += 2)
            {
                rise += power / odd;
                power *= square;
            }
        }

        var r = 1.0 / (n * n);
        var series = (1.0 / 12.0) - (r * ((1.0 / 360.0) - (r * ((1.0 / 1260.0) - (r * ((1.0 / 1680.0) - (r * (1.0 / 1188.0))))))));
        return rise + (series / n);
    }

    /// <summary>The deviance x ln(x / mean) + mean - x: at least 0, and 0 only where x is the mean.</summary>
    /// <param name="x">At least 0.</param>
    /// <param name="mean">Above 0.</param>
    public static double Deviance(double x, double mean)
    {
        if (x == 0.0)
        {
            return mean;
        }

        if (Math.Abs(x - mean) >= 0.1 * (x + mean))
        {
            return (x * Math.Log(x / mean)) + mean - x;
        }

        var v = (x - mean) / (x + mean);
        var sum = (x - mean) * v;
        var term = 2.0 * x * v;
        for (var odd = 3; odd < 1000; odd += 2)
        {
            term *= v * v;
            var next = sum + (term / odd);
            if (next == sum)
            {
                break;
            }

            sum = next;
        }

        return sum;
    }
}
