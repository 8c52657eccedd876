using System.Collections.Concurrent;

namespace Clutchwright.Planning.Expectations;

/// <summary>What is believed of an interval after the keeper's records, and what it lets expect for each female.</summary>
/// <remarks>
/// The logarithm of the days of a female is normal around her own middle, her middle normal around that of all females; the share of the
/// variance that lies between females is one of eight values from 1/16 to 15/16, smaller ones being likelier (in proportion to 1 less the share).
/// Where all records are known to the day the mean is integrated in closed form for each share and variance (normal-inverse-gamma) and the
/// variance numerically; otherwise mean and variance are integrated numerically, with records in doubt as intervals and running ones as
/// lower limits. Sums of chances are then off by less than 0.002. Safe to call from many threads. Source: docs/references.md [Murphy2007].
/// </remarks>
public sealed class IntervalBelief
{
    private const int Shares = 8;
    private const int Variances = 33;
    private const int Middles = 25;
    private const double Reach = 6.0;

    // Longer than eight years nothing takes.
    private const int MostDays = 3_000;

    // Chebyshev's nine places from -1 to 1, and how much each counts at each of the middles.
    private static readonly double[] Nodes = [.. Enumerable.Range(0, 9).Select(i => -Math.Cos(Math.PI * i / 8.0))];
    private static readonly double[][] Through = [.. Enumerable.Range(0, Middles).Select(m => Lagrange((m / (double)(Middles / 2)) - 1.0))];

    // The logarithms of the ends of days.
    private static readonly double[] LogDays = [.. Enumerable.Range(0, MostDays + 1).Select(d => Math.Log(d + 0.5))];

    private static readonly IntervalGroup Nothing = new([]);

    private readonly Dictionary<string, IntervalGroup> _females;
    private readonly List<Row> _rows = [];
    private readonly Lazy<DayChances> _usual;
    private readonly ConcurrentDictionary<(string? Female, double Pace, double PaceSd), DayChances> _known = [];

    private IntervalBelief(IntervalPrior prior, IReadOnlyList<IntervalRecord> records)
    {
        Prior = prior;
        Completed = records.Count(r => !r.IsRunning);
        _females = records.GroupBy(r => r.Female, StringComparer.Ordinal).ToDictionary(g => g.Key, g => new IntervalGroup(g), StringComparer.Ordinal);

        // In an order that names have no part in: relabelled females give the same sums to the last digit.
        var all = _females.Values.OrderBy(g => g.Mean).ThenBy(g => g.Count).ThenBy(g => g.Squares).ThenBy(g => g.Rough.Sum()).ToArray();
        var censored = all.Where(g => g.IsRough || g.IsRunning).ToArray();
        for (var s = 0; s < Shares; s++)
        {
            AddRows((s + 0.5) / Shares, all, censored);
        }

        var best = _rows.Max(r => r.Best);
        _rows.RemoveAll(r => r.Best < best - 23.0);
        _usual = new(() => Reckon(Nothing, 1.0, 0.0));
    }

    /// <summary>Gets what it began with.</summary>
    public IntervalPrior Prior { get; }

    /// <summary>Gets how many intervals it has learnt from that have ended.</summary>
    public int Completed { get; }

    /// <summary>Learns from records.</summary>
    /// <param name="prior">What is known before.</param>
    /// <param name="records">The records, in any order; none: what is expected is the prior.</param>
    /// <remarks>Cost: O(records) where all are known to the day; else about 6,600 times the females with records that are not.</remarks>
    public static IntervalBelief From(IntervalPrior prior, IReadOnlyList<IntervalRecord> records)
    {
        ArgumentNullException.ThrowIfNull(prior);
        ArgumentNullException.ThrowIfNull(records);
        return new(prior, records);
    }

