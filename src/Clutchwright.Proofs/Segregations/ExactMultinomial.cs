using Clutchwright.Proofs.Distributions;

namespace Clutchwright.Proofs.Segregations;

/// <summary>The exact multinomial test: the chance, under the expected shares, of any outcome no likelier than the one observed.</summary>
/// <remarks>
/// Classes are fixed one after the other. Where the likeliest outcome of the rest is no likelier than the one observed, the whole branch
/// counts; where even the least likely one is likelier, none of it does; the last two classes are two tails of a binomial. Outcomes
/// within 1e-7 of the observed likelihood, relatively, count as just as likely.
/// </remarks>
internal sealed class ExactMultinomial
{
    private const double Tie = 1e-7;

    private readonly int _number;
    private readonly double[] _shares; // largest first
    private readonly double[] _logShares;
    private readonly double[] _logFactorials;
    private readonly double[][] _most; // index class, number left: the largest log weight of the classes from it on
    private readonly double _bound;
    private readonly long _mostBranches;
    private readonly double[]?[] _tails;
    private long _branches;

    private ExactMultinomial(IReadOnlyList<int> observed, double[] shares, long mostBranches)
    {
        var order = Enumerable.Range(0, shares.Length).OrderByDescending(i => shares[i]).ToArray();
        _number = observed.Sum();
        _shares = [.. order.Select(i => shares[i])];
        _logShares = Array.ConvertAll(_shares, Math.Log);
        _logFactorials = LogFactorials(_number);
        _most = new double[_shares.Length][];
        _bound = order.Select((c, i) => Weight(i, observed[c])).Sum() + Tie;
        _mostBranches = mostBranches;
        _tails = new double[_number + 1][];
    }

    /// <summary>The p value.</summary>
    /// <param name="observed">The number in each class; at least one class.</param>
    /// <param name="shares">Above 0, in sum 1.</param>
    /// <param name="settings">When to draw instead.</param>
    public static ExactChance Of(IReadOnlyList<int> observed, double[] shares, ExactSettings settings)
    {
        if (shares.Length == 1 || observed.Sum() == 0)
        {
            return new(1.0, 0.0, 0);
        }

        var test = new ExactMultinomial(observed, shares, settings.MostBranches);
        for (var c = 0; c < shares.Length; c++)
        {
            test._most[c] = test.MostFrom(c);
        }

        return test.Add(0, test._number, 0.0, 1.0, 1.0) is { } value
            ? new(Math.Clamp(value, 0.0, 1.0), 0.0, 0)
            : test.Draw(settings);
    }

    private static double[] LogFactorials(int n)
    {
        var result = new double[n + 1];
        for (var i = 2; i <= n; i++)
        {
            result[i] = result[i - 1] + Math.Log(i);
        }

        return result;
    }

    private double Weight(int c, int count) => (count * _logShares[c]) - _logFactorials[count];

    // The weight is concave in every count, so adding one to the class that gains most is best at every number.
    private double[] MostFrom(int from)
    {
        var counts = new int[_shares.Length];
        var result = new double[_number + 1];
        for (var n = 1; n <= _number; n++)
        {
            var best = from;
            for (var c = from + 1; c < _shares.Length; c++)
            {
                if (_shares[c] * (counts[best] + 1) > _shares[best] * (counts[c] + 1))
                {
                    best = c;
                }
            }

            counts[best]++;
            result[n] = result[n - 1] + _logShares[best] - Math.Log(counts[best]);
        }

        return result;
    }

    // The chance of the outcomes of this branch that count; null past the budget.
    private double? Add(int c, int left, double weight, double chance, double shareLeft)
    {
        if (weight + _most[c][left] <= _bound)
        {
            return chance;
        }

        // All in the rarest class is the least likely outcome.
        if (weight + (left * _logShares[^1]) - _logFactorials[left] > _bound)
        {
            return 0.0;
        }

        if (c == _shares.Length - 2)
        {
            return chance * LastTwo(left, weight);
        }

        if ((_branches += left + 1) > _mostBranches)
        {
            return null;
        }

        var share = Math.Min(1.0, _shares[c] / shareLeft);
        var sum = 0.0;
        for (var n = 0; n <= left; n++)
        {
            var here = chance * BinomialDistribution.Exactly(n, left, share);
            if (here == 0.0)
            {
                continue;
            }

            if (Add(c + 1, left - n, weight + Weight(c, n), here, shareLeft - _shares[c]) is not { } part)
            {
                return null;
            }

            sum += part;
        }

        return sum;
    }

    private double LastTwo(int left, double weight)
    {
        var c = _shares.Length - 2;
        var share = _shares[c] / (_shares[c] + _shares[c + 1]);
        var mode = Math.Min(left, (int)((left + 1) * share));

        bool Counts(int n) => weight + Weight(c, n) + Weight(c + 1, left - n) <= _bound;
        var (low, high) = (-1, mode); // the last below the mode that counts
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = Counts(middle) ? (middle, high) : (low, middle);
        }

        var (below, above) = (mode, left + 1); // the first above the mode that counts
        while (above - below > 1)
        {
            var middle = (below + above) / 2;
            (below, above) = Counts(middle) ? (below, middle) : (middle, above);
        }

        return LowerTail(left, low, share) + LowerTail(left, left - above, 1.0 - share, mirrored: true);
    }

    private double LowerTail(int n, int k, double share, bool mirrored = false)
    {
        if (k < 0)
        {
            return 0.0;
        }

        if (_number > 3000)
        {
            return BinomialDistribution.AtMost(k, n, share);
        }

        // Sums from both ends, one after the other: first from 0 on, then mirrored from n down.
        var tails = _tails[n] ??= Tails(n, mirrored ? 1.0 - share : share);
        return tails[mirrored ? n + 1 + k : k];
    }

    private static double[] Tails(int n, double share)
    {
        var result = new double[2 * (n + 1)];
        var (up, down) = (0.0, 0.0);
        for (var k = 0; k <= n; k++)
        {
            result[k] = up += BinomialDistribution.Exactly(k, n, share);
            result[n + 1 + k] = down += BinomialDistribution.Exactly(n - k, n, share);
        }

        return result;
    }

    private ExactChance Draw(ExactSettings settings)
    {
        var chance = new SplitMix(settings.Seed);
        var counted = 0;
        for (var draw = 0; draw < settings.Draws; draw++)
        {
            var (left, shareLeft, weight) = (_number, 1.0, 0.0);
            for (var c = 0; c < _shares.Length; c++)
            {
                var n = c == _shares.Length - 1 ? left : chance.Binomial(left, Math.Min(1.0, _shares[c] / shareLeft));
                weight += Weight(c, n);
                left -= n;
                shareLeft -= _shares[c];
            }

            counted += weight <= _bound ? 1 : 0;
        }

        // The observed outcome is one of them, so the estimate is never 0.
        var value = (counted + 1.0) / (settings.Draws + 1.0);
        return new(value, Math.Sqrt(value * (1.0 - value) / settings.Draws), settings.Draws);
    }
}
