using System.Text.Json;
using Clutchwright.Stock.Routes;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace Clutchwright.Stock.History;

/// <summary>An adopted route as the history keeps it. A new field must have a default, so that old history can still be read.</summary>
internal sealed record RouteSnapshot(
    Guid Id, string Want, int FirstYear, int LastYear, JsonElement Asked, JsonElement Steps, DateTime AdoptedAt, RouteEnding? Ending)
{
    public static RouteSnapshot Of(AdoptedRoute route) => new(
        route.AdoptedRouteId.Value, route.Want, route.FirstYear, route.LastYear, Snapshots.Element(route.Asked), Snapshots.Element(route.Steps), route.AdoptedAt, route.Ending);

    /// <summary>The route as it was loaded.</summary>
    public static RouteSnapshot Original(EntityEntry<AdoptedRoute> entry) => new(
        entry.Entity.AdoptedRouteId.Value,
        entry.Property(r => r.Want).OriginalValue,
        entry.Property(r => r.FirstYear).OriginalValue,
        entry.Property(r => r.LastYear).OriginalValue,
        Snapshots.Element(entry.Property(r => r.Asked).OriginalValue),
        Snapshots.Element(entry.Property(r => r.Steps).OriginalValue),
        entry.Property(r => r.AdoptedAt).OriginalValue,
        entry.Property(r => r.Ending).OriginalValue);
}
