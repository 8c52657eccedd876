using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Animals;

/// <summary>Changes what is recorded of an animal.</summary>
public sealed class EditAnimal(Book book)
{
    /// <param name="animal">The animal.</param>
    /// <param name="version">The <see cref="Animal.Version"/> that the keeper saw.</param>
    /// <param name="entry">All fields as they are to be.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops before anything is written.</param>
    /// <returns>The animal as it is now; <see cref="AnimalProblem.ChangedSince"/> if somebody else was faster;
    /// <see cref="AnimalProblem.Refused"/> with everything that is wrong.</returns>
    public Task<Outcome<Animal>> RunAsync(
        AnimalId animal, Guid version, AnimalEntry entry, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<Animal>(
            async db =>
            {
                var found = await db.Animals.SingleOrDefaultAsync(a => a.AnimalId == animal && a.BinnedAt == null, cancellation);
                if (found is null)
                {
                    return new AnimalProblem.NotFound(animal);
                }

                if (found.Version != version)
                {
                    return new AnimalProblem.ChangedSince(found.Tag);
                }

                var problems = Animal.WhyNot(entry).ToList();
                if (problems.Count > 0)
                {
                    return new AnimalProblem.Refused(problems);
                }

                var all = await AnimalFacts.LoadAsync(db, cancellation);
                all[animal] = AnimalFacts.Of(animal, entry);
                problems = [.. new AnimalRules(all).WhyNot([animal]).Select(wrong => wrong.Problem)];
                if (problems.Count > 0)
                {
                    return new AnimalProblem.Refused(problems);
                }

                var before = Snapshots.Write(AnimalSnapshot.Of(found, found.PossibleSireIds));
                var oldTag = found.Tag;
                if (entry.DamId != found.DamId)
                {
                    // Of another dam it cannot be of the same clutch.
                    found.BelongTo(null);
                }

                found.Take(entry);
                var fields = Snapshots.Differences(before, Snapshots.Write(AnimalSnapshot.Of(found, found.PossibleSireIds)));
                await db.RecordAsync(who, $"Changed {oldTag}: {FieldWords.Of(fields)}", book.Now, cancellation);
                return found;
            },
            cancellation);
    }
}