    /// <summary>The days that the next interval of a female takes.</summary>
    /// <param name="female">The female; <c>null</c>, or one without records: as any other.</param>
    /// <param name="pace">How many times as long it takes under its circumstances as under those of the prior; above 0.</param>
    /// <param name="paceSd">The standard deviation of the logarithm of <paramref name="pace"/>; 0: it is sure.</param>
    /// <returns>A chance for each number of days. Her own running intervals have no part in it: that they have not ended is for the caller to say,
    /// by <see cref="DayChances.From"/>.</returns>
    /// <remarks>Cost: about 300 times the days of its range, once; it is remembered.</remarks>
    public DayChances Expect(string? female, double pace = 1.0, double paceSd = 0.0)
    {
        if (!(pace > 0.0) || !double.IsFinite(pace) || !(paceSd >= 0.0))
        {
            throw new ArgumentOutOfRangeException(nameof(pace), pace, "A pace is above 0, and its spread not below.");
        }

        var hers = female is null ? null : _females.GetValueOrDefault(female);
        return hers is null && pace == 1.0 && paceSd == 0.0
            ? _usual.Value
            : _known.GetOrAdd((hers is null ? null : female, pace, paceSd), _ => Reckon(hers ?? Nothing, pace, paceSd));
    }

    /// <summary>How much of the variance lies between females, as believed; in (0, 1).</summary>
    public double ShareBetweenFemales()
    {
        var best = _rows.Max(r => r.Best);
        var (sum, total) = (0.0, 0.0);
        foreach (var row in _rows)
        {
            var weight = row.LogWeights.Sum(w => Math.Exp(w - best));
            sum += weight * row.Share;
            total += weight;
        }

        return sum / total;
    }

    private void AddRows(double share, IntervalGroup[] all, IntervalGroup[] censored)
    {
        var known = Fit(share, all, g => g.Count, g => g.Mean, g => g.Squares);
        var net = censored.Any(g => g.IsRough)
            ? Fit(share, all, g => g.Count + g.Rough.Count, g => ((g.Count * g.Mean) + g.Rough.Sum()) / (g.Count + g.Rough.Count), Squares)
            : known;

        // The density of the logarithm of the variance falls to e^-25 of its peak at these two ends; the net of a rough one is laid wider.
        var shape = censored.Length > 0 ? net.Shape / 2.0 : net.Shape;
        var peak = Math.Log(net.Scale / net.Shape);
        var (low, high) = (peak - Solve(s => shape * (Math.Exp(s) - 1.0 - s)), peak + Solve(s => shape * (s - 1.0 + Math.Exp(-s))));
        var step = (high - low) / (Variances - 1);
        for (var v = 0; v < Variances; v++)
        {
            var t = low + (v * step);
            var variance = Math.Exp(t);
            var weight = (-known.Shape * t) - (known.Scale / variance) + known.LogFactor + Math.Log(1.0 - share) + Math.Log(step);
            if (censored.Length == 0)
            {
                _rows.Add(new(share, variance, [known.Middle], [weight], variance / known.Weight));
                continue;
            }

            var (middles, weights) = (new double[Middles], new double[Middles]);
            var (sd, gap) = (Math.Sqrt(variance / known.Weight), Math.Sqrt(variance / net.Weight) * 2.0 * Reach / (Middles - 1));
            var chances = LogChances(share, variance, censored, net.Middle, gap * (Middles / 2));
            for (var m = 0; m < Middles; m++)
            {
                middles[m] = net.Middle + ((m - (Middles / 2)) * gap);
                var z = (middles[m] - known.Middle) / sd;
                weights[m] = weight - (z * z / 2.0) + Math.Log(gap / sd / 2.5066282746310002) + chances[m];
            }

            if (weights.Any(double.IsFinite))
            {
                _rows.Add(new(share, variance, middles, weights, 0.0));
            }
        }

        static double Squares(IntervalGroup g)
        {
            var mean = ((g.Count * g.Mean) + g.Rough.Sum()) / (g.Count + g.Rough.Count);
            return g.Squares + (g.Count * (g.Mean - mean) * (g.Mean - mean)) + g.Rough.Sum(r => (r - mean) * (r - mean));
        }
    }

