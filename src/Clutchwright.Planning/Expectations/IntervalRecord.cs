namespace Clutchwright.Planning.Expectations;

/// <summary>One interval that the keeper recorded, or that is running.</summary>
public sealed record IntervalRecord
{
    private IntervalRecord(string female, double least, double most) => (Female, LeastDays, MostDays) = (female, least, most);

    /// <summary>Gets whose it is: records of one female are alike.</summary>
    public string Female { get; }

    /// <summary>Gets the least it can have been, in days.</summary>
    public double LeastDays { get; }

    /// <summary>Gets the most it can have been, in days; infinity while it runs.</summary>
    public double MostDays { get; }

    /// <summary>Gets the chance that a running interval ends at all and is then written down, in (0, 1].</summary>
    public double WillEnd { get; private init; } = 1.0;

    /// <summary>Gets how many times as long it takes under its circumstances as under those of the prior; 1: the same. Above 0.</summary>
    public double Pace { get; init; } = 1.0;

    /// <summary>Gets whether it is known to the day.</summary>
    internal bool IsExact => LeastDays == MostDays;

    /// <summary>Gets whether it has not ended.</summary>
    internal bool IsRunning => double.IsPositiveInfinity(MostDays);

    /// <summary>An interval known to the day.</summary>
    /// <param name="female">Whose.</param>
    /// <param name="days">Days; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">No days.</exception>
    public static IntervalRecord Exact(string female, double days) => new(female, Above(days, nameof(days)), days);

    /// <summary>An interval between dates of which one is in doubt.</summary>
    /// <param name="female">Whose.</param>
    /// <param name="least">The least it can have been, in days; 0 or more.</param>
    /// <param name="most">The most; above <paramref name="least"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such interval.</exception>
    public static IntervalRecord Between(string female, double least, double most) => least >= 0.0 && most > least && double.IsFinite(most)
        ? new(female, least, most)
        : throw new ArgumentOutOfRangeException(nameof(most), most, "It must be above the least, which is 0 or more.");

    /// <summary>An interval that has not ended.</summary>
    /// <param name="female">Whose.</param>
    /// <param name="days">Days that have passed without its end; 0 or more.</param>
    /// <param name="willEnd">The chance that it ends at all and is then written down, in (0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">No such interval, or no such chance.</exception>
    public static IntervalRecord Running(string female, double days, double willEnd) => days >= 0.0 && double.IsFinite(days) && willEnd is > 0.0 and <= 1.0
        ? new(female, days, double.PositiveInfinity) { WillEnd = willEnd }
        : throw new ArgumentOutOfRangeException(nameof(days), days, "Days are 0 or more, and the chance is above 0 and at most 1.");

    private static double Above(double days, string name) =>
        days > 0.0 && double.IsFinite(days) ? days : throw new ArgumentOutOfRangeException(name, days, "An interval known to the day has days.");
}
