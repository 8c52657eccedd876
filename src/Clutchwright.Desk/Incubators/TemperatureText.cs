using System.Globalization;

namespace Clutchwright.Desk.Incubators;

/// <summary>Temperatures as a keeper reads and writes them.</summary>
public static class TemperatureText
{
    /// <summary>The sign of a unit: <c>°C</c> or <c>°F</c>.</summary>
    public static string Sign(TemperatureUnit unit) => unit == TemperatureUnit.Fahrenheit ? "°F" : "°C";

    /// <summary>Degrees Celsius in a unit.</summary>
    public static double In(double celsius, TemperatureUnit unit) => unit == TemperatureUnit.Fahrenheit ? (celsius * 9.0 / 5.0) + 32.0 : celsius;

    /// <summary>A temperature with its sign, to a tenth: <c>31.5 °C</c>, <c>88.7 °F</c>.</summary>
    public static string Of(double celsius, TemperatureUnit unit) => $"{Number(celsius, unit)} {Sign(unit)}";

    /// <summary>The number alone, to a tenth, as a form takes it.</summary>
    public static string Number(double celsius, TemperatureUnit unit) =>
        Math.Round(In(celsius, unit), 1, MidpointRounding.AwayFromZero).ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>Relative humidity: <c>92 %</c>.</summary>
    public static string Humidity(double percent) => $"{percent.ToString("0.#", CultureInfo.InvariantCulture)} %";

    /// <summary>Reads a temperature: <c>31.5</c>, <c>31,5 °C</c>, <c>88.7 F</c>. A sign goes before the unit of the keeper.</summary>
    /// <returns>Degrees Celsius, rounded to a thousandth; <c>null</c>: it is no number.</returns>
    public static double? Read(string text, TemperatureUnit unit)
    {
        var bare = text.Trim().ToUpperInvariant();
        if (bare.EndsWith('C') || bare.EndsWith('F'))
        {
            unit = bare[^1] == 'F' ? TemperatureUnit.Fahrenheit : TemperatureUnit.Celsius;
            bare = bare[..^1].TrimEnd();
        }

        if (Number(bare.TrimEnd('°', 'º')) is not { } number)
        {
            return null;
        }

        return Math.Round(unit == TemperatureUnit.Fahrenheit ? (number - 32.0) * 5.0 / 9.0 : number, 3, MidpointRounding.AwayFromZero);
    }

    /// <summary>Reads relative humidity: <c>92</c>, <c>92,5 %</c>; <c>null</c>: it is no number.</summary>
    public static double? ReadHumidity(string text) => Number(text.Trim().TrimEnd('%'));

    private static double? Number(string text) =>
        double.TryParse(text.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
        && double.IsFinite(number)
            ? number
            : null;
}
