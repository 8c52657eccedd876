using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Routes;

/// <summary>Writes down that a route is followed from now on, and what it asks of the season at hand.</summary>
public sealed class AdoptRoute(Book book)
{
    /// <param name="route">The identity that the goals of the season name it by.</param>
    /// <param name="entry">The route.</param>
    /// <param name="season">The season at hand with the goals of the route; <c>null</c>: it asks nothing of it.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops before anything is written.</param>
    /// <returns>The route; a <see cref="RouteProblem"/> or <see cref="SeasonProblem"/> if nothing was written.</returns>
    public Task<Outcome<AdoptedRoute>> RunAsync(
        AdoptedRouteId route, AdoptedRouteEntry entry, SeasonEntry? season, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<AdoptedRoute>(
            async db =>
            {
                if (AdoptedRoute.WhyNot(entry) is { } problem)
                {
                    return problem;
                }

                if (season is not null && await KeepSeason.PutAsync(db, season, cancellation) is { IsDone: false } refused)
                {
                    return refused.Problem;
                }

                var adopted = new AdoptedRoute(route, entry, book.Now);
                db.Routes.Add(adopted);
                await db.RecordAsync(who, $"Adopted a route to {adopted.Want}", book.Now, cancellation);
                return adopted;
            },
            cancellation);
    }
}
