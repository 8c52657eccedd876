namespace Clutchwright.Desk.Incubators;

/// <summary>An incubator, as it is listed.</summary>
/// <param name="Id">For writing of it.</param>
/// <param name="Version">For noticing that someone else changed it meanwhile.</param>
/// <param name="Name">Its name.</param>
/// <param name="Limits">Between what it is to stay.</param>
/// <param name="Notes">The keeper's notes.</param>
/// <param name="IsRetired">Whether it is out of use.</param>
/// <param name="Last">Its latest reading; <c>null</c>: none.</param>
/// <param name="Readings">How many readings stand.</param>
/// <param name="Clutches">The clutches in it whose young have not hatched.</param>
/// <param name="Remarks">What to look at: out of its limits, or not read for long with eggs in it.</param>
public sealed record IncubatorWords(
    Guid Id,
    Guid Version,
    string Name,
    IncubatorLimits Limits,
    string Notes,
    bool IsRetired,
    ReadingWords? Last,
    int Readings,
    IReadOnlyList<ClutchInIncubator> Clutches,
    IReadOnlyList<string> Remarks);

/// <summary>Between what an incubator is to stay; a bound is <c>null</c> where none is set.</summary>
/// <param name="LowestCelsius">The lowest temperature.</param>
/// <param name="HighestCelsius">The highest temperature.</param>
/// <param name="LowestHumidityPercent">The lowest relative humidity, 0 to 100.</param>
/// <param name="HighestHumidityPercent">The highest relative humidity, 0 to 100.</param>
public sealed record IncubatorLimits(double? LowestCelsius, double? HighestCelsius, double? LowestHumidityPercent, double? HighestHumidityPercent)
{
    /// <summary>Whether a reading is outside one of them.</summary>
    public bool IsLeftBy(double? celsius, double? humidityPercent) =>
        celsius < LowestCelsius || celsius > HighestCelsius || humidityPercent < LowestHumidityPercent || humidityPercent > HighestHumidityPercent;
}

/// <summary>A reading.</summary>
/// <param name="Id">For taking it back.</param>
/// <param name="TakenAt">When, UTC.</param>
/// <param name="Celsius">Degrees Celsius; <c>null</c>: not read.</param>
/// <param name="HumidityPercent">Relative humidity; <c>null</c>: not read.</param>
/// <param name="Text">What else was said.</param>
public sealed record ReadingWords(Guid Id, DateTimeOffset TakenAt, double? Celsius, double? HumidityPercent, string Text);

/// <summary>A clutch in an incubator.</summary>
/// <param name="Tag">The clutch.</param>
/// <param name="Dam">Its dam.</param>
/// <param name="Eggs">Good eggs laid; <c>null</c>: not counted.</param>
/// <param name="Laid">When it was laid, as the keeper put it.</param>
/// <param name="Since">Since which day it is there.</param>
public sealed record ClutchInIncubator(string Tag, string Dam, int? Eggs, string Laid, DateOnly Since);

/// <summary>An incubator, as a person writes it; what is empty is not set. Temperatures in the keeper's unit, or with a sign.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Lowest">The lowest temperature.</param>
/// <param name="Highest">The highest temperature.</param>
/// <param name="LowestHumidity">The lowest relative humidity in percent.</param>
/// <param name="HighestHumidity">The highest relative humidity in percent.</param>
/// <param name="Notes">Anything else.</param>
public sealed record IncubatorForm(string Name, string? Lowest, string? Highest, string? LowestHumidity, string? HighestHumidity, string? Notes);

/// <summary>A reading, as a person writes it. Temperature in the keeper's unit, or with a sign.</summary>
/// <param name="Temperature">The temperature; empty: not read.</param>
/// <param name="Humidity">Relative humidity in percent; empty: not read.</param>
/// <param name="When">A date and time of this place, <c>2026-05-01 14:05</c>; empty: now.</param>
/// <param name="Text">What else is to be said.</param>
public sealed record ReadingForm(string? Temperature, string? Humidity, string? When, string? Text);
