using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.History;

/// <summary>Since when is what is recorded of the animals as it is?</summary>
public sealed class LatestDeed(Book book)
{
    /// <returns>The last deed that changed an animal, what is said of one, or a clutch; the default if there was none. What is planned does not count.</returns>
    public Task<Outcome<DeedId>> OfAnimalsAsync(CancellationToken cancellation) =>
        book.ReadAsync(async db => Outcome.Of(
            await db.Changes
                .Where(c => c.Kind == RecordKind.Animal || c.Kind == RecordKind.Statement || c.Kind == RecordKind.Clutch)
                .MaxAsync(c => (DeedId?)c.DeedId, cancellation) ?? default));
}
