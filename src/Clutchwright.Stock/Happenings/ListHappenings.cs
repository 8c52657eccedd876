using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Happenings;

/// <summary>What happened, to one animal or to all?</summary>
public sealed class ListHappenings(Book book)
{
    /// <param name="animal">The animal, also as the other of a pair; null: all.</param>
    /// <param name="kinds">Only these; empty: all.</param>
    /// <param name="most">How many at most.</param>
    /// <param name="cancellation">Stops the question.</param>
    /// <returns>The latest first, by the last day on which it can have been; of one day the one written last first. What was taken back is left out.</returns>
    public Task<Outcome<IReadOnlyList<HappeningLine>>> RunAsync(
        AnimalId? animal, IReadOnlyList<HappeningKind> kinds, int most, CancellationToken cancellation)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        ArgumentNullException.ThrowIfNull(kinds);
        return book.ReadAsync(async db =>
        {
            var asked = db.Happenings.AsNoTracking().Where(h => h.WithdrawnAt == null);
            if (animal is { } one)
            {
                asked = asked.Where(h => h.AnimalId == one || h.MateId == one);
            }

            if (kinds.Count > 0)
            {
                asked = asked.Where(h => kinds.Contains(h.Kind));
            }

            var found = await asked.OrderByDescending(h => h.Day).ThenByDescending(h => h.HappeningId).Take(most).ToListAsync(cancellation);
            var named = found.SelectMany(h => new[] { h.AnimalId, h.MateId ?? h.AnimalId }).Distinct().ToArray();
            var tags = await db.Animals.Where(a => named.Contains(a.AnimalId)).Select(a => new { a.AnimalId, a.Tag }).ToDictionaryAsync(a => a.AnimalId, a => a.Tag, cancellation);
            var about = found.Where(h => h.ClutchId is not null).Select(h => h.ClutchId!.Value).Distinct().ToArray();
            var clutches = about.Length == 0 ? [] : await db.Clutches.Where(c => about.Contains(c.ClutchId)).ToDictionaryAsync(c => c.ClutchId, c => c.Tag, cancellation);
            return Outcome.Of<IReadOnlyList<HappeningLine>>([.. found.Select(h => new HappeningLine(
                h.HappeningId, tags[h.AnimalId], h.MateId is { } mate ? tags[mate] : null, h.ClutchId is { } clutch ? clutches[clutch] : null, h.Kind, h.When, h.Amount, h.Text, h.Version))]);
        });
    }
}