    // What the records that are not known to the day say of each middle. The logarithm is nearly a parabola: the polynomial through nine places is
    // off by less than one in ten thousand; where one of them is impossible every middle is asked.
    private static double[] LogChances(double share, double variance, IntervalGroup[] censored, double centre, double reach)
    {
        var places = Array.ConvertAll(Nodes, n => LogChance(centre + (n * reach)));
        if (!places.All(double.IsFinite))
        {
            return [.. Enumerable.Range(0, Middles).Select(m => LogChance(centre + (((m / (double)(Middles / 2)) - 1.0) * reach)))];
        }

        return Array.ConvertAll(Through, row => row.Zip(places, (share, place) => share * place).Sum());

        double LogChance(double middle)
        {
            var (log, chance) = (0.0, 1.0);
            foreach (var group in censored)
            {
                chance *= group.Given(share, middle, variance, withRunning: true).Chance;
                if (chance < 1e-150)
                {
                    log += Math.Log(chance);
                    chance = 1.0;
                }
            }

            return log + Math.Log(chance);
        }
    }

    // Lagrange's polynomials of the nodes, at each middle.
    private static double[] Lagrange(double x) => [.. Nodes.Select((node, i) => Nodes.Where((_, j) => j != i).Aggregate(1.0, (product, other) => product * (x - other) / (node - other)))];

    // Murphy (2007), section 6, with the records of a female tied to each other: their covariance is (1 - share) I + share J times the variance.
    private Normality Fit(double share, IntervalGroup[] all, Func<IntervalGroup, int> count, Func<IntervalGroup, double> mean, Func<IntervalGroup, double> squares)
    {
        var (weight, sum, square, records, logDet) = (Prior.Weight, Prior.Weight * Prior.Middle, 0.0, 0, 0.0);
        foreach (var group in all.Where(g => count(g) > 0))
        {
            var (n, own) = (count(group), count(group) / (1.0 - share + (count(group) * share)));
            weight += own;
            sum += own * mean(group);
            square += squares(group) / (1.0 - share);
            records += n;
            logDet += ((n - 1) * Math.Log(1.0 - share)) + Math.Log(1.0 - share + (n * share));
        }

        var middle = sum / weight;
        square += Prior.Weight * (Prior.Middle - middle) * (Prior.Middle - middle);
        foreach (var group in all.Where(g => count(g) > 0))
        {
            square += count(group) / (1.0 - share + (count(group) * share)) * (mean(group) - middle) * (mean(group) - middle);
        }

        return new(weight, middle, Prior.Shape + (records / 2.0), Prior.Scale + (square / 2.0), (Math.Log(Prior.Weight / weight) - logDet) / 2.0);
    }

    private DayChances Reckon(IntervalGroup hers, double pace, double paceSd)
    {
        var parts = new List<(double LogWeight, double Mean, double Sd)>();
        foreach (var row in _rows)
        {
            if (!hers.IsRunning && !hers.IsRough)
            {
                // Her middle is a straight line of that of all, and its variance the same everywhere.
                var pulled = (1.0 - row.Share) / (1.0 - row.Share + (hers.Count * row.Share));
                var (_, line, around) = hers.Given(row.Share, row.MiddleMean, row.Variance, withRunning: false);
                var whole = around + (pulled * pulled * (row.MiddleSpread + row.MiddleVariance)) + ((1.0 - row.Share) * row.Variance) + (paceSd * paceSd);
                parts.Add((row.LogTotal, line + Math.Log(pace), Math.Sqrt(whole)));
                continue;
            }

            // Where her own running interval was counted it is taken out again.
            var logs = hers.IsRunning ? [.. row.LogWeights.Select((w, m) => w - Chance(row, m, true) + (hers.IsRough ? Chance(row, m, false) : 0.0))] : row.LogWeights;
            var best = logs.Max();
            var (total, mean, square) = (0.0, 0.0, 0.0);
            for (var m = 0; m < logs.Count; m++)
            {
                if (logs[m] < best - 30.0 || double.IsNaN(logs[m]))
                {
                    continue;
                }

                var weight = Math.Exp(logs[m] - best);
                var (_, at, spread) = hers.Given(row.Share, row.Middles[m], row.Variance, withRunning: false);
                total += weight;
                mean += weight * at;
                square += weight * (spread + (at * at));
            }

            mean /= total;
            var pull = (1.0 - row.Share) / (1.0 - row.Share + (hers.Count * row.Share));
            var variance = Math.Max(0.0, (square / total) - (mean * mean)) + (pull * pull * row.MiddleVariance) + ((1.0 - row.Share) * row.Variance) + (paceSd * paceSd);
            parts.Add((best + Math.Log(total), mean + Math.Log(pace), Math.Sqrt(variance)));
        }

        return Days(parts);

        double Chance(Row row, int m, bool withRunning) => Math.Log(hers.Given(row.Share, row.Middles[m], row.Variance, withRunning).Chance);
    }

