namespace Clutchwright.Planning.Routes;

/// <summary>Chances by season of pairings that are tried until they succeed.</summary>
/// <remarks>
/// With R(t) the chance that both parents are ready by season t, independent of each other, and s the chance that one season's clutches hold what
/// is wanted, the chance G(t) that it is there by season t follows G(t) = G(t-1) + (R(t) - G(t-1))·s.
/// </remarks>
internal static class SeasonSums
{
    /// <summary>Fills the chance of having hatched by each season, and gives the pairings expected within the horizon.</summary>
    public static double Until(double[] sire, double[] dam, double success, int dams, double[] hatched)
    {
        var got = 0.0;
        var pairings = 0.0;
        for (var t = 1; t < hatched.Length; t++)
        {
            var trying = (sire[t] * dam[t]) - got;
            pairings += trying;
            got += trying * success;
            hatched[t] = got;
        }

        return pairings * dams;
    }

    /// <summary>Fills the chance that so many have hatched by each season, and gives the pairings expected within the horizon.</summary>
    /// <param name="sire">The sire's readiness.</param>
    /// <param name="dam">The dam's readiness.</param>
    /// <param name="number">The chance that a season gives none, one, two, …, at least as many entries as are asked for.</param>
    /// <param name="count">How many are asked for, from 1.</param>
    /// <param name="dams">How many females are paired.</param>
    /// <param name="hatched">The chances.</param>
    public static double UntilCount(double[] sire, double[] dam, double[] number, int count, int dams, double[] hatched)
    {
        Span<double> waiting = stackalloc double[count];
        waiting.Clear();
        var (got, started, pairings) = (0.0, 0.0, 0.0);
        for (var t = 1; t < hatched.Length; t++)
        {
            var ready = sire[t] * dam[t];
            waiting[0] += ready - started;
            started = ready;
            pairings += started - got;
            var left = 0.0;
            for (var j = count - 1; j >= 0; j--)
            {
                var sum = 0.0;
                for (var i = 0; i <= j; i++)
                {
                    sum += waiting[i] * number[j - i];
                }

                waiting[j] = sum;
                left += sum;
            }

            got = started - left;
            hatched[t] = got;
        }

        return pairings * dams;
    }

    /// <summary>How many seasons it takes on average until so many have hatched.</summary>
    /// <param name="number">The chance that a season gives none, one, two, …</param>
    /// <param name="count">How many are asked for, from 1.</param>
    public static double SeasonsFor(double[] number, int count)
    {
        Span<double> left = stackalloc double[count + 1];
        left.Clear();
        for (var lacking = 1; lacking <= count; lacking++)
        {
            var sum = 1.0;
            for (var n = 1; n < lacking; n++)
            {
                sum += number[n] * left[lacking - n];
            }

            left[lacking] = sum / (1.0 - number[0]);
        }

        return left[count];
    }

    /// <summary>When something hatched by a season may be paired.</summary>
    public static double[] Later(double[] hatched, int seasons)
    {
        var ready = new double[hatched.Length];
        for (var t = seasons + 1; t < ready.Length; t++)
        {
            ready[t] = hatched[t - seasons];
        }

        return ready;
    }

    /// <summary>A brother and a sister from one pairing: the chance that both may be paired by each season, and the pairings expected.</summary>
    /// <param name="sire">The sire's readiness.</param>
    /// <param name="dam">The dam's readiness.</param>
    /// <param name="noBrother">The chance that a season gives no brother.</param>
    /// <param name="noSister">That it gives no sister.</param>
    /// <param name="neither">That it gives neither.</param>
    /// <param name="dams">How many females are paired.</param>
    /// <param name="brotherAge">The seasons until a male breeds.</param>
    /// <param name="sisterAge">The seasons until a female breeds.</param>
    public static (double[] Ready, double Pairings) Both(
        double[] sire, double[] dam, double noBrother, double noSister, double neither, int dams, int brotherAge, int sisterAge)
    {
        var last = sire.Length - 1;
        var (none, brother, sister, both) = (new double[last + 1], new double[last + 1], new double[last + 1], new double[last + 1]);
        var pairings = 0.0;
        var started = 0.0;
        for (var t = 1; t <= last; t++)
        {
            var ready = sire[t] * dam[t];
            var fresh = none[t - 1] + ready - started;
            started = ready;
            pairings += fresh + brother[t - 1] + sister[t - 1];
            none[t] = fresh * neither;
            brother[t] = (fresh * (noSister - neither)) + (brother[t - 1] * noSister);
            sister[t] = (fresh * (noBrother - neither)) + (sister[t - 1] * noBrother);
            both[t] = both[t - 1] + (fresh * (1.0 - noBrother - noSister + neither))
                + (brother[t - 1] * (1.0 - noSister)) + (sister[t - 1] * (1.0 - noBrother));
        }

        var result = new double[last + 1];
        for (var t = 1; t <= last; t++)
        {
            var (b, s) = (t - brotherAge, t - sisterAge);
            var early = Math.Min(b, s);
            if (early < 1)
            {
                continue;
            }

            // Both by the earlier of the two seasons, or the one that breeds later by then and the other within the seasons left.
            var waiting = b > s ? sister[early] * (1.0 - Math.Pow(noBrother, b - s))
                : s > b ? brother[early] * (1.0 - Math.Pow(noSister, s - b))
                : 0.0;
            result[t] = both[early] + waiting;
        }

        return (result, pairings * dams);
    }
}
