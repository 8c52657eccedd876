using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Incubators;

/// <summary>Changes the name, the limits or the notes of an incubator.</summary>
public sealed class EditIncubator(Book book)
{
    /// <param name="incubator">The incubator; it may be out of use.</param>
    /// <param name="version">The <see cref="Incubator.Version"/> that the keeper saw.</param>
    /// <param name="entry">All fields as they are to be.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops before anything is written.</param>
    /// <returns>The incubator as it is now; <see cref="IncubatorProblem.ChangedSince"/> if somebody else was faster;
    /// <see cref="IncubatorProblem.Refused"/> with everything that is wrong.</returns>
    public Task<Outcome<Incubator>> RunAsync(IncubatorId incubator, Guid version, IncubatorEntry entry, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<Incubator>(
            async db =>
            {
                var found = await db.Incubators.SingleOrDefaultAsync(i => i.IncubatorId == incubator, cancellation);
                if (found is null)
                {
                    return new IncubatorProblem.NotFound(entry.Name.Trim());
                }

                if (found.Version != version)
                {
                    return new IncubatorProblem.ChangedSince(found.Name);
                }

                var problems = await AddIncubator.WhyNotAsync(db, incubator, entry, cancellation);
                if (problems.Count > 0)
                {
                    return new IncubatorProblem.Refused(problems);
                }

                var before = Snapshots.Write(IncubatorSnapshot.Of(found));
                var name = found.Name;
                found.Take(entry);
                var fields = Snapshots.Differences(before, Snapshots.Write(IncubatorSnapshot.Of(found)));
                await db.RecordAsync(who, $"Changed incubator {name}: {FieldWords.Of(fields)}", book.Now, cancellation);
                return found;
            },
            cancellation);
    }
}
