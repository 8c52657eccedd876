namespace Clutchwright.Stock.Routes;

/// <summary>How an adopted route ended.</summary>
public enum RouteEnding
{
    /// <summary>What was wanted hatched.</summary>
    Reached = 1,

    /// <summary>The keeper gave it up.</summary>
    GivenUp = 2,
}
