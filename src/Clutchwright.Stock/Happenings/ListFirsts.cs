using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Happenings;

/// <summary>The first shed and the first meal of an animal after it hatched; null: none is written down.</summary>
public sealed record AnimalFirsts(DateRange? Shed, DateRange? Meal);

/// <summary>When did each animal shed and eat for the first time after it hatched?</summary>
public sealed class ListFirsts(Book book)
{
    /// <param name="on">The last day that counts.</param>
    /// <param name="shedDays">A shed counts up to so many days after hatching.</param>
    /// <param name="cancellation">Stops the question.</param>
    /// <returns>By animal; those of which it is not known when they hatched, or of which neither is written down, are left out.</returns>
    public Task<Outcome<IReadOnlyDictionary<AnimalId, AnimalFirsts>>> RunAsync(DateOnly on, int shedDays, CancellationToken cancellation) =>
        book.ReadAsync(async db =>
        {
            // One look into the index for each animal, however long its log is.
            var lines = await db.Animals.IgnoreAutoIncludes().Where(a => a.BinnedAt == null && a.Hatched != null)
                .Select(a => new
                {
                    a.AnimalId,
                    a.Hatched!.Earliest,
                    ShedId = db.Happenings
                        .Where(h => h.AnimalId == a.AnimalId && h.Kind == HappeningKind.Shed && h.Day > a.Hatched!.Earliest && h.WithdrawnAt == null && h.When.Earliest <= on)
                        .OrderBy(h => h.Day).ThenByDescending(h => h.HappeningId).Select(h => (HappeningId?)h.HappeningId).FirstOrDefault(),
                    MealId = db.Happenings
                        .Where(h => h.AnimalId == a.AnimalId && h.Kind == HappeningKind.Fed && h.Day > a.Hatched!.Earliest && h.WithdrawnAt == null && h.When.Earliest <= on)
                        .OrderBy(h => h.Day).ThenByDescending(h => h.HappeningId).Select(h => (HappeningId?)h.HappeningId).FirstOrDefault(),
                })
                .ToListAsync(cancellation);
            var days = new Dictionary<HappeningId, DateRange>();
            foreach (var ids in lines.SelectMany(l => new[] { l.ShedId, l.MealId }).OfType<HappeningId>().Chunk(CurrentRecords.IdsAtOnce))
            {
                foreach (var found in await db.Happenings.AsNoTracking().Where(h => ids.Contains(h.HappeningId)).Select(h => new { h.HappeningId, h.When }).ToListAsync(cancellation))
                {
                    days.Add(found.HappeningId, found.When);
                }
            }

            var firsts = new Dictionary<AnimalId, AnimalFirsts>();
            foreach (var line in lines.Where(l => l.ShedId is not null || l.MealId is not null))
            {
                var shed = line.ShedId is { } s && days[s] is var when && when.Latest.DayNumber - line.Earliest.DayNumber <= shedDays ? when : null;
                firsts.Add(line.AnimalId, new(shed, line.MealId is { } meal ? days[meal] : null));
            }

            return Outcome.Of<IReadOnlyDictionary<AnimalId, AnimalFirsts>>(firsts);
        });
}
