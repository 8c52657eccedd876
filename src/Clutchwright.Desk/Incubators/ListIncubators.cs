using System.Globalization;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Incubators;

namespace Clutchwright.Desk.Incubators;

/// <summary>Which incubators are there, what was read off each last, and what is in it?</summary>
public sealed class ListIncubators
{
    /// <summary>With eggs in it an incubator is looked at every day: common practice, no source.</summary>
    private static readonly TimeSpan LongestSilence = TimeSpan.FromHours(36);

    private readonly OpenBook _book;
    private readonly TemperatureSetting _setting;
    private readonly TimeProvider _clock;

    internal ListIncubators(OpenBook book, TemperatureSetting setting, TimeProvider clock) => (_book, _setting, _clock) = (book, setting, clock);

    /// <summary>Lists them, those in use first, each by its name.</summary>
    public async Task<IReadOnlyList<IncubatorWords>> RunAsync(CancellationToken cancel)
    {
        var lines = (await new Stock.Incubators.ListIncubators(_book.Book).RunAsync(cancel)).Expect();
        var unit = lines.Count == 0 ? TemperatureUnit.Celsius : await _setting.UnitAsync(cancel);
        return [.. lines.Select(line => Words(line, unit))];
    }

    /// <summary>Finds one by its name, whatever the case; also one that is out of use.</summary>
    public async Task<Answer<IncubatorWords>> FindAsync(string name, CancellationToken cancel)
    {
        var all = await RunAsync(cancel);
        return all.FirstOrDefault(i => string.Equals(i.Name, name.Trim(), StringComparison.OrdinalIgnoreCase)) is { } found
            ? found
            : new AskedWrongly("incubator", $"There is no incubator \"{name.Trim()}\".", DidYouMean: NearWords.Of(name.Trim(), all.Select(i => i.Name)));
    }

    internal static ReadingWords Words(Reading reading) => new(reading.ReadingId.Value, new(reading.TakenAt), reading.Celsius, reading.HumidityPercent, reading.Text);

    private IncubatorWords Words(IncubatorLine line, TemperatureUnit unit)
    {
        var incubator = line.Incubator;
        var limits = new IncubatorLimits(incubator.LowestCelsius, incubator.HighestCelsius, incubator.LowestHumidityPercent, incubator.HighestHumidityPercent);
        return new(
            incubator.IncubatorId.Value,
            incubator.Version,
            incubator.Name,
            limits,
            incubator.Notes,
            incubator.RetiredAt is not null,
            line.Last is { } last ? Words(last) : null,
            line.Readings,
            [.. line.Clutches.Select(c => new ClutchInIncubator(
                c.Clutch.Tag,
                c.Dam,
                c.Clutch.GoodEggs,
                c.Clutch.Laid.ToText(),
                c.PutIn is { } put ? DateOnly.FromDateTime(TimeZoneInfo.ConvertTimeFromUtc(put, _clock.LocalTimeZone)) : c.Clutch.Laid.Latest))],
            [.. incubator.RetiredAt is null ? Remarks(line, limits, unit) : []]);
    }

    private IEnumerable<string> Remarks(IncubatorLine line, IncubatorLimits limits, TemperatureUnit unit)
    {
        if (line.Last is not { } last)
        {
            if (line.Clutches.Count > 0)
            {
                yield return "Eggs are in it, and no reading is written down.";
            }

            yield break;
        }

        var silence = _clock.GetUtcNow().UtcDateTime - last.TakenAt;
        if (line.Clutches.Count > 0 && silence > LongestSilence)
        {
            var local = TimeZoneInfo.ConvertTimeFromUtc(last.TakenAt, _clock.LocalTimeZone);
            yield return string.Create(CultureInfo.InvariantCulture, $"No reading since {local:yyyy-MM-dd HH:mm}, {DurationText.Of(silence)} ago.");
        }

        if (last.Celsius is { } celsius && limits.IsLeftBy(celsius, null))
        {
            var isLow = celsius < limits.LowestCelsius;
            yield return $"{TemperatureText.Of(celsius, unit)} at the last reading, {(isLow ? "below" : "above")} its {TemperatureText.Of((isLow ? limits.LowestCelsius : limits.HighestCelsius)!.Value, unit)}.";
        }

        if (last.HumidityPercent is { } humidity && limits.IsLeftBy(null, humidity))
        {
            var isLow = humidity < limits.LowestHumidityPercent;
            yield return $"Humidity {TemperatureText.Humidity(humidity)} at the last reading, {(isLow ? "below" : "above")} its {TemperatureText.Humidity((isLow ? limits.LowestHumidityPercent : limits.HighestHumidityPercent)!.Value)}.";
        }
    }
}
