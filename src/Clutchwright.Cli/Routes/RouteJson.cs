using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Routes;

namespace Clutchwright.Cli.Routes;

/// <summary>The JSON of <c>route</c>.</summary>
internal static class RouteJson
{
    public static JsonObject Of(RoutesAnswer answer)
    {
        var json = new JsonObject
        {
            ["want"] = answer.Want,
            ["horizon"] = answer.Seasons,
            ["routes"] = JsonShapes.Array(answer.Routes, Route),
            ["found"] = answer.RoutesFound,
            ["proven"] = answer.IsProven,
        };
        if (answer.Outlook is { } outlook)
        {
            json["replanned"] = Outlook(outlook);
        }

        return json
            .With("purchases", JsonShapes.Array(answer.Purchases, p => new JsonObject
            {
                ["animal"] = p.Animal,
                ["chance"] = p.Chance,
                ["gain"] = p.Gain,
                ["firstSeason"] = p.FirstSeason,
                ["seasonsSaved"] = p.SeasonsSaved,
            }))
            .With("target", JsonShapes.Array(answer.TargetNotes))
            .With("warnings", JsonShapes.Array(answer.Dangers, JsonShapes.Of))
            .With("clutch", answer.ClutchText)
            .With("notes", JsonShapes.Array(answer.Notes));
    }

    private static JsonObject Route(RouteWords route) => new JsonObject
    {
        ["seasons"] = route.FirstSeason,
        ["reaches"] = route.Reaches,
        ["steps"] = JsonShapes.Array(route.Steps, s => new JsonObject
        {
            ["season"] = s.Season,
            ["sire"] = route.Animals[s.Sire].Name,
            ["dam"] = route.Animals[s.Dam].Name,
            ["dams"] = s.Dams,
            ["keep"] = JsonShapes.Array(s.Keep, k => Animal(route.Animals[k])),
            ["eggs"] = s.Eggs,
            ["perEgg"] = JsonShapes.Array(s.PerEgg, p => JsonValue.Create(p)),
            ["success"] = s.Success,
            ["inbreeding"] = s.Inbreeding,
            ["seasonsToPlan"] = s.SeasonsToPlan,
            ["why"] = s.Why,
        }),
        ["chance"] = route.Chance.Value,
        ["chanceBySeason"] = JsonShapes.Array(route.ChanceBySeason, c => JsonValue.Create(c)),
        ["animalsRaised"] = route.Raised,
        ["clutches"] = route.Clutches,
        ["cost"] = route.Cost,
        ["price"] = route.Price,
        ["inbreeding"] = route.Inbreeding,
        ["animals"] = JsonShapes.Array(route.Animals, Animal),
        ["weakestStep"] = route.Weakest?.Step + 1,
        ["chanceIfWeakestSucceeds"] = route.Weakest?.Chance,
        ["firstSeason"] = JsonShapes.Array(route.Goals, g => new JsonObject { ["sire"] = g.Sire, ["dam"] = g.Dam, ["keep"] = g.Want, ["count"] = g.Count }),
    };

    private static JsonObject Animal(RouteAnimalWords animal) => new JsonObject
    {
        ["name"] = animal.Name,
        ["sex"] = JsonShapes.OddsSex(animal.Sex),
        ["count"] = animal.Count,
        ["tags"] = JsonShapes.Array(animal.Tags),
        ["price"] = animal.Price,
        ["trust"] = animal.Trust,
        ["withSecond"] = animal.SecondCopy,
        ["ready"] = animal.Ready,
    }.WithWords(animal.Words);

    private static JsonObject Outlook(ProgrammeOutlook outlook) => new()
    {
        ["tries"] = outlook.Tries,
        ["chance"] = outlook.Chance,
        ["chanceBySeason"] = JsonShapes.Array(outlook.ChanceBySeason.Skip(1), c => JsonValue.Create(c)),
        ["standardErrors"] = JsonShapes.Array(outlook.StandardErrors.Skip(1), c => JsonValue.Create(c)),
        ["clutches"] = Spread(outlook.Clutches),
        ["animalsRaised"] = Spread(outlook.Raised),
        ["cost"] = Spread(outlook.Cost),
        ["stuckAt"] = JsonShapes.Array(outlook.StuckAt, c => JsonValue.Create(c)),
    };

    private static JsonObject Spread(TrySpread spread) => new() { ["mean"] = spread.Mean, ["10%"] = spread.Low, ["50%"] = spread.Middle, ["90%"] = spread.High };
}
