using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Settings;

namespace Clutchwright.Desk.Incubators;

/// <summary>In what are temperatures read, and the deed that sets it.</summary>
public sealed class TemperatureSetting
{
    private const string Name = "temperature-unit";
    private const string Fahrenheit = "\"F\"";

    private readonly OpenBook _book;
    private readonly ListDeeds _deeds;

    internal TemperatureSetting(OpenBook book, ListDeeds deeds) => (_book, _deeds) = (book, deeds);

    /// <summary>The unit of the keeper; degrees Celsius where nothing is set.</summary>
    public async Task<TemperatureUnit> UnitAsync(CancellationToken cancel)
    {
        var kept = (await new FindSetting(_book.Book).RunAsync([Name], cancel)).Expect();
        return kept.TryGetValue(Name, out var value) && value == Fahrenheit ? TemperatureUnit.Fahrenheit : TemperatureUnit.Celsius;
    }

    /// <summary>Sets it. What is in the book stays as it is: degrees Celsius.</summary>
    /// <param name="unit"><c>C</c> or <c>F</c>.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is written.</param>
    public async Task<Answer<DeedLine>> KeepAsync(string unit, string who, CancellationToken cancel)
    {
        var sign = unit.Trim().TrimStart('°').ToUpperInvariant();
        if (sign is not ("C" or "F"))
        {
            return new AskedWrongly("unit", $"\"{unit.Trim()}\" is no unit of temperature. Write C or F.");
        }

        var done = await new KeepSetting(_book.Book).RunAsync(Name, $"\"{sign}\"", $"Temperatures are read in °{sign}", who, cancel);
        return done.IsDone ? (await _deeds.RunAsync(null, 1, cancel))[0] : Refusals.Of("unit", done.Problem);
    }
}
