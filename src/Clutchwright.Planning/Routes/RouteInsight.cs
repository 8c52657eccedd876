namespace Clutchwright.Planning.Routes;

/// <summary>Where a route most likely fails, and what would help.</summary>
/// <param name="IfCertain">For each step the chance within the horizon if it gave all that is wanted of it in the first season it is tried.</param>
/// <param name="Weakest">The place of the step whose certainty would help most; <c>null</c>: none would help.</param>
/// <param name="WithSecond">For each role held back the chance if a second one, as likely right, were kept beside it from the same clutches;
/// <c>null</c>: it is no held-back animal.</param>
public sealed record RouteInsight(IReadOnlyList<double> IfCertain, int? Weakest, IReadOnlyList<double?> WithSecond)
{
    /// <summary>Reckons it, in the closed form of the route.</summary>
    /// <param name="problem">What was asked.</param>
    /// <param name="route">A route of its answer.</param>
    /// <remarks>A second animal is insurance: either may live, and either may be what it looks. It is counted as hatching with the first, so that the
    /// figure is the most it can add.</remarks>
    public static RouteInsight Of(RouteProblem problem, Route route)
    {
        var world = RouteWorld.Of(problem, route);
        var chances = new RouteChances(world, route);
        var start = chances.Start();
        double[] certain = [.. route.Steps.Select((_, s) => chances.Of(start, 0, s)[^1])];
        int? weakest = null;
        for (var s = 0; s < certain.Length; s++)
        {
            if (certain[s] > route.Chance + 1e-9 && (weakest is null || certain[s] > certain[weakest.Value]))
            {
                weakest = s;
            }
        }

        var rearing = problem.Settings.Rearing;
        double?[] second =
        [
            .. route.Roles.Select(r =>
            {
                if (r.FromStep is not { } from)
                {
                    return (double?)null;
                }

                // Of a step with two held back the trust is of both together.
                var right = route.Steps[from].Keep.Count == 2 ? Math.Sqrt(r.Trust) : r.Trust;
                var one = right * rearing;
                return Math.Min(1.0, route.Chance * (1.0 - ((1.0 - one) * (1.0 - one))) / one);
            }),
        ];
        return new(certain, weakest, second);
    }
}
