using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Routes;

/// <summary>Which routes has the keeper adopted?</summary>
public sealed class ListRoutes(Book book)
{
    /// <returns>Those that ended too, the latest adopted first.</returns>
    public Task<Outcome<IReadOnlyList<AdoptedRoute>>> RunAsync(CancellationToken cancellation) =>
        book.ReadAsync(async db => Outcome.Of<IReadOnlyList<AdoptedRoute>>(
            await db.Routes.AsNoTracking().OrderByDescending(r => r.AdoptedAt).ThenByDescending(r => r.AdoptedRouteId).ToListAsync(cancellation)));
}
