using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Incubators;

/// <summary>Takes back a reading. It stays in the history and can be brought back by undoing this.</summary>
public sealed class WithdrawReading(Book book)
{
    /// <returns>The reading; <see cref="IncubatorProblem.ReadingNotFound"/> if it is not in the book or was taken back.</returns>
    public Task<Outcome<Reading>> RunAsync(ReadingId reading, string who, CancellationToken cancellation) =>
        book.WriteAsync<Reading>(
            async db =>
            {
                var found = await db.Readings.SingleOrDefaultAsync(r => r.ReadingId == reading && r.WithdrawnAt == null, cancellation);
                if (found is null)
                {
                    return new IncubatorProblem.ReadingNotFound();
                }

                var name = await db.Incubators.Where(i => i.IncubatorId == found.IncubatorId).Select(i => i.Name).SingleAsync(cancellation);
                found.Withdraw(book.Now);
                await db.RecordAsync(who, $"Took back of incubator {name}: {found}", book.Now, cancellation);
                return found;
            },
            cancellation);
}
