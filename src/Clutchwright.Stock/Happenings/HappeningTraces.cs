using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Happenings;

/// <summary>What something that happened left on the record of its animal.</summary>
internal static class HappeningTraces
{
    /// <summary>Brings mass and status of an animal to what they would be had this not been written, in the context only.</summary>
    public static async Task TakeAwayAsync(StockContext db, Animal animal, Happening happening, CancellationToken cancellation)
    {
        if (happening.Kind == HappeningKind.Weighed && animal.MassGrams == happening.Amount)
        {
            var other = await db.Happenings.AsNoTracking()
                .Where(h => h.AnimalId == animal.AnimalId && h.Kind == HappeningKind.Weighed && h.WithdrawnAt == null && h.HappeningId != happening.HappeningId)
                .OrderByDescending(h => h.Day).ThenByDescending(h => h.HappeningId)
                .FirstOrDefaultAsync(cancellation);
            animal.Weigh(other is not null ? other.Amount : (await BeforeAsync(db, animal, happening, cancellation))?.MassGrams);
        }

        if (HappeningRules.StatusAfter(happening.Kind) == animal.Status && await BeforeAsync(db, animal, happening, cancellation) is { } before)
        {
            animal.Become(before.Status);
        }
    }

    /// <summary>The animal before the deed that wrote it; null: that deed did not change it.</summary>
    private static async Task<AnimalSnapshot?> BeforeAsync(StockContext db, Animal animal, Happening happening, CancellationToken cancellation)
    {
        var written = await db.Changes.AsNoTracking()
            .Where(c => c.RecordId == happening.HappeningId.Value)
            .OrderBy(c => c.DeedId)
            .Select(c => c.DeedId)
            .FirstOrDefaultAsync(cancellation);
        var before = await db.Changes.AsNoTracking()
            .Where(c => c.DeedId == written && c.RecordId == animal.AnimalId.Value)
            .Select(c => c.Before)
            .FirstOrDefaultAsync(cancellation);
        return before is null ? null : Snapshots.Read<AnimalSnapshot>(before);
    }
}
