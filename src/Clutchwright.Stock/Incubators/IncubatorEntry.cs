namespace Clutchwright.Stock.Incubators;

/// <summary>What a keeper enters of an incubator, with the limits that its readings are watched against.</summary>
public sealed record IncubatorEntry
{
    public required string Name { get; init; }

    public double? LowestCelsius { get; init; }

    public double? HighestCelsius { get; init; }

    /// <summary>Relative humidity, 0 to 100.</summary>
    public double? LowestHumidityPercent { get; init; }

    /// <summary>Relative humidity, 0 to 100.</summary>
    public double? HighestHumidityPercent { get; init; }

    public string Notes { get; init; } = "";
}
