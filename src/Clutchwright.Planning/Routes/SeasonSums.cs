namespace Clutchwright.Planning.Routes;

/// <summary>Chances by season of pairings that are tried until they succeed.</summary>
/// <remarks>
/// With R(t) the chance that both parents are ready by season t, independent of each other, and s the chance that one season's clutches hold what
/// is wanted, the chance G(t) that it is there by season t follows G(t) = G(t-1) + (R(t) - G(t-1))·s.
/// </remarks>
internal static class SeasonSums
{
    /// <summary>Fills the chance of having hatched by each season, and gives the tries expected within the horizon.</summary>
    /// <param name="ready">The chance that both parents are ready by each season.</param>
    /// <param name="success">The chance that a season gives it.</param>
    /// <param name="hatched">The chances.</param>
    public static double Until(double[] ready, double success, double[] hatched)
    {
        var got = 0.0;
        var tries = 0.0;
        for (var t = 1; t < hatched.Length; t++)
        {
            var trying = ready[t] - got;
            tries += trying;
            got += trying * success;
            hatched[t] = got;
        }

        return tries;
    }

    /// <summary>Fills the chance that so many have hatched by each season, and gives the tries expected within the horizon.</summary>
    /// <param name="ready">The chance that both parents are ready by each season.</param>
    /// <param name="number">The chance that a season gives none, one, two, …, at least as many entries as are asked for.</param>
    /// <param name="count">How many are asked for, from 1.</param>
    /// <param name="hatched">The chances.</param>
    public static double UntilCount(double[] ready, double[] number, int count, double[] hatched)
    {
        Span<double> waiting = stackalloc double[count];
        waiting.Clear();
        var (got, started, tries) = (0.0, 0.0, 0.0);
        for (var t = 1; t < hatched.Length; t++)
        {
            waiting[0] += ready[t] - started;
            started = ready[t];
            tries += started - got;
            got = started - Wait(waiting, number);
            hatched[t] = got;
        }

        return tries;
    }

    /// <summary>The chance that so many have hatched by the last season.</summary>
    /// <param name="ready">The chance that both parents are ready by each season.</param>
    /// <param name="number">The chance that a season gives none, one, two, …, at least as many entries as are asked for.</param>
    /// <param name="count">How many are asked for, from 1.</param>
    public static double ByLast(ReadOnlySpan<double> ready, double[] number, int count)
    {
        Span<double> waiting = stackalloc double[count];
        waiting.Clear();
        var (left, started) = (0.0, 0.0);
        for (var t = 1; t < ready.Length; t++)
        {
            waiting[0] += ready[t] - started;
            started = ready[t];
            left = Wait(waiting, number);
        }

        return started - left;
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

    /// <summary>Fills when something hatched by a season may be paired.</summary>
    public static void Later(double[] hatched, int seasons, double[] ready)
    {
        for (var t = 1; t < ready.Length; t++)
        {
            ready[t] = t > seasons ? hatched[t - seasons] : 0.0;
        }
    }

    /// <summary>A brother and a sister from one pairing: the chance that both may be paired by each season, and the tries expected.</summary>
    /// <param name="parents">The chance that both parents are ready by each season.</param>
    /// <param name="noBrother">The chance that a season gives no brother.</param>
    /// <param name="noSister">That it gives no sister.</param>
    /// <param name="neither">That it gives neither.</param>
    /// <param name="brotherAge">The seasons until a male breeds.</param>
    /// <param name="sisterAge">The seasons until a female breeds.</param>
    public static (double[] Ready, double Tries) Both(double[] parents, double noBrother, double noSister, double neither, int brotherAge, int sisterAge)
    {
        var last = parents.Length - 1;
        var (none, brother, sister, both) = (new double[last + 1], new double[last + 1], new double[last + 1], new double[last + 1]);
        var tries = 0.0;
        var started = 0.0;
        for (var t = 1; t <= last; t++)
        {
            var ready = parents[t];
            var fresh = none[t - 1] + ready - started;
            started = ready;
            tries += fresh + brother[t - 1] + sister[t - 1];
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

        return (result, tries);
    }

    /// <summary>A chance of failing of one, for several.</summary>
    public static double Power(double fail, int count)
    {
        var power = fail;
        for (var i = 1; i < count; i++)
        {
            power *= fail;
        }

        return power;
    }

    // One season more for those that wait for so many; gives how many still wait.
    private static double Wait(Span<double> waiting, double[] number)
    {
        var left = 0.0;
        for (var j = waiting.Length - 1; j >= 0; j--)
        {
            var sum = 0.0;
            for (var i = 0; i <= j; i++)
            {
                sum += waiting[i] * number[j - i];
            }

            waiting[j] = sum;
            left += sum;
        }

        return left;
    }
}
