using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Animals;

/// <summary>Every animal out of the bin, whatever its status, with its statements: what the engines reason from. Parents that
/// were sold or died are needed for what their offspring carry; who is to breed, the caller chooses by
/// <see cref="Animal.Status"/>.</summary>
public sealed class AllAnimals(Book book)
{
    /// <returns>The animals by tag, each with its standing <see cref="Animal.Statements"/> in the order in which they were
    /// recorded (those of one deed in any). Parents named by them are among them.</returns>
    public Task<Outcome<IReadOnlyList<Animal>>> RunAsync(CancellationToken cancellation) =>
        book.ReadAsync(async db => Outcome.Of<IReadOnlyList<Animal>>(await LoadAsync(db, cancellation)));

    internal static Task<List<Animal>> LoadAsync(StockContext db, CancellationToken cancellation) =>
        db.Animals.AsNoTracking()
            .Where(a => a.BinnedAt == null)
            .Include(a => a.Statements.Where(s => s.WithdrawnAt == null).OrderBy(s => s.StatementId))
            .OrderBy(a => a.TagOrder).ThenBy(a => a.TagKey)
            .AsSplitQuery()
            .ToListAsync(cancellation);
}
