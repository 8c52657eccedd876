namespace Clutchwright.Proofs.Distributions;

/// <summary>The binomial distribution, by the incomplete beta function, and the limits that are exact by it.</summary>
internal static class BinomialDistribution
{
    /// <summary>The chance of exactly k of n.</summary>
    public static double Exactly(int k, int n, double chance)
    {
        if (k < 0 || k > n)
        {
            return 0.0;
        }

        return chance switch
        {
            <= 0.0 => k == 0 ? 1.0 : 0.0,
            >= 1.0 => k == n ? 1.0 : 0.0,
            _ => Density(k, n - k, chance, 1.0 - chance),
        };
    }

    /// <summary>The chance of at most k of n.</summary>
    public static double AtMost(int k, int n, double chance) =>
        k < 0 ? 0.0 : k >= n ? 1.0 : IncompleteBeta(n - k, k + 1, 1.0 - chance, chance);

    /// <summary>The chance of at least k of n.</summary>
    public static double AtLeast(int k, int n, double chance) =>
        k <= 0 ? 1.0 : k > n ? 0.0 : IncompleteBeta(k, n - k + 1, chance, 1.0 - chance);

    /// <summary>The regularised incomplete beta function I_x(a, b), a and b above 0.</summary>
    /// <param name="a">The first parameter.</param>
    /// <param name="b">The second parameter.</param>
    /// <param name="x">In [0, 1].</param>
    /// <param name="y">1 - x, so that neither end loses digits.</param>
    /// <remarks>The continued fraction of Didonato and Morris on the side where it converges fast; relative error about 1e-14.</remarks>
    public static double IncompleteBeta(double a, double b, double x, double y)
    {
        if (x <= 0.0 || y <= 0.0)
        {
            return x <= 0.0 ? 0.0 : 1.0;
        }

        return x <= (a + 1.0) / (a + b + 2.0) ? Lower(a, b, x, y) : 1.0 - Lower(b, a, y, x);
    }

    private static double Lower(double a, double b, double x, double y)
    {
        // x^a y^b / (a B(a, b)), times a continued fraction.
        const double Tiny = 1e-300;
        var front = Density(a, b, x, y) * b / (a + b);
        var (c, d, result) = (1.0, 1.0 / NotZero(1.0 - ((a + b) * x / (a + 1.0))), 0.0);
        result = d;
        for (var m = 1; m < 1_000_000; m++)
        {
            var even = m * (b - m) * x / ((a + (2.0 * m) - 1.0) * (a + (2.0 * m)));
            d = 1.0 / NotZero(1.0 + (even * d));
            c = NotZero(1.0 + (even / c));
            result *= d * c;
            var odd = -(a + m) * (a + b + m) * x / ((a + (2.0 * m)) * (a + (2.0 * m) + 1.0));
            d = 1.0 / NotZero(1.0 + (odd * d));
            c = NotZero(1.0 + (odd / c));
            result *= d * c;
            if (Math.Abs((d * c) - 1.0) < 1e-16)
            {
                break;
            }
        }

        return front * result;

        static double NotZero(double v) => Math.Abs(v) < Tiny ? Tiny : v;
    }

    // Γ(a + b + 1) / (Γ(a + 1) Γ(b + 1)) x^a y^b
    private static double Density(double a, double b, double x, double y)
    {
        var n = a + b;
        if (a == 0.0 || b == 0.0)
        {
            return Math.Exp(n == 0.0 ? 0.0 : a == 0.0 ? Power(n, y, x) : Power(n, x, y));
        }

        var log = SaddlePoint.StirlingError(n) - SaddlePoint.StirlingError(a) - SaddlePoint.StirlingError(b)
            - SaddlePoint.Deviance(a, n * x) - SaddlePoint.Deviance(b, n * y);
        return Math.Exp(log) * Math.Sqrt(n / (2.0 * Math.PI * a * b));
    }

    // n ln base, where base is 1 - other and may be too near 1 to keep its digits.
    private static double Power(double n, double @base, double other) =>
        other < 0.1 ? -SaddlePoint.Deviance(n, n * @base) - (n * other) : n * Math.Log(@base);
}
