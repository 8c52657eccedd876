using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Happenings;

/// <summary>Corrects what was written down of something that happened; the history keeps what stood there.</summary>
public sealed class CorrectHappening(Book book)
{
    /// <returns>What stands now; <see cref="HappeningProblem.Refused"/> with everything that is wrong.</returns>
    public Task<Outcome<Happening>> RunAsync(HappeningId happening, Guid version, HappeningEntry entry, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<Happening>(
            async db =>
            {
                var found = await db.Happenings.SingleOrDefaultAsync(h => h.HappeningId == happening && h.WithdrawnAt == null, cancellation);
                if (found is null)
                {
                    return new HappeningProblem.NotFound(happening);
                }

                if (found.Version != version)
                {
                    return new HappeningProblem.ChangedSince(happening);
                }

                if (entry.Kind == HappeningKind.Laid && found.Kind != HappeningKind.Laid)
                {
                    return new HappeningProblem.WrittenAsClutch();
                }

                if (await RecordHappening.WhyNotAsync(db, found.AnimalId, entry, book, cancellation) is { } problem)
                {
                    return problem;
                }

                var subject = await db.Animals.SingleAsync(a => a.AnimalId == found.AnimalId, cancellation);
                await HappeningTraces.TakeAwayAsync(db, subject, found, cancellation);
                found.Take(entry);
                if (entry.Kind == HappeningKind.Weighed
                    && !await RecordHappening.HasLaterWeighingAsync(db, found.AnimalId, entry.When.Latest, found.HappeningId, cancellation))
                {
                    subject.Weigh(entry.Amount!.Value);
                }

                if (HappeningRules.StatusAfter(entry.Kind) is { } status)
                {
                    subject.Become(status);
                }

                await db.RecordAsync(who, $"Corrected of {subject.Tag}: {found}", book.Now, cancellation);
                return found;
            },
            cancellation);
    }
}
