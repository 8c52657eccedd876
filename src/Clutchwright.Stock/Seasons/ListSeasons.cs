using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Seasons;

/// <summary>Which seasons does the book keep?</summary>
public sealed class ListSeasons(Book book)
{
    /// <returns>The latest first.</returns>
    public Task<Outcome<IReadOnlyList<KeptSeason>>> RunAsync(CancellationToken cancellation) =>
        book.ReadAsync(async db => Outcome.Of<IReadOnlyList<KeptSeason>>(
            await db.Seasons.AsNoTracking().OrderByDescending(s => s.Year).ToListAsync(cancellation)));
}
