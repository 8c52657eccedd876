using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Import;

/// <summary>What a file of the log is held against.</summary>
/// <param name="ByTag">The animals out of the bin, by the keys of their ids.</param>
/// <param name="Clutches">The clutches out of the bin, by the keys of their ids.</param>
/// <param name="Log">What stands of the animals that the file names.</param>
internal sealed record LogInBook(IReadOnlyDictionary<string, Animal> ByTag, IReadOnlyDictionary<string, Clutch> Clutches, IReadOnlyList<Happening> Log)
{
    public static async Task<LogInBook> LoadAsync(StockContext db, LogFile file, CancellationToken cancellation)
    {
        var animals = await db.Animals.AsNoTracking().IgnoreAutoIncludes().Where(a => a.BinnedAt == null).ToDictionaryAsync(a => a.TagKey, StringComparer.Ordinal, cancellation);
        var clutches = await db.Clutches.AsNoTracking().Where(c => c.BinnedAt == null).ToDictionaryAsync(c => c.TagKey, StringComparer.Ordinal, cancellation);
        var named = file.Rows.Select(r => animals.GetValueOrDefault(Tags.Key(r.Animal))?.AnimalId).OfType<AnimalId>().Distinct();
        var log = new List<Happening>();
        foreach (var ids in named.Chunk(CurrentRecords.IdsAtOnce))
        {
            log.AddRange(await db.Happenings.AsNoTracking().Where(h => h.WithdrawnAt == null && ids.Contains(h.AnimalId)).ToListAsync(cancellation));
        }

        return new(animals, clutches, log);
    }
}
