using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Incubators;

/// <summary>How was an incubator over a stretch of time?</summary>
public sealed class ShowIncubator
{
    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;
    private readonly ListIncubators _incubators;
    private readonly TemperatureSetting _setting;
    private readonly TimeProvider _clock;

    internal ShowIncubator(OpenBook book, OpenCatalogue catalogue, ListIncubators incubators, TemperatureSetting setting, TimeProvider clock) =>
        (_book, _catalogue, _incubators, _setting, _clock) = (book, catalogue, incubators, setting, clock);

    /// <summary>Shows it.</summary>
    /// <param name="name">Its name, whatever the case.</param>
    /// <param name="days">Over how many days up to now; <c>null</c>: over all of its readings.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<Answer<IncubatorAnswer>> RunAsync(string name, int? days, CancellationToken cancel)
    {
        var found = await _incubators.FindAsync(name, cancel);
        if (found.Value is not { } incubator)
        {
            return found.Problems.ToArray();
        }

        DateTime? from = days is { } back ? _clock.GetUtcNow().UtcDateTime.AddDays(-back) : null;
        var readings = (await new Stock.Incubators.ListReadings(_book.Book).RunAsync(new(incubator.Id), from, null, cancel)).Expect();
        var biology = _catalogue.Catalogue.Biology.Find("incubation-temperature-celsius");
        return new IncubatorAnswer(
            incubator,
            [.. readings.Select(ListIncubators.Words)],
            Of([.. readings.Where(r => r.Celsius is not null).Select(r => new CurvePoint(r.TakenAt, r.Celsius!.Value))], incubator.Limits.LowestCelsius, incubator.Limits.HighestCelsius),
            Of([.. readings.Where(r => r.HumidityPercent is not null).Select(r => new CurvePoint(r.TakenAt, r.HumidityPercent!.Value))], incubator.Limits.LowestHumidityPercent, incubator.Limits.HighestHumidityPercent),
            from is { } first ? new DateTimeOffset(first) : null,
            await _setting.UnitAsync(cancel),
            biology is { Least: { } least, Most: { } most } ? (least, most) : null);
    }

    private static Curve? Of(CurvePoint[] points, double? lowest, double? highest) =>
        points.Length == 0 ? null
        : new(points, lowest, highest, lowest is null && highest is null ? null : TimeOutside.Of(points, lowest, highest, Curve.LongestStep));
}
