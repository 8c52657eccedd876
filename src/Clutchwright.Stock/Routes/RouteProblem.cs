namespace Clutchwright.Stock.Routes;

/// <summary>Why a route cannot be adopted or ended.</summary>
public abstract record RouteProblem : Problem
{
    private RouteProblem()
    {
    }

    public sealed record WantInvalid(int MaxLength) : RouteProblem;

    /// <summary>The last season lies before the first, or the years are none.</summary>
    public sealed record SeasonsInvalid(int First, int Last) : RouteProblem;

    /// <summary>What is kept of the route is longer than the book takes.</summary>
    public sealed record TooLong(int MaxLength) : RouteProblem;

    public sealed record NotFound(AdoptedRouteId Route) : RouteProblem;

    public sealed record AlreadyEnded(string Want) : RouteProblem;
}
