namespace Clutchwright.Desk.Incubators;

/// <summary>An incubator over a stretch of time.</summary>
/// <param name="Incubator">The incubator.</param>
/// <param name="Readings">Its readings in that time, the earliest first.</param>
/// <param name="Temperature">What they say of the temperature; <c>null</c>: none was read.</param>
/// <param name="Humidity">What they say of the humidity; <c>null</c>: none was read.</param>
/// <param name="From">The first instant asked for, UTC; <c>null</c>: from the first reading.</param>
/// <param name="Unit">In what the keeper reads temperatures.</param>
/// <param name="Advised">What the species' biology says of the incubation temperature in degrees Celsius; <c>null</c>: nothing.</param>
public sealed record IncubatorAnswer(
    IncubatorWords Incubator,
    IReadOnlyList<ReadingWords> Readings,
    Curve? Temperature,
    Curve? Humidity,
    DateTimeOffset? From,
    TemperatureUnit Unit,
    (double Least, double Most)? Advised);

/// <summary>One figure over time.</summary>
/// <param name="Points">When and how much, the earliest first.</param>
/// <param name="Lowest">The lowest limit; <c>null</c>: none.</param>
/// <param name="Highest">The highest limit; <c>null</c>: none.</param>
/// <param name="Time">The time inside and outside the limits; <c>null</c>: no limit is set.</param>
public sealed record Curve(IReadOnlyList<CurvePoint> Points, double? Lowest, double? Highest, TimeOutside? Time)
{
    /// <summary>Gets the longest stretch between two readings over which the curve is drawn and reckoned.</summary>
    public static TimeSpan LongestStep { get; } = TimeSpan.FromHours(26);

    /// <summary>Gets the least of the readings.</summary>
    public double Least => Points.Min(p => p.Value);

    /// <summary>Gets the most of the readings.</summary>
    public double Most => Points.Max(p => p.Value);
}

/// <summary>One figure at one instant.</summary>
/// <param name="At">UTC.</param>
/// <param name="Value">In the figure's unit.</param>
public readonly record struct CurvePoint(DateTime At, double Value);
