using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Animals;

/// <summary>So many animals of one sex and status.</summary>
public sealed record AnimalCount(Sex? Sex, AnimalStatus Status, int Count);

/// <summary>How many animals are there, by sex and status? Those in the bin are left out.</summary>
public sealed class CountAnimals(Book book)
{
    /// <param name="cancellation">Stops the question.</param>
    public Task<Outcome<IReadOnlyList<AnimalCount>>> RunAsync(CancellationToken cancellation) =>
        book.ReadAsync(async db => Outcome.Of<IReadOnlyList<AnimalCount>>(
        [
            .. (await db.Animals.IgnoreAutoIncludes().Where(a => a.BinnedAt == null)
                .GroupBy(a => new { a.Sex, a.Status }).Select(g => new { g.Key.Sex, g.Key.Status, Count = g.Count() }).ToListAsync(cancellation))
                .Select(c => new AnimalCount(c.Sex, c.Status, c.Count)),
        ]));
}
