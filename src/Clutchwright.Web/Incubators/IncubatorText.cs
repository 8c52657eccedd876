using System.Globalization;
using Clutchwright.Desk.Incubators;

namespace Clutchwright.Web.Incubators;

/// <summary>Puts readings and limits into words.</summary>
internal static class IncubatorText
{
    public static string Reading(ReadingWords reading, TemperatureUnit unit) => string.Join(", ", new[]
    {
        reading.Celsius is { } celsius ? TemperatureText.Of(celsius, unit) : null,
        reading.HumidityPercent is { } percent ? TemperatureText.Humidity(percent) : null,
    }.OfType<string>());

    /// <summary>Between what it is to stay; <c>null</c>: no limit is set.</summary>
    public static string? Limits(IncubatorLimits limits, TemperatureUnit unit)
    {
        string[] parts =
        [
            .. new[]
            {
                Between(limits.LowestCelsius, limits.HighestCelsius, v => TemperatureText.Number(v, unit), TemperatureText.Sign(unit)),
                Between(limits.LowestHumidityPercent, limits.HighestHumidityPercent, v => v.ToString("0.#", CultureInfo.InvariantCulture), "%"),
            }.OfType<string>(),
        ];
        return parts.Length == 0 ? null : string.Join(", ", parts);
    }

    public static string Machine(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The curve in the keeper's unit.</summary>
    public static Curve In(Curve curve, TemperatureUnit unit) => new(
        [.. curve.Points.Select(p => p with { Value = TemperatureText.In(p.Value, unit) })],
        curve.Lowest is { } lowest ? TemperatureText.In(lowest, unit) : null,
        curve.Highest is { } highest ? TemperatureText.In(highest, unit) : null,
        curve.Time);

    private static string? Between(double? lowest, double? highest, Func<double, string> number, string unit) => (lowest, highest) switch
    {
        (null, null) => null,
        ({ } low, null) => $"{number(low)} {unit} or more",
        (null, { } high) => $"{number(high)} {unit} or less",
        ({ } low, { } high) => $"{number(low)} to {number(high)} {unit}",
    };
}
