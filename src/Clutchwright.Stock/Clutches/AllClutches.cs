using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Clutches;

/// <summary>Every clutch out of the bin, as it is recorded.</summary>
public sealed class AllClutches(Book book)
{
    /// <returns>In the order in which they were entered.</returns>
    public Task<Outcome<IReadOnlyList<Clutch>>> RunAsync(CancellationToken cancellation) =>
        book.ReadAsync(async db => Outcome.Of<IReadOnlyList<Clutch>>(
            await db.Clutches.AsNoTracking().Where(c => c.BinnedAt == null).OrderBy(c => c.ClutchId).ToListAsync(cancellation)));

    /// <summary>The same as the book had them right after a deed.</summary>
    /// <param name="deed">The deed; the default stands for the time before the first.</param>
    /// <param name="cancellation">Stops the question.</param>
    public Task<Outcome<IReadOnlyList<Clutch>>> AfterAsync(DeedId deed, CancellationToken cancellation) =>
        book.ReadAsync(async db =>
        {
            var changes = await db.Changes.AsNoTracking()
                .Where(c => c.Kind == RecordKind.Clutch && c.DeedId > deed)
                .OrderBy(c => c.DeedId).ThenBy(c => c.Number)
                .Select(c => new { c.RecordId, c.Before })
                .ToListAsync(cancellation);
            var clutches = await db.Clutches.AsNoTracking().ToDictionaryAsync(c => c.ClutchId.Value, cancellation);

            // Of each record the first change since then tells how it was.
            foreach (var change in changes.DistinctBy(c => c.RecordId))
            {
                clutches.Remove(change.RecordId);
                if (change.Before is not null)
                {
                    clutches.Add(change.RecordId, new(Snapshots.Read<ClutchSnapshot>(change.Before)));
                }
            }

            return Outcome.Of<IReadOnlyList<Clutch>>([.. clutches.Values.Where(c => c.BinnedAt is null).OrderBy(c => c.ClutchId.Value)]);
        });
}
