using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.History;

/// <summary>What was done to the book lately?</summary>
public sealed class ListDeeds(Book book)
{
    /// <param name="most">How many deeds are wanted at most.</param>
    /// <param name="before">Only deeds before this one, to page backwards; null from the latest.</param>
    /// <param name="cancellation">Stops the question.</param>
    /// <returns>The latest first.</returns>
    public Task<Outcome<IReadOnlyList<DeedLine>>> RunAsync(int most, DeedId? before, CancellationToken cancellation)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        return book.ReadAsync(async db =>
        {
            var deeds = before is { } limit ? db.Deeds.Where(d => d.DeedId < limit) : db.Deeds;
            return Outcome.Of(await LinesAsync(db, deeds, most, cancellation));
        });
    }

    internal static async Task<IReadOnlyList<DeedLine>> LinesAsync(
        StockContext db, IQueryable<Deed> deeds, int most, CancellationToken cancellation) =>
        await deeds.OrderByDescending(d => d.DeedId)
            .Take(most)
            .Select(d => new DeedLine(
                d.DeedId,
                d.When,
                d.Who,
                d.Words,
                d.Changes.Count,
                d.Undoes,
                db.Deeds.Where(u => u.Undoes == d.DeedId).Max(u => (DeedId?)u.DeedId)))
            .ToListAsync(cancellation);
}
