using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Incubators;

/// <summary>What was read off an incubator?</summary>
public sealed class ListReadings(Book book)
{
    /// <param name="incubator">The incubator.</param>
    /// <param name="from">From this instant on (UTC); null: from the first.</param>
    /// <param name="to">To this instant (UTC); null: to the last.</param>
    /// <param name="cancellation">Stops the question.</param>
    /// <returns>The earliest first; those taken back are left out.</returns>
    public Task<Outcome<IReadOnlyList<Reading>>> RunAsync(IncubatorId incubator, DateTime? from, DateTime? to, CancellationToken cancellation) =>
        book.ReadAsync(async db =>
        {
            var asked = db.Readings.AsNoTracking().Where(r => r.IncubatorId == incubator && r.WithdrawnAt == null);
            asked = from is { } first ? asked.Where(r => r.TakenAt >= first) : asked;
            asked = to is { } last ? asked.Where(r => r.TakenAt <= last) : asked;
            return Outcome.Of<IReadOnlyList<Reading>>(await asked.OrderBy(r => r.TakenAt).ToListAsync(cancellation));
        });
}
