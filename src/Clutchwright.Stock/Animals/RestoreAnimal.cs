using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Animals;

/// <summary>Takes an animal out of the bin again.</summary>
public sealed class RestoreAnimal(Book book)
{
    /// <returns>The animal, or <see cref="AnimalProblem.Refused"/> if it breaks a rule now: its tag was given to another, say, or
    /// its sire is in the bin.</returns>
    public Task<Outcome<Animal>> RunAsync(AnimalId animal, string who, CancellationToken cancellation) =>
        book.WriteAsync<Animal>(
            async db =>
            {
                var found = await db.Animals.SingleOrDefaultAsync(a => a.AnimalId == animal, cancellation);
                if (found is null)
                {
                    return new AnimalProblem.NotFound(animal);
                }

                if (found.BinnedAt is null)
                {
                    return new AnimalProblem.NotBinned(found.Tag);
                }

                var all = await AnimalFacts.LoadAsync(db, cancellation);
                all[animal] = AnimalFacts.Of(found);
                var problems = new AnimalRules(all).WhyNot([animal]).Select(wrong => wrong.Problem).ToList();
                if (problems.Count > 0)
                {
                    return new AnimalProblem.Refused(problems);
                }

                found.TakeOutOfBin();
                await db.RecordAsync(who, $"Took {found.Tag} out of the bin", book.Now, cancellation);
                return found;
            },
            cancellation);
}
