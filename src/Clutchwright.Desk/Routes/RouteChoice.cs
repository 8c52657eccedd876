using Clutchwright.Planning.Routes;

namespace Clutchwright.Desk.Routes;

/// <summary>Of many routes that no other beats, the few that differ in what a keeper sees.</summary>
internal static class RouteChoice
{
    public static IReadOnlyList<Route> Of(IReadOnlyList<Route> routes, int most)
    {
        var chosen = new List<Route>();
        foreach (var route in routes)
        {
            if (!chosen.Exists(c => IsLike(c, route)))
            {
                chosen.Add(route);
            }
        }

        if (chosen.Count <= most)
        {
            return chosen;
        }

        // The likeliest, the soonest, the one with the fewest animals and the cheapest are told whatever else is.
        Route[] marked = [chosen[0], chosen.MinBy(r => r.FirstSeason)!, chosen.MinBy(r => r.Raised)!, chosen.MinBy(r => r.Cost)!];
        var kept = marked.Distinct().Take(most).ToList();
        kept.AddRange(chosen.Except(kept).Take(most - kept.Count));
        return [.. kept.OrderByDescending(r => r.Chance)];
    }

    private static bool IsLike(Route known, Route other) =>
        known.FirstSeason <= other.FirstSeason
        && known.Raised <= other.Raised
        && known.Clutches <= other.Clutches * 1.15
        && known.Price <= other.Price
        && Enumerable.Range(1, known.ChanceBySeason.Count - 1).All(t => known.ChanceBySeason[t] >= other.ChanceBySeason[t] * 0.9);
}
