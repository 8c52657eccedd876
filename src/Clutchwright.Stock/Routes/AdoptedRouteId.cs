namespace Clutchwright.Stock.Routes;

/// <summary>The identity of a route that a keeper has adopted. The default is no route.</summary>
public readonly record struct AdoptedRouteId(Guid Value)
{
    public static AdoptedRouteId New() => new(Guid.CreateVersion7());

    public override string ToString() => Value.ToString();
}