    private static DayChances Days(List<(double LogWeight, double Mean, double Sd)> parts)
    {
        var best = parts.Max(p => p.LogWeight);
        var days = new double[MostDays + 1];
        foreach (var (log, mean, sd) in parts.Where(p => p.LogWeight > best - 16.0))
        {
            // What little weighs little need not be followed into its tails: what is left out of all is below one in a hundred million.
            var (weight, reach) = (Math.Exp(log - best), Math.Sqrt(2.0 * (20.0 + log - best)));
            var from = (int)Math.Min(MostDays, Math.Max(0.0, Math.Exp(mean - (reach * sd)) - 1.0));
            var to = (int)Math.Min(MostDays, Math.Exp(mean + (reach * sd)) + 1.0);
            var below = from == 0 ? 0.0 : NormalCurve.Near((LogDays[from - 1] - mean) / sd);
            for (var d = from; d <= to; d++)
            {
                var next = NormalCurve.Near((LogDays[d] - mean) / sd);
                days[d] += weight * (next - below);
                below = next;
            }
        }

        return DayChances.Of(0, days)!;
    }

    private static double Solve(Func<double, double> rising)
    {
        var (low, high) = (0.0, 1.0);
        while (rising(high) < 25.0)
        {
            high *= 2.0;
        }

        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2.0;
            (low, high) = rising(middle) < 25.0 ? (middle, high) : (low, middle);
        }

        return high;
    }

    /// <summary>A share and a variance, with points for the mean and the logarithms of their weights. Where there is one point the mean is normal
    /// around it with <c>MiddleVariance</c>.</summary>
    private sealed record Row
    {
        public Row(double share, double variance, IReadOnlyList<double> middles, IReadOnlyList<double> logWeights, double middleVariance)
        {
            (Share, Variance, Middles, LogWeights, MiddleVariance) = (share, variance, middles, logWeights, middleVariance);
            Best = logWeights.Where(w => !double.IsNaN(w)).DefaultIfEmpty(double.NegativeInfinity).Max();
            var (total, mean, square) = (0.0, 0.0, 0.0);
            for (var m = 0; m < logWeights.Count; m++)
            {
                if (logWeights[m] >= Best - 30.0)
                {
                    var (weight, off) = (Math.Exp(logWeights[m] - Best), middles[m] - middles[0]);
                    total += weight;
                    mean += weight * off;
                    square += weight * off * off;
                }
            }

            mean /= total;
            (LogTotal, MiddleMean, MiddleSpread) = (Best + Math.Log(total), middles[0] + mean, Math.Max(0.0, (square / total) - (mean * mean)));
        }

        public double Share { get; }

        public double Variance { get; }

        public IReadOnlyList<double> Middles { get; }

        public IReadOnlyList<double> LogWeights { get; }

        public double MiddleVariance { get; }

        public double Best { get; }

        /// <summary>The logarithm of the weights together.</summary>
        public double LogTotal { get; }

        /// <summary>The mean of the points by their weights.</summary>
        public double MiddleMean { get; }

        /// <summary>The variance of the points around it.</summary>
        public double MiddleSpread { get; }
    }

    private readonly record struct Normality(double Weight, double Middle, double Shape, double Scale, double LogFactor);
}
