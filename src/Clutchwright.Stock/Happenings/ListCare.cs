using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Happenings;

/// <summary>What is written down of meals, sheds, masses and eggs, of one animal or of all that are in the room?</summary>
/// <remarks>Three questions to the database whatever the number of animals: the animals with the last day of each kind (each found by one step
/// in the index of animal, kind and day), what happened since the day asked for, and the clutches.</remarks>
public sealed class ListCare(Book book)
{
    /// <summary>The kinds that tell of care, and of why an animal does not eat.</summary>
    private static readonly HappeningKind[] Kinds =
    [
        HappeningKind.Fed, HappeningKind.FoodRefused, HappeningKind.Shed, HappeningKind.Weighed,
        HappeningKind.FolliclesMeasured, HappeningKind.Ovulated, HappeningKind.PreLayShed,
    ];

    /// <param name="animal">The animal, wherever it is; null: all that are kept, held back or for sale.</param>
    /// <param name="since">From this day on the entries themselves are given; of earlier ones the last day of each kind.</param>
    /// <param name="cancellation">Stops the question.</param>
    /// <returns>By tag; none in the bin.</returns>
    public Task<Outcome<IReadOnlyList<CareRecord>>> RunAsync(AnimalId? animal, DateOnly since, CancellationToken cancellation) =>
        book.ReadAsync(async db =>
        {
            var asked = db.Animals.AsNoTracking().IgnoreAutoIncludes().Where(a => a.BinnedAt == null);
            asked = animal is { } one
                ? asked.Where(a => a.AnimalId == one)
                : asked.Where(a => AnimalPlaces.Here.Contains(a.Status));
            var animals = await asked
                .OrderBy(a => a.TagOrder)
                .Select(a => new
                {
                    a.AnimalId,
                    a.Tag,
                    a.Name,
                    a.Sex,
                    a.Hatched,
                    a.MassGrams,
                    Fed = db.Happenings.Where(h => h.AnimalId == a.AnimalId && h.Kind == HappeningKind.Fed && h.WithdrawnAt == null)
                        .OrderByDescending(h => h.Day).Select(h => (DateOnly?)h.Day).FirstOrDefault(),
                    Refused = db.Happenings.Where(h => h.AnimalId == a.AnimalId && h.Kind == HappeningKind.FoodRefused && h.WithdrawnAt == null)
                        .OrderByDescending(h => h.Day).Select(h => (DateOnly?)h.Day).FirstOrDefault(),
                    Shed = db.Happenings.Where(h => h.AnimalId == a.AnimalId && h.Kind == HappeningKind.Shed && h.WithdrawnAt == null)
                        .OrderByDescending(h => h.Day).Select(h => (DateOnly?)h.Day).FirstOrDefault(),
                    Weighed = db.Happenings.Where(h => h.AnimalId == a.AnimalId && h.Kind == HappeningKind.Weighed && h.WithdrawnAt == null)
                        .OrderByDescending(h => h.Day).Select(h => (DateOnly?)h.Day).FirstOrDefault(),
                })
                .ToListAsync(cancellation);
            var happened = db.Happenings.AsNoTracking().Where(h => h.WithdrawnAt == null && Kinds.Contains(h.Kind) && h.Day >= since);
            happened = animal is { } ofOne ? happened.Where(h => h.AnimalId == ofOne) : happened;
            var events = (await happened
                    .Select(h => new { h.AnimalId, h.Kind, h.Day, h.Amount, h.HappeningId })
                    .ToListAsync(cancellation))
                .OrderBy(h => h.Day).ThenBy(h => h.HappeningId.Value)
                .ToLookup(h => h.AnimalId, h => new CareEvent(h.Kind, h.Day, h.Amount));
            var laid = db.Clutches.AsNoTracking().Where(c => c.BinnedAt == null && c.Laid.Latest >= since);
            laid = animal is { } dam ? laid.Where(c => c.DamId == dam) : laid;
            var clutches = (await laid.ToListAsync(cancellation))
                .OrderBy(c => c.Laid.Latest)
                .ToLookup(c => c.DamId, c => new CareClutch(c.Tag, c.Laid.Latest, c.Hatched?.Latest, c.IncubatorId is null));
            return Outcome.Of<IReadOnlyList<CareRecord>>([.. animals.Select(a => new CareRecord(a.AnimalId, a.Tag, a.Name, a.Sex, a.Hatched, a.MassGrams)
            {
                Events = [.. events[a.AnimalId]],
                Last = LastDays((HappeningKind.Fed, a.Fed), (HappeningKind.FoodRefused, a.Refused), (HappeningKind.Shed, a.Shed), (HappeningKind.Weighed, a.Weighed)),
                Clutches = [.. clutches[a.AnimalId]],
            })]);
        });

    /// <summary>When a meal or a refusal of any animal was written down last.</summary>
    public Task<Outcome<LastOffer>> LastOfferAsync(CancellationToken cancellation) =>
        book.ReadAsync<LastOffer>(async db =>
        {
            var of = new List<DateOnly?>();
            foreach (var kind in new[] { HappeningKind.Fed, HappeningKind.FoodRefused })
            {
                of.Add(await db.Happenings.Where(h => h.Kind == kind && h.WithdrawnAt == null).OrderByDescending(h => h.Day).Select(h => (DateOnly?)h.Day).FirstOrDefaultAsync(cancellation));
            }

            return new LastOffer(of.Max());
        });

    private static Dictionary<HappeningKind, DateOnly> LastDays(params (HappeningKind Kind, DateOnly? Day)[] days) =>
        days.Where(d => d.Day is not null).ToDictionary(d => d.Kind, d => d.Day!.Value);
}

/// <summary>The last day on which a meal or a refusal was written down; null: none.</summary>
public sealed record LastOffer(DateOnly? Day);
