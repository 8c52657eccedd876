using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Incubators;

/// <summary>How warm was it in an incubator, day by day?</summary>
public sealed class DailyWarmth(Book book)
{
    /// <param name="incubator">The incubator.</param>
    /// <param name="cancellation">Stops the question.</param>
    /// <returns>By day in UTC the mean of what was read that day, in degrees Celsius; days on which no temperature was read are left out.</returns>
    public Task<Outcome<IReadOnlyDictionary<DateOnly, double>>> RunAsync(IncubatorId incubator, CancellationToken cancellation) =>
        book.ReadAsync(async db =>
        {
            var days = new Dictionary<DateOnly, (double Sum, int Count)>();
            var read = db.Readings.AsNoTracking().Where(r => r.IncubatorId == incubator && r.WithdrawnAt == null && r.Celsius != null)
                .Select(r => new { r.TakenAt, r.Celsius });

            // A logger writes hundreds a day: they are summed as they come.
            await foreach (var reading in read.AsAsyncEnumerable().WithCancellation(cancellation))
            {
                var day = DateOnly.FromDateTime(reading.TakenAt);
                var (sum, count) = days.GetValueOrDefault(day);
                days[day] = (sum + reading.Celsius!.Value, count + 1);
            }

            return Outcome.Of<IReadOnlyDictionary<DateOnly, double>>(days.ToDictionary(d => d.Key, d => d.Value.Sum / d.Value.Count));
        });
}
