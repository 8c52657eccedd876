using System.Text.Json.Nodes;
using Clutchwright.Desk.Season;

namespace Clutchwright.Desk.Routes;

/// <summary>The goals of a season that an adopted route asks for. Each names the route, so that they can be told from the keeper's own.</summary>
internal static class RouteGoals
{
    private const string Mark = "route";

    /// <summary>The season without the goals of a route.</summary>
    public static JsonObject Without(JsonObject season, Guid route)
    {
        var left = Removed(season, route);
        GoalsNames.DropLostTradeOff(left);
        return left;
    }

    /// <summary>The season with just these goals of a route.</summary>
    public static JsonObject With(JsonObject season, Guid route, string want, IReadOnlyList<RouteGoal> asks)
    {
        var changed = Removed(season, route);
        var goals = (JsonArray)changed["goals"]!;
        var names = goals.Select(GoalsNames.Called).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var goal in Goals(asks, want))
        {
            var words = goal.Want ?? want;
            var name = $"{(goal.Count > 1 ? $"{goal.Count} × " : string.Empty)}{words}{(goal.Want is null ? string.Empty : $" for {want}")}";
            while (!names.Add(name))
            {
                name += " (route)";
            }

            goals.Add(new JsonObject
            {
                ["name"] = name,
                [goal.Want is null ? "want" : "holdback"] = words,
                ["atLeast"] = goal.Count,
                ["weight"] = 1,
                [Mark] = route.ToString("N"),
            });
        }

        GoalsNames.DropLostTradeOff(changed);
        return changed;
    }

    /// <summary>Whether the season asks just this for a route.</summary>
    public static bool AreIn(JsonObject season, Guid route, string want, IReadOnlyList<RouteGoal> asks)
    {
        var here = (season["goals"] as JsonArray ?? []).OfType<JsonObject>().Where(g => IsOf(g, route))
            .Select(g => ((string?)g["holdback"], (int?)g["atLeast"] ?? 1)).Order().ToArray();
        return here.SequenceEqual(Goals(asks, want).Select(g => (g.Want, g.Count)).Order());
    }

    private static JsonObject Removed(JsonObject season, Guid route)
    {
        var left = (JsonObject)season.DeepClone();
        var goals = left["goals"] as JsonArray ?? [];
        foreach (var own in goals.Where(g => IsOf(g, route)).ToArray())
        {
            goals.Remove(own);
        }

        left["goals"] = goals;
        return left;
    }

    // Several pairings may give the same animal: it is asked for once, as often as the pairing that asks for most.
    private static IEnumerable<(string? Want, int Count)> Goals(IReadOnlyList<RouteGoal> asks, string want) => asks
        .GroupBy(a => a.Want.Length == 0 || a.Want == want ? null : a.Want)
        .Select(g => (g.Key, g.Max(a => a.Count)));

    private static bool IsOf(JsonNode? goal, Guid route) => goal is JsonObject entry && entry[Mark] is JsonValue value
        && value.TryGetValue<string>(out var text) && Guid.TryParse(text, out var id) && id == route;
}
