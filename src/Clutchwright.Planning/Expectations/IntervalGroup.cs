namespace Clutchwright.Planning.Expectations;

/// <summary>The records of one female, on the scale of logarithms: those known to the day as their number, mean and sum of squares around it, the
/// others one by one.</summary>
internal sealed class IntervalGroup
{
    private const int Points = 31;
    private const double Reach = 6.0;

    private readonly List<(double Least, double Most)> _between = [];
    private readonly List<(double Least, double WillEnd)> _running = [];

    public IntervalGroup(IEnumerable<IntervalRecord> records)
    {
        var exact = new List<double>();
        foreach (var record in records.OrderBy(r => r.LeastDays).ThenBy(r => r.MostDays).ThenBy(r => r.Pace))
        {
            var pace = Math.Log(record.Pace);
            if (record.IsExact)
            {
                exact.Add(Math.Log(record.LeastDays) - pace);
            }
            else if (record.IsRunning)
            {
                _running.Add((Math.Log(record.LeastDays) - pace, record.WillEnd));
            }
            else
            {
                _between.Add((Math.Log(record.LeastDays) - pace, Math.Log(record.MostDays) - pace));
                Rough.Add(Math.Log(Math.Max(record.LeastDays, record.MostDays / 4.0) * record.MostDays) / 2.0 - pace);
            }
        }

        Count = exact.Count;
        Mean = Count == 0 ? 0.0 : exact.Average();
        Squares = exact.Sum(y => (y - Mean) * (y - Mean));
    }

    /// <summary>How many are known to the day.</summary>
    public int Count { get; }

    public double Mean { get; }

    public double Squares { get; }

    /// <summary>Where those lie about that are known roughly: only to lay the net of reckoning points.</summary>
    public List<double> Rough { get; } = [];

    public bool IsRunning => _running.Count > 0;

    public bool IsRough => _between.Count > 0;

    /// <summary>What the records that are not known to the day say of a mean and variance of all females.</summary>
    /// <param name="share">The share of the variance that lies between females.</param>
    /// <param name="middle">The mean of all.</param>
    /// <param name="variance">The variance of all.</param>
    /// <param name="withRunning">Whether those that have not ended count.</param>
    /// <returns>Their chance, with the mean and variance of this female's own middle given them and those known to the day.</returns>
    public (double Chance, double Mean, double Variance) Given(double share, double middle, double variance, bool withRunning)
    {
        var q = 1.0 - share + (Count * share);
        var mean = (((1.0 - share) * middle) + (Count * share * Mean)) / q;
        var own = variance * share * (1.0 - share) / q;
        var within = (1.0 - share) * variance;
        var running = withRunning ? _running.Count : 0;
        if (_between.Count + running == 0)
        {
            return (1.0, mean, own);
        }

        if (_between.Count == 0 && running == 1)
        {
            // Only asked for its chance: what has not ended is not used for the female's own middle.
            return (Running(_running[0], mean, Math.Sqrt(own + within)), mean, own);
        }

        var (sum, first, second, spread, sd) = (0.0, 0.0, 0.0, Math.Sqrt(own), Math.Sqrt(within));
        const double step = 2.0 * Reach / (Points - 1);
        for (var i = 0; i < Points; i++)
        {
            var z = (i * step) - Reach;
            var at = mean + (z * spread);
            var chance = Math.Exp(-z * z / 2.0);
            foreach (var (least, most) in _between)
            {
                chance *= Between((least - at) / sd, (most - at) / sd);
            }

            for (var k = 0; k < running; k++)
            {
                chance *= Running(_running[k], at, sd);
            }

            sum += chance;
            first += chance * z;
            second += chance * z * z;
        }

        if (!(sum > 0.0))
        {
            return (0.0, mean, own);
        }

        first /= sum;
        return (sum * step / 2.5066282746310002, mean + (first * spread), own * Math.Max(0.0, (second / sum) - (first * first)));
    }

    private static double Running((double Least, double WillEnd) record, double mean, double sd) =>
        record.WillEnd == 1.0 ? NormalCurve.Below((mean - record.Least) / sd) : 1.0 - (record.WillEnd * NormalCurve.Near((record.Least - mean) / sd));

    // What is no wider or further out than this is exact enough by the table.
    private static double Between(double least, double most) =>
        least > -4.0 && most < 4.0 && most - least > 1e-3 ? NormalCurve.Near(most) - NormalCurve.Near(least) : NormalCurve.Between(least, most);
}
