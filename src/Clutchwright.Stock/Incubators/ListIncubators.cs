using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Incubators;

/// <summary>Which incubators are there, what was read off each last, and which clutches are in it?</summary>
public sealed class ListIncubators(Book book)
{
    /// <returns>Those in use first, each by its name.</returns>
    public Task<Outcome<IReadOnlyList<IncubatorLine>>> RunAsync(CancellationToken cancellation) =>
        book.ReadAsync(async db =>
        {
            var incubators = await db.Incubators.AsNoTracking().ToListAsync(cancellation);
            var inside = await InsideAsync(db, cancellation);
            var lines = new List<IncubatorLine>();
            foreach (var incubator in incubators.OrderBy(i => i.RetiredAt is not null).ThenBy(i => i.Name, StringComparer.OrdinalIgnoreCase))
            {
                var readings = db.Readings.AsNoTracking().Where(r => r.IncubatorId == incubator.IncubatorId && r.WithdrawnAt == null);
                lines.Add(new IncubatorLine(
                    incubator,
                    await readings.OrderByDescending(r => r.TakenAt).FirstOrDefaultAsync(cancellation),
                    await readings.CountAsync(cancellation),
                    [.. inside[incubator.IncubatorId]]));
            }

            return Outcome.Of<IReadOnlyList<IncubatorLine>>(lines);
        });

    private static async Task<ILookup<IncubatorId, ClutchInside>> InsideAsync(StockContext db, CancellationToken cancellation)
    {
        var clutches = await db.Clutches.AsNoTracking()
            .Where(c => c.IncubatorId != null && c.BinnedAt == null && c.Hatched == null)
            .Join(db.Animals, c => c.DamId, a => a.AnimalId, (c, a) => new { Clutch = c, a.Tag })
            .ToListAsync(cancellation);
        var ids = clutches.Select(c => c.Clutch.ClutchId.Value).ToArray();
        var changes = ids.Length == 0 ? [] : await db.Changes.AsNoTracking()
            .Where(c => ids.Contains(c.RecordId))
            .Join(db.Deeds, c => c.DeedId, d => d.DeedId, (c, d) => new ClutchChange(c.RecordId, d.DeedId, d.When, c.After))
            .ToListAsync(cancellation);
        var changesOf = changes.ToLookup(c => c.Record);
        return clutches
            .OrderBy(c => c.Clutch.Laid.Latest).ThenBy(c => c.Clutch.Tag, StringComparer.Ordinal)
            .ToLookup(c => c.Clutch.IncubatorId!.Value, c => new ClutchInside(c.Clutch, c.Tag, PutIn(c.Clutch, changesOf[c.Clutch.ClutchId.Value])));
    }

    /// <summary>When the deed was done since which every state of the clutch names the incubator it is in.</summary>
    private static DateTime? PutIn(Clutch clutch, IEnumerable<ClutchChange> changes)
    {
        DateTime? since = null;
        foreach (var change in changes.OrderByDescending(c => c.Deed.Number))
        {
            if (change.After is null || Snapshots.Read<ClutchSnapshot>(change.After).Incubator != clutch.IncubatorId!.Value.Value)
            {
                return since;
            }

            since = change.When;
        }

        // It has been there in every state it had: since it was written down.
        return null;
    }

    private sealed record ClutchChange(Guid Record, DeedId Deed, DateTime When, string? After);
}
