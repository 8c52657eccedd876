namespace Clutchwright.Planning.Expectations;

/// <summary>On which day something is, with a chance for each. Days are whole numbers: of an interval from 0, of a calendar
/// <see cref="DateOnly.DayNumber"/>.</summary>
public sealed class DayChances
{
    private readonly double[] _chances;

    private DayChances(int first, double[] chances) => (First, _chances) = (first, chances);

    /// <summary>Gets the first day that has a chance.</summary>
    public int First { get; }

    /// <summary>Gets the last day that has one.</summary>
    public int Last => First + _chances.Length - 1;

    /// <summary>Gets the chances from <see cref="First"/> on; each in [0, 1], together 1 within rounding.</summary>
    public IReadOnlyList<double> Chances => _chances;

    /// <summary>Gets the chance of a day; 0 outside <see cref="First"/> to <see cref="Last"/>.</summary>
    /// <param name="day">The day.</param>
    public double this[int day] => day < First || day > Last ? 0.0 : _chances[day - First];

    /// <summary>Gets the mean, in days.</summary>
    public double Mean
    {
        get
        {
            var sum = 0.0;
            for (var i = 0; i < _chances.Length; i++)
            {
                sum += _chances[i] * (First + i);
            }

            return sum;
        }
    }

    /// <summary>Gets the standard deviation, in days.</summary>
    public double Sd
    {
        get
        {
            var (mean, sum) = (Mean, 0.0);
            for (var i = 0; i < _chances.Length; i++)
            {
                sum += _chances[i] * (First + i - mean) * (First + i - mean);
            }

            return Math.Sqrt(sum);
        }
    }

    /// <summary>Gets the median: the first day by which the chance is a half.</summary>
    public int Median => By(0.5);

    /// <summary>Gets the likeliest day of the middle half; the earlier of two alike. Where days before today were left out the likeliest of all may
    /// be today, with nearly everything after it.</summary>
    public int MostLikely
    {
        get
        {
            var half = Middle(0.5);
            return Enumerable.Range(half.From, half.Length).MaxBy(d => this[d]);
        }
    }

    /// <summary>Makes it from weights, of any positive sum.</summary>
    /// <param name="first">The day of the first weight.</param>
    /// <param name="weights">A weight a day, 0 or more.</param>
    /// <returns>Their shares, without the days of no weight at either end; <c>null</c> if the sum is below 1e-9: then nothing can be told.</returns>
    public static DayChances? Of(int first, IReadOnlyList<double> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        var total = weights.Sum();
        if (!(total > 1e-9))
        {
            return null;
        }

        // The far tails hold less than one in a million and cost as much as the rest.
        var (from, to, cut) = (0, weights.Count - 1, total * 1e-8);
        while (weights[from] <= cut && from < to)
        {
            from++;
        }

        while (weights[to] <= cut && to > from)
        {
            to--;
        }

        var kept = new double[to - from + 1];
        var sum = 0.0;
        for (var i = from; i <= to; i++)
        {
            sum += kept[i - from] = weights[i];
        }

        for (var i = 0; i < kept.Length; i++)
        {
            kept[i] /= sum;
        }

        return new(first + from, kept);
    }

    /// <summary>Every day of a span alike.</summary>
    /// <param name="span">The span.</param>
    public static DayChances Evenly(DaySpan span)
    {
        var chances = new double[span.Length];
        Array.Fill(chances, 1.0 / span.Length);
        return new(span.From, chances);
    }

    /// <summary>The first day by which the chance reaches a share.</summary>
    /// <param name="share">In (0, 1).</param>
    public int By(double share)
    {
        var sum = 0.0;
        for (var i = 0; i < _chances.Length; i++)
        {
            sum += _chances[i];
            if (sum >= share - 1e-12)
            {
                return First + i;
            }
        }

        return Last;
    }

    /// <summary>The middle span that holds a share: as much is left out before as after, and whole days make it hold a little more.</summary>
    /// <param name="share">In (0, 1), such as 0.9.</param>
    public DaySpan Middle(double share) => new(By((1.0 - share) / 2.0), By((1.0 + share) / 2.0));

    /// <summary>The chance that it is on a day or later, in [0, 1].</summary>
    /// <param name="day">The day.</param>
    public double NotBefore(int day)
    {
        var sum = 0.0;
        for (var i = Math.Max(0, day - First); i < _chances.Length; i++)
        {
            sum += _chances[i];
        }

        return Math.Min(1.0, sum);
    }

    /// <summary>The same, knowing that it is on a day or later.</summary>
    /// <param name="day">The day.</param>
    /// <returns>The chances given that; <c>null</c> if it had less than one chance in a billion.</returns>
    public DayChances? From(int day) => Of(First, [.. _chances.Select((c, i) => First + i >= day ? c : 0.0)]);

    /// <summary>The day of something that follows after an interval, if the two are independent.</summary>
    /// <param name="interval">The days in between.</param>
    /// <remarks>Cost: the product of the two numbers of days.</remarks>
    public DayChances Then(DayChances interval)
    {
        ArgumentNullException.ThrowIfNull(interval);
        var sums = new double[_chances.Length + interval._chances.Length - 1];
        for (var i = 0; i < _chances.Length; i++)
        {
            DaySums.Add(sums.AsSpan(i, interval._chances.Length), interval._chances, _chances[i]);
        }

        return Of(First + interval.First, sums)!;
    }
}
