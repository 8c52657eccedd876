using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Animals;

/// <summary>Puts an animal that should not have been entered into the bin. One that was sold or died keeps its record and
/// gets another <see cref="AnimalStatus"/>.</summary>
public sealed class BinAnimal(Book book)
{
    /// <returns>The animal; <see cref="AnimalProblem.HasOffspring"/> if animals out of the bin descend, or may descend, from it.</returns>
    public Task<Outcome<Animal>> RunAsync(AnimalId animal, string who, CancellationToken cancellation) =>
        book.WriteAsync<Animal>(
            async db =>
            {
                var found = await db.Animals.SingleOrDefaultAsync(a => a.AnimalId == animal, cancellation);
                if (found is null)
                {
                    return new AnimalProblem.NotFound(animal);
                }

                if (found.BinnedAt is not null)
                {
                    return new AnimalProblem.AlreadyBinned(found.Tag);
                }

                var offspring = await db.Animals
                    .Where(a => a.BinnedAt == null
                        && (a.SireId == animal || a.DamId == animal || a.PossibleSires.Any(p => p.SireId == animal)))
                    .OrderBy(a => a.TagOrder)
                    .Select(a => a.Tag)
                    .ToListAsync(cancellation);
                if (offspring.Count > 0)
                {
                    return new AnimalProblem.HasOffspring(found.Tag) { Offspring = offspring };
                }

                found.Bin(book.Now);
                await db.RecordAsync(who, $"Put {found.Tag} in the bin", book.Now, cancellation);
                return found;
            },
            cancellation);
}
