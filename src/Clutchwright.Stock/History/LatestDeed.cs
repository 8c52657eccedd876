using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.History;

/// <summary>Since when is what is recorded of the animals as it is?</summary>
public sealed class LatestDeed(Book book)
{
    /// <returns>The last deed that changed an animal or what is said of one; the default if there was none. What is planned does not count.</returns>
    /// <remarks>With its time: a book that was restored may go on under the same numbers with other deeds.</remarks>
    public Task<Outcome<(DeedId DeedId, DateTime When)>> OfAnimalsAsync(CancellationToken cancellation) =>
        book.ReadAsync(async db => Outcome.Of(
            await db.Deeds
                .Where(d => d.Changes.Any(c => c.Kind == RecordKind.Animal || c.Kind == RecordKind.Statement))
                .OrderByDescending(d => d.DeedId)
                .Select(d => new { d.DeedId, d.When })
                .FirstOrDefaultAsync(cancellation) is { } last ? (last.DeedId, last.When) : default));
}
