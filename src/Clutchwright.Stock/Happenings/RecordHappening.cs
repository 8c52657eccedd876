using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Happenings;

/// <summary>Writes down something that happened to an animal, today or long ago. A weighing that is the latest of the animal is its mass from then on.</summary>
public sealed class RecordHappening(Book book)
{
    /// <returns>What was written; <see cref="HappeningProblem.Refused"/> with everything that is wrong.</returns>
    public Task<Outcome<Happening>> RunAsync(AnimalId animal, HappeningEntry entry, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<Happening>(
            async db =>
            {
                if (entry.Kind == HappeningKind.Laid)
                {
                    return new HappeningProblem.WrittenAsClutch();
                }

                if (await WhyNotAsync(db, animal, entry, book, cancellation) is { } problem)
                {
                    return problem;
                }

                var happening = new Happening(HappeningId.New(), animal, entry);
                db.Happenings.Add(happening);
                var subject = await db.Animals.SingleAsync(a => a.AnimalId == animal, cancellation);
                if (entry.Kind == HappeningKind.Weighed && !await HasLaterWeighingAsync(db, animal, entry.When.Latest, happening.HappeningId, cancellation))
                {
                    subject.Weigh(entry.Amount!.Value);
                }

                if (HappeningRules.StatusAfter(entry.Kind) is { } status)
                {
                    subject.Become(status);
                }

                await db.RecordAsync(who, $"Wrote of {subject.Tag}: {happening}", book.Now, cancellation);
                return happening;
            },
            cancellation);
    }

    /// <summary>Why it cannot be written; null: it can.</summary>
    internal static async Task<Problem?> WhyNotAsync(StockContext db, AnimalId animal, HappeningEntry entry, Book book, CancellationToken cancellation)
    {
        var named = new[] { animal, entry.MateId ?? animal };
        var here = await db.Animals.Where(a => a.BinnedAt == null && named.Contains(a.AnimalId)).ToListAsync(cancellation);
        if (here.SingleOrDefault(a => a.AnimalId == animal) is not { } subject)
        {
            return new AnimalProblem.NotFound(animal);
        }

        // The keeper may be where it is a day later already than in UTC.
        var today = DateOnly.FromDateTime(book.Now).AddDays(1);
        var clutch = entry.ClutchId is { } about ? await db.Clutches.SingleOrDefaultAsync(c => c.ClutchId == about && c.BinnedAt == null, cancellation) : null;
        var problems = HappeningRules.WhyNot(subject, entry.MateId is { } mate ? here.SingleOrDefault(a => a.AnimalId == mate) : null, clutch, entry, today).ToList();
        return problems.Count > 0 ? new HappeningProblem.Refused(problems) : null;
    }

    internal static Task<bool> HasLaterWeighingAsync(StockContext db, AnimalId animal, DateOnly day, HappeningId but, CancellationToken cancellation) =>
        db.Happenings.AnyAsync(
            h => h.AnimalId == animal && h.Kind == HappeningKind.Weighed && h.WithdrawnAt == null && h.HappeningId != but && h.Day > day, cancellation);
}
