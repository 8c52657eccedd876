namespace Clutchwright.Proofs.Distributions;

/// <summary>The chi-square distribution, by the incomplete gamma function.</summary>
internal static class ChiSquareDistribution
{
    /// <summary>The chance of a value at least so large.</summary>
    /// <param name="x">At least 0, or infinite.</param>
    /// <param name="degreesOfFreedom">At least 1.</param>
    public static double UpperTail(double x, int degreesOfFreedom) => UpperGamma(degreesOfFreedom / 2.0, x / 2.0);

    /// <summary>The regularised upper incomplete gamma function Q(a, x), a above 0.</summary>
    /// <remarks>The power series below a + 1 and Legendre's continued fraction above it; relative error about 1e-14 where Q is not tiny.
    /// Cost: about sqrt(a) terms.</remarks>
    public static double UpperGamma(double a, double x)
    {
        if (x <= 0.0)
        {
            return 1.0;
        }

        if (double.IsPositiveInfinity(x))
        {
            return 0.0;
        }

        // x^a e^-x / Γ(a + 1)
        var front = Math.Exp(-SaddlePoint.StirlingError(a) - SaddlePoint.Deviance(a, x)) / Math.Sqrt(2.0 * Math.PI * a);
        return x < a + 1.0 ? 1.0 - (front * Series(a, x)) : front * a * Fraction(a, x);
    }

    private static double Series(double a, double x)
    {
        var (sum, term) = (1.0, 1.0);
        for (var j = 1; term > sum * 1e-17; j++)
        {
            term *= x / (a + j);
            sum += term;
        }

        return sum;
    }

    // Modified Lentz.
    private static double Fraction(double a, double x)
    {
        const double Tiny = 1e-300;
        var b = x + 1.0 - a;
        var c = 1.0 / Tiny;
        var d = 1.0 / b;
        var result = d;
        for (var j = 1; j < 1_000_000; j++)
        {
            var factor = -j * (j - a);
            b += 2.0;
            d = (factor * d) + b;
            d = 1.0 / (Math.Abs(d) < Tiny ? Tiny : d);
            c = b + (factor / c);
            c = Math.Abs(c) < Tiny ? Tiny : c;
            var step = c * d;
            result *= step;
            if (Math.Abs(step - 1.0) < 1e-16)
            {
                break;
            }
        }

        return result;
    }
}
