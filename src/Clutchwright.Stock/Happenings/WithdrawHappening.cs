using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Happenings;

/// <summary>Takes back what was written down. It stays in the history and can be brought back by undoing this.</summary>
/// <remarks>Mass and status of the animal are what they would be without it.</remarks>
public sealed class WithdrawHappening(Book book)
{
    public Task<Outcome<Happening>> RunAsync(HappeningId happening, string who, CancellationToken cancellation) =>
        book.WriteAsync<Happening>(
            async db =>
            {
                var found = await db.Happenings.SingleOrDefaultAsync(h => h.HappeningId == happening, cancellation);
                if (found is null)
                {
                    return new HappeningProblem.NotFound(happening);
                }

                if (found.WithdrawnAt is not null)
                {
                    return new HappeningProblem.AlreadyWithdrawn(happening);
                }

                var subject = await db.Animals.SingleAsync(a => a.AnimalId == found.AnimalId, cancellation);
                await HappeningTraces.TakeAwayAsync(db, subject, found, cancellation);
                found.Withdraw(book.Now);
                await db.RecordAsync(who, $"Took back of {subject.Tag}: {found}", book.Now, cancellation);
                return found;
            },
            cancellation);
}
