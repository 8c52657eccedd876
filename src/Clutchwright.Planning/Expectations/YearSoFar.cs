namespace Clutchwright.Planning.Expectations;

/// <summary>What has been seen of a female's season by a day.</summary>
/// <param name="Female">The female, as in the records.</param>
/// <param name="Today">The day up to which is told; what is not told has not been seen.</param>
public sealed record YearSoFar(string Female, int Today)
{
    /// <summary>Gets the first pairing; <c>null</c>: not recorded.</summary>
    public DaySpan? Paired { get; init; }

    /// <summary>Gets the last day on which she was seen to mate, which is taken not to be after ovulation; <c>null</c>: not recorded.</summary>
    public int? LastLock { get; init; }

    /// <summary>Gets her ovulation; <c>null</c>: not seen.</summary>
    public DaySpan? Ovulation { get; init; }

    /// <summary>Gets her pre-lay shed; <c>null</c>: not seen.</summary>
    public DaySpan? PreLayShed { get; init; }

    /// <summary>Gets the laying; <c>null</c>: she has not laid. Eggs are never missed.</summary>
    public DaySpan? Eggs { get; init; }

    /// <summary>Gets when the first egg was pipped; <c>null</c>: not yet, or not recorded.</summary>
    public DaySpan? Pip { get; init; }

    /// <summary>Gets how many times as long the eggs take at the temperature they are kept at as at the usual one; above 0.</summary>
    public double IncubationPace { get; init; } = 1.0;

    /// <summary>Gets the standard deviation of the logarithm of <see cref="IncubationPace"/>.</summary>
    public double IncubationPaceSd { get; init; }
}

/// <summary>A step that is due.</summary>
/// <param name="Step">Which.</param>
/// <param name="When">Its day, with chances; none is before today. <c>null</c>: it has been waited for so long that no day is expected any more.</param>
/// <param name="StillOpen">The chance that it has not happened by today if all is well, in [0, 1]: 1 while it is too early, small when it is
/// overdue.</param>
/// <param name="From">The steps already seen that it is reckoned from, the nearest last.</param>
public sealed record DueStep(YearStep Step, DayChances? When, double StillOpen, IReadOnlyList<YearStep> From);
