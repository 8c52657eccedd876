namespace Clutchwright.Planning.Expectations;

/// <summary>The area under the normal curve.</summary>
/// <remarks>Hart's rational approximation in the form of West (2005), to about 1e-14. Source: docs/references.md [West2005].</remarks>
internal static class NormalCurve
{
    // Steps of a table from -8 to 8; between two of them the cubic through both values and slopes is off by less than 1e-12.
    private const int StepsAUnit = 256;
    private const double Edge = 8.0;

    private static readonly (double Value, double Slope)[] Table = [.. Enumerable.Range(0, (2 * (int)Edge * StepsAUnit) + 2)
        .Select(i => (i / (double)StepsAUnit) - Edge)
        .Select(x => (Below(x), Math.Exp(-x * x / 2.0) / 2.5066282746310002 / StepsAUnit))];

    /// <summary>The chance of a standard normal number at most x.</summary>
    public static double Below(double x)
    {
        var a = Math.Abs(x);
        if (!(a <= 37.0))
        {
            return x > 0.0 ? 1.0 : 0.0;
        }

        var tail = Math.Exp(-a * a / 2.0);
        if (a < 7.07106781186547)
        {
            var above = ((((((((((((0.0352624965998911 * a) + 0.700383064443688) * a) + 6.37396220353165) * a) + 33.912866078383) * a) + 112.079291497871) * a)
                + 221.213596169931) * a) + 220.206867912376);
            var below = (((((((((((((0.0883883476483184 * a) + 1.75566716318264) * a) + 16.064177579207) * a) + 86.7807322029461) * a) + 296.564248779674) * a)
                + 637.333633378831) * a) + 793.826512519948) * a) + 440.413735824752;
            tail *= above / below;
        }
        else
        {
            tail /= (a + (1.0 / (a + (2.0 / (a + (3.0 / (a + (4.0 / (a + 0.65))))))))) * 2.506628274631;
        }

        return x > 0.0 ? 1.0 - tail : tail;
    }

    /// <summary>The same to about 1e-12, in a fraction of the time: for sums, not for the far tails.</summary>
    public static double Near(double x)
    {
        var at = (x + Edge) * StepsAUnit;
        if (!(at >= 0.0))
        {
            return 0.0;
        }

        if (at >= 2.0 * Edge * StepsAUnit)
        {
            return 1.0;
        }

        var i = (int)at;
        var t = at - i;
        var ((from, rise), (to, end)) = (Table[i], Table[i + 1]);
        var gap = to - from;
        return from + (t * (rise + (t * ((3.0 * gap) - (2.0 * rise) - end + (t * (rise + end - (2.0 * gap)))))));
    }

    /// <summary>The chance of a standard normal number from one to another, exact in both tails.</summary>
    public static double Between(double least, double most) =>
        least > 0.0 ? Math.Max(0.0, Below(-least) - Below(-most)) : Math.Max(0.0, Below(most) - Below(least));
}
