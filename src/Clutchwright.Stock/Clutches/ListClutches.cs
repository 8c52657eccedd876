using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Clutches;

/// <summary>Which clutches are in the book, and what became of them?</summary>
public sealed class ListClutches(Book book)
{
    // Of so many only what is theirs is asked for; of more, what belongs to any clutch.
    private const int Few = 200;

    /// <summary>Every clutch out of the bin, or every one in it.</summary>
    /// <returns>The one laid last first.</returns>
    public Task<Outcome<IReadOnlyList<ClutchLine>>> RunAsync(bool binned, CancellationToken cancellation) =>
        book.ReadAsync(async db => Outcome.Of(await LinesAsync(db, db.Clutches.Where(c => binned == (c.BinnedAt != null)), cancellation)));

    /// <summary>Those out of the bin that may not be over: not hatched yet, or with eggs that no animal and no loss accounts for.</summary>
    /// <returns>The one laid last first. Young that were only counted are not taken off here: of those clutches some are over.</returns>
    public Task<Outcome<IReadOnlyList<ClutchLine>>> OpenAsync(CancellationToken cancellation) =>
        book.ReadAsync(async db => Outcome.Of(await LinesAsync(
            db,
            db.Clutches.Where(c => c.BinnedAt == null && (c.Hatched == null || (c.GoodEggs != null
                && c.GoodEggs > db.Animals.Count(a => a.ClutchId == c.ClutchId && a.BinnedAt == null)
                    + db.Happenings.Where(h => h.ClutchId == c.ClutchId && h.Kind == HappeningKind.EggsLost && h.WithdrawnAt == null).Sum(h => h.Amount ?? 0.0)))),
            cancellation)));

    /// <summary>The clutches of one animal, as a dam or as a possible sire.</summary>
    /// <returns>The one laid last first.</returns>
    public Task<Outcome<IReadOnlyList<ClutchLine>>> OfParentAsync(AnimalId parent, CancellationToken cancellation)
    {
        var id = parent.Value.ToString();
        return book.ReadAsync(async db => Outcome.Of(await LinesAsync(
            db, db.Clutches.Where(c => c.BinnedAt == null && (c.DamId == parent || c.SiresJson.Contains(id))), cancellation)));
    }

    /// <summary>One clutch, by its id or by its tag; one in the bin by its id only.</summary>
    /// <returns>The clutch, or <see cref="ClutchProblem.NotFound"/>.</returns>
    public Task<Outcome<ClutchLine>> FindAsync(ClutchId? clutch, string tag, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(tag);
        var key = Tags.Key(tag);
        return book.ReadAsync<ClutchLine>(async db =>
        {
            var lines = await LinesAsync(db, clutch is { } id ? db.Clutches.Where(c => c.ClutchId == id) : db.Clutches.Where(c => c.TagKey == key && c.BinnedAt == null), cancellation);
            return lines.Count == 0 ? new ClutchProblem.NotFound(tag.Trim()) : lines[0];
        });
    }

    private static async Task<IReadOnlyList<ClutchLine>> LinesAsync(StockContext db, IQueryable<Clutch> asked, CancellationToken cancellation)
    {
        var clutches = await asked.AsNoTracking().ToListAsync(cancellation);
        var isFew = clutches.Count <= Few;
        ClutchId[] few = [.. isFew ? clutches.Select(c => c.ClutchId) : []];
        ClutchId?[] optional = [.. few.Select(id => (ClutchId?)id)];
        var parents = await TagsAsync(db, clutches, cancellation);
        var incubators = await db.Incubators.AsNoTracking().ToDictionaryAsync(i => i.IncubatorId, i => i.Name, cancellation);
        var young = (await db.Animals.Where(a => a.BinnedAt == null && (isFew ? optional.Contains(a.ClutchId) : a.ClutchId != null))
                .OrderBy(a => a.TagOrder).Select(ListAnimals.ToLine).AsNoTracking().ToListAsync(cancellation))
            .ToLookup(l => l.ClutchId!.Value);
        var told = (await db.Happenings.AsNoTracking()
                .Where(h => h.WithdrawnAt == null && (h.Kind == HappeningKind.EggsLost || h.Kind == HappeningKind.Pipped) && (isFew ? optional.Contains(h.ClutchId) : h.ClutchId != null))
                .ToListAsync(cancellation))
            .ToLookup(h => h.ClutchId!.Value);
        return [.. clutches
            .OrderByDescending(c => c.Laid.Latest).ThenByDescending(c => c.ClutchId.Value)
            .Select(c => new ClutchLine(
                c,
                parents.GetValueOrDefault(c.DamId) ?? "?",
                [.. c.Sires.Select(s => parents.GetValueOrDefault(s) ?? "?").Order(StringComparer.Ordinal)],
                c.IncubatorId is { } incubator ? incubators.GetValueOrDefault(incubator) : null,
                (int)told[c.ClutchId].Where(h => h.Kind == HappeningKind.EggsLost).Sum(h => h.Amount ?? 0.0),
                told[c.ClutchId].Where(h => h.Kind == HappeningKind.Pipped).OrderBy(h => h.Day).FirstOrDefault()?.When,
                [.. young[c.ClutchId]]))];
    }

    private static async Task<Dictionary<AnimalId, string>> TagsAsync(StockContext db, List<Clutch> clutches, CancellationToken cancellation)
    {
        var tags = new Dictionary<AnimalId, string>();
        foreach (var ids in clutches.SelectMany(c => c.Sires.Append(c.DamId)).Distinct().Chunk(500))
        {
            foreach (var animal in await db.Animals.AsNoTracking().Where(a => ids.Contains(a.AnimalId)).Select(a => new { a.AnimalId, a.Tag }).ToListAsync(cancellation))
            {
                tags.Add(animal.AnimalId, animal.Tag);
            }
        }

        return tags;
    }
}
