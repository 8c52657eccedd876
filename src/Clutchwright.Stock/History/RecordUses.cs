using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.History;

/// <summary>A record that names another.</summary>
/// <param name="Of">The record named.</param>
/// <param name="By">The record that names it.</param>
/// <param name="Words">What that one is called.</param>
internal sealed record RecordUse(Guid Of, Guid By, string Words);

/// <summary>Which records name others?</summary>
internal static class RecordUses
{
    /// <summary>Every record that names one of those which the changes added.</summary>
    public static async Task<IReadOnlyList<RecordUse>> OfAsync(StockContext db, IReadOnlyList<Change> added, CancellationToken cancellation)
    {
        var uses = new List<RecordUse>();
        var byKind = added.ToLookup(c => c.Kind, c => c.RecordId);
        foreach (var ids in byKind[RecordKind.Animal].Chunk(CurrentRecords.IdsAtOnce))
        {
            await AddOfAnimalsAsync(db, uses, [.. ids.Select(id => new AnimalId(id))], cancellation);
        }

        await AddOfListsAsync(db, uses, byKind[RecordKind.Animal].ToHashSet(), cancellation);
        foreach (var ids in byKind[RecordKind.Clutch].Chunk(CurrentRecords.IdsAtOnce))
        {
            ClutchId?[] clutches = [.. ids.Select(id => (ClutchId?)new ClutchId(id))];
            uses.AddRange((await db.Animals.AsNoTracking().IgnoreAutoIncludes().Where(a => clutches.Contains(a.ClutchId)).Select(a => new { a.ClutchId, a.AnimalId, a.Tag }).ToListAsync(cancellation))
                .Select(a => new RecordUse(a.ClutchId!.Value.Value, a.AnimalId.Value, a.Tag)));
            uses.AddRange((await db.Happenings.AsNoTracking().Where(h => clutches.Contains(h.ClutchId)).ToListAsync(cancellation))
                .Select(h => new RecordUse(h.ClutchId!.Value.Value, h.HappeningId.Value, h.ToString())));
        }

        foreach (var ids in byKind[RecordKind.Incubator].Chunk(CurrentRecords.IdsAtOnce))
        {
            IncubatorId?[] optional = [.. ids.Select(id => (IncubatorId?)new IncubatorId(id))];
            IncubatorId[] incubators = [.. ids.Select(id => new IncubatorId(id))];
            uses.AddRange((await db.Clutches.AsNoTracking().Where(c => optional.Contains(c.IncubatorId)).ToListAsync(cancellation))
                .Select(c => new RecordUse(c.IncubatorId!.Value.Value, c.ClutchId.Value, c.ToString())));
            uses.AddRange((await db.Readings.AsNoTracking().Where(r => incubators.Contains(r.IncubatorId)).ToListAsync(cancellation))
                .Select(r => new RecordUse(r.IncubatorId.Value, r.ReadingId.Value, r.ToString())));
        }

        return uses;
    }

    private static async Task AddOfAnimalsAsync(StockContext db, List<RecordUse> uses, AnimalId[] ids, CancellationToken cancellation)
    {
        AnimalId?[] optional = [.. ids.Select(id => (AnimalId?)id)];
        var named = ids.ToHashSet();
        foreach (var young in await db.Animals.AsNoTracking().IgnoreAutoIncludes()
            .Where(a => optional.Contains(a.SireId) || optional.Contains(a.DamId))
            .Select(a => new { a.AnimalId, a.Tag, a.SireId, a.DamId })
            .ToListAsync(cancellation))
        {
            uses.AddRange(new[] { young.SireId, young.DamId }.Where(p => p is { } parent && named.Contains(parent)).Select(p => new RecordUse(p!.Value.Value, young.AnimalId.Value, young.Tag)));
        }

        uses.AddRange((await db.PossibleSires.AsNoTracking().Where(p => ids.Contains(p.SireId))
                .Join(db.Animals, p => p.OffspringId, a => a.AnimalId, (p, a) => new { a.AnimalId, a.Tag, p.SireId }).ToListAsync(cancellation))
            .Select(p => new RecordUse(p.SireId.Value, p.AnimalId.Value, p.Tag)));
        uses.AddRange((await db.Statements.AsNoTracking().Where(s => ids.Contains(s.AnimalId)).ToListAsync(cancellation))
            .Select(s => new RecordUse(s.AnimalId.Value, s.StatementId.Value, s.ToString())));
        foreach (var happening in await db.Happenings.AsNoTracking().Where(h => ids.Contains(h.AnimalId) || optional.Contains(h.MateId)).ToListAsync(cancellation))
        {
            uses.AddRange(new AnimalId?[] { happening.AnimalId, happening.MateId }.Where(a => a is { } animal && named.Contains(animal)).Select(a => new RecordUse(a!.Value.Value, happening.HappeningId.Value, happening.ToString())));
        }

        uses.AddRange((await db.Photos.AsNoTracking().Where(p => ids.Contains(p.AnimalId)).ToListAsync(cancellation))
            .Select(p => new RecordUse(p.AnimalId.Value, p.PhotoId.Value, p.ToString())));
        uses.AddRange((await db.Clutches.AsNoTracking().Where(c => ids.Contains(c.DamId)).ToListAsync(cancellation))
            .Select(c => new RecordUse(c.DamId.Value, c.ClutchId.Value, c.ToString())));
    }

    /// <summary>Sires of clutches and animals of seasons are kept as lists, which no database can be asked for by their members.</summary>
    private static async Task AddOfListsAsync(StockContext db, List<RecordUse> uses, HashSet<Guid> animals, CancellationToken cancellation)
    {
        if (animals.Count == 0)
        {
            return;
        }

        foreach (var clutch in await db.Clutches.AsNoTracking().ToListAsync(cancellation))
        {
            uses.AddRange(clutch.Sires.Where(s => animals.Contains(s.Value)).Select(s => new RecordUse(s.Value, clutch.ClutchId.Value, clutch.ToString())));
        }

        foreach (var season in await db.Seasons.AsNoTracking().ToListAsync(cancellation))
        {
            uses.AddRange(season.Animals.Where(a => animals.Contains(a.Animal.Value)).Select(a => new RecordUse(a.Animal.Value, season.KeptSeasonId.Value, $"the season of {season.Year}")));
        }
    }
}
