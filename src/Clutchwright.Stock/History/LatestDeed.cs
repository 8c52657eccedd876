using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.History;

/// <summary>Since when is what is recorded of the animals, or read of incubators, as it is?</summary>
public sealed class LatestDeed(Book book)
{
    /// <returns>The last deed that changed an animal, what is said of one, or a clutch; the default if there was none. What is planned does not count.</returns>
    /// <remarks>With its time: a book that was restored may go on under the same numbers with other deeds.</remarks>
    public Task<Outcome<(DeedId DeedId, DateTime When)>> OfAnimalsAsync(CancellationToken cancellation) =>
        OfAsync([RecordKind.Animal, RecordKind.Statement, RecordKind.Clutch], cancellation);

    /// <returns>The last deed that changed a reading of an incubator; the default if there was none.</returns>
    public Task<Outcome<(DeedId DeedId, DateTime When)>> OfReadingsAsync(CancellationToken cancellation) => OfAsync([RecordKind.Reading], cancellation);

    private Task<Outcome<(DeedId DeedId, DateTime When)>> OfAsync(RecordKind[] kinds, CancellationToken cancellation) =>
        book.ReadAsync(async db =>
        {
            var last = await db.Changes.Where(c => kinds.Contains(c.Kind)).MaxAsync(c => (DeedId?)c.DeedId, cancellation);
            return Outcome.Of(last is { } deed
                ? (deed, await db.Deeds.Where(d => d.DeedId == deed).Select(d => d.When).SingleAsync(cancellation))
                : default((DeedId, DateTime)));
        });
}
