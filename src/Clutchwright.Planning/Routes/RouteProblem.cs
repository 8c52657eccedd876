using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Planning.Routes;

/// <summary>What a route is asked for.</summary>
/// <param name="Species">The species.</param>
/// <param name="Want">What shall hatch in the end.</param>
/// <param name="Animals">The animals to start from, owned or for sale.</param>
/// <param name="Settings">What it is reckoned with.</param>
public sealed record RouteProblem(Species Species, Want Want, IReadOnlyList<RouteAnimal> Animals, RouteSettings Settings)
{
    /// <summary>Gets what forbids a male and a female of <see cref="Animals"/> to be paired, by their places; <c>null</c>: nothing but dangers.</summary>
    public Func<int, int, bool>? Forbidden { get; init; }
}
