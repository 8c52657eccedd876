using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Incubators;

/// <summary>Writes down what was read off an incubator that is in use.</summary>
public sealed class RecordReading(Book book)
{
    // Clocks of two machines differ a little.
    internal static readonly TimeSpan Ahead = TimeSpan.FromMinutes(5);

    /// <returns>The reading; <see cref="IncubatorProblem.Refused"/> with everything that is wrong.</returns>
    public Task<Outcome<Reading>> RunAsync(IncubatorId incubator, ReadingEntry entry, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<Reading>(
            async db =>
            {
                var found = await db.Incubators.SingleOrDefaultAsync(i => i.IncubatorId == incubator && i.RetiredAt == null, cancellation);
                if (found is null)
                {
                    return new IncubatorProblem.NotFound(string.Empty);
                }

                var problems = Reading.WhyNot(entry, book.Now + Ahead).ToList();
                if (await db.Readings.AnyAsync(r => r.IncubatorId == incubator && r.TakenAt == entry.TakenAt && r.WithdrawnAt == null, cancellation))
                {
                    problems.Add(new IncubatorProblem.ReadAlready(entry.TakenAt));
                }

                if (problems.Count > 0)
                {
                    return new IncubatorProblem.Refused(problems);
                }

                var reading = new Reading(ReadingId.New(), incubator, entry);
                db.Readings.Add(reading);
                await db.RecordAsync(who, $"Read of incubator {found}: {reading}", book.Now, cancellation);
                return reading;
            },
            cancellation);
    }
}
