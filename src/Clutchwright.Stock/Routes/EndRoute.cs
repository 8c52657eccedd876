using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Routes;

/// <summary>Writes down that a route is followed no more, and takes its goals out of the season at hand.</summary>
public sealed class EndRoute(Book book)
{
    /// <param name="route">The route.</param>
    /// <param name="ending">How it ended.</param>
    /// <param name="season">The season at hand without the goals of the route; <c>null</c>: it has none.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops before anything is written.</param>
    /// <returns>The route; a <see cref="RouteProblem"/> or <see cref="SeasonProblem"/> if nothing was written.</returns>
    public Task<Outcome<AdoptedRoute>> RunAsync(AdoptedRouteId route, RouteEnding ending, SeasonEntry? season, string who, CancellationToken cancellation) =>
        book.WriteAsync<AdoptedRoute>(
            async db =>
            {
                if (await db.Routes.SingleOrDefaultAsync(r => r.AdoptedRouteId == route, cancellation) is not { } known)
                {
                    return new RouteProblem.NotFound(route);
                }

                if (known.Ending is not null)
                {
                    return new RouteProblem.AlreadyEnded(known.Want);
                }

                if (season is not null && await KeepSeason.PutAsync(db, season, cancellation) is { IsDone: false } refused)
                {
                    return refused.Problem;
                }

                known.End(ending);
                await db.RecordAsync(
                    who, ending == RouteEnding.Reached ? $"Reached the end of the route to {known.Want}" : $"Gave up the route to {known.Want}", book.Now, cancellation);
                return known;
            },
            cancellation);
}
