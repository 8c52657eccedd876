using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Happenings;

/// <summary>Takes back what was written down. It stays in the history and can be brought back by undoing this.</summary>
/// <remarks>The mass of the animal stays as it was written last; undoing the weighing itself takes that back too.</remarks>
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

                var tag = await db.Animals.Where(a => a.AnimalId == found.AnimalId).Select(a => a.Tag).SingleAsync(cancellation);
                found.Withdraw(book.Now);
                await db.RecordAsync(who, $"Took back of {tag}: {found}", book.Now, cancellation);
                return found;
            },
            cancellation);
}
