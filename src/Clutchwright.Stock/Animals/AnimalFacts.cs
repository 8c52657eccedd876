using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Animals;

/// <summary>As much of an animal as the rules between animals need.</summary>
internal sealed record AnimalFacts(
    AnimalId Id, string Tag, Sex? Sex, DateRange? Hatched, AnimalId? Sire, AnimalId? Dam, IReadOnlyList<AnimalId> PossibleSires)
{
    public static AnimalFacts Of(AnimalId id, AnimalEntry entry) =>
        new(id, entry.Tag.Trim(), entry.Sex, entry.Hatched, entry.SireId, entry.DamId, entry.PossibleSires);

    public static AnimalFacts Of(Animal animal) =>
        new(animal.AnimalId, animal.Tag, animal.Sex, animal.Hatched, animal.SireId, animal.DamId, animal.PossibleSireIds);

    /// <summary>Every animal that is not in the bin.</summary>
    public static async Task<Dictionary<AnimalId, AnimalFacts>> LoadAsync(StockContext db, CancellationToken cancellation)
    {
        var possible = (await db.PossibleSires.AsNoTracking().ToListAsync(cancellation))
            .ToLookup(p => p.OffspringId, p => p.SireId);
        var animals = await db.Animals.AsNoTracking()
            .Where(a => a.BinnedAt == null)
            .Select(a => new { a.AnimalId, a.Tag, a.Sex, a.Hatched, a.SireId, a.DamId })
            .ToListAsync(cancellation);
        return animals.ToDictionary(
            a => a.AnimalId,
            a => new AnimalFacts(a.AnimalId, a.Tag, a.Sex, a.Hatched, a.SireId, a.DamId, [.. possible[a.AnimalId]]));
    }
}
