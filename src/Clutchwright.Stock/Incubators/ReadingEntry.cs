namespace Clutchwright.Stock.Incubators;

/// <summary>What was read off an incubator, as it is entered. At least one of the two figures.</summary>
public sealed record ReadingEntry
{
    /// <summary>UTC.</summary>
    public required DateTime TakenAt { get; init; }

    public double? Celsius { get; init; }

    /// <summary>Relative humidity, 0 to 100.</summary>
    public double? HumidityPercent { get; init; }

    public string Text { get; init; } = "";
}
