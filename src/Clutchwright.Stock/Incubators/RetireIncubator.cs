using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Incubators;

/// <summary>Puts an incubator out of use, or back into it. Its readings stay.</summary>
public sealed class RetireIncubator(Book book)
{
    /// <returns>The incubator; <see cref="IncubatorProblem.InUse"/> if eggs whose young have not hatched are in it. Nothing is
    /// written where it was out of use already.</returns>
    public Task<Outcome<Incubator>> RunAsync(IncubatorId incubator, string who, CancellationToken cancellation) =>
        book.WriteAsync<Incubator>(
            async db =>
            {
                var found = await db.Incubators.SingleOrDefaultAsync(i => i.IncubatorId == incubator, cancellation);
                if (found is null)
                {
                    return new IncubatorProblem.NotFound(string.Empty);
                }

                var eggs = await db.Clutches.Where(c => c.IncubatorId == incubator && c.BinnedAt == null && c.Hatched == null)
                    .OrderBy(c => c.TagKey).Select(c => c.Tag).ToListAsync(cancellation);
                if (eggs.Count > 0)
                {
                    return new IncubatorProblem.InUse(found.Name) { Clutches = eggs };
                }

                if (found.RetiredAt is null)
                {
                    found.Retire(book.Now);
                    await db.RecordAsync(who, $"Put incubator {found} out of use", book.Now, cancellation);
                }

                return found;
            },
            cancellation);

    /// <summary>Puts it back into use. Nothing is written where it was in use.</summary>
    public Task<Outcome<Incubator>> BackAsync(IncubatorId incubator, string who, CancellationToken cancellation) =>
        book.WriteAsync<Incubator>(
            async db =>
            {
                var found = await db.Incubators.SingleOrDefaultAsync(i => i.IncubatorId == incubator, cancellation);
                if (found is null)
                {
                    return new IncubatorProblem.NotFound(string.Empty);
                }

                if (found.RetiredAt is not null)
                {
                    found.Retire(null);
                    await db.RecordAsync(who, $"Put incubator {found} back into use", book.Now, cancellation);
                }

                return found;
            },
            cancellation);
}
