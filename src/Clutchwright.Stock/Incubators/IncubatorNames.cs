using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Incubators;

/// <summary>Which incubators are in use?</summary>
public sealed class IncubatorNames(Book book)
{
    /// <returns>By name.</returns>
    public Task<Outcome<IReadOnlyList<Incubator>>> RunAsync(CancellationToken cancellation) =>
        book.ReadAsync(async db => Outcome.Of<IReadOnlyList<Incubator>>(
            await db.Incubators.AsNoTracking().Where(i => i.RetiredAt == null).OrderBy(i => i.Name).ToListAsync(cancellation)));
}
