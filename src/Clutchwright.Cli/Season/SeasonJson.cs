using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Season;

namespace Clutchwright.Cli.Season;

/// <summary>The JSON of <c>season plan</c>.</summary>
internal static class SeasonJson
{
    public static JsonObject Of(SeasonAnswer answer)
    {
        var json = new JsonObject
        {
            ["status"] = answer.Status,
            ["objective"] = answer.Objective,
            ["bound"] = answer.Bound,
            ["gap"] = answer.Gap,
            ["pairings"] = JsonShapes.Array(answer.Pairings, Pairing),
            ["goals"] = JsonShapes.Array(answer.Goals, g => new JsonObject
            {
                ["goal"] = g.Name,
                ["text"] = g.Text,
                ["figure"] = g.Figure,
                ["unit"] = Unit(g.Kind),
                ["weight"] = g.Weight,
                ["least"] = g.Least,
                ["pairs"] = g.Pairs,
            }),
            ["notReady"] = JsonShapes.Array(answer.NotReady, n => new JsonObject { ["id"] = n.Tag, ["name"] = n.Name, ["why"] = n.Why }),
            ["notPaired"] = JsonShapes.Array(answer.LeftOut),
            ["dangerousPairs"] = answer.Dangerous,
            ["tooInbredPairs"] = answer.TooInbred,
            ["meanInbreeding"] = answer.MeanInbreeding,
            ["clashes"] = JsonShapes.Array(answer.Clashes, c => new JsonObject { ["text"] = c.Text, ["change"] = c.Change }),
        };
        if (answer.TradeOff is { } tradeOff)
        {
            json["tradeOff"] = new JsonObject
            {
                ["goals"] = new JsonArray(tradeOff.First, tradeOff.Second),
                ["points"] = JsonShapes.Array(tradeOff.Points, p => new JsonArray(p.First, p.Second)),
            };
        }

        json["on"] = answer.On.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        json["clutch"] = answer.ClutchText;
        json["notes"] = JsonShapes.Array(answer.Notes);
        return json;
    }

    private static JsonObject Pairing(SeasonPairing pairing)
    {
        var odds = new JsonObject();
        var adds = new JsonObject();
        foreach (var served in pairing.Serves)
        {
            odds[served.Goal] = served.Alone;
            adds[served.Goal] = served.Adds;
        }

        var json = new JsonObject
        {
            ["sire"] = pairing.Sire.Tag,
            ["dam"] = pairing.Dam.Tag,
            ["serves"] = JsonShapes.Array(pairing.Serves.Select(s => s.Goal)),
            ["odds"] = odds,
            ["adds"] = adds,
            ["inbreeding"] = pairing.Inbreeding,
            ["pinned"] = pairing.IsPinned,
            ["lifted"] = JsonShapes.Array(pairing.Lifted, JsonShapes.Of),
            ["warnings"] = JsonShapes.Array(pairing.Watch, JsonShapes.Of),
            ["sireName"] = pairing.Sire.Name,
            ["sireGenotype"] = pairing.Sire.Words.Text,
            ["damName"] = pairing.Dam.Name,
            ["damGenotype"] = pairing.Dam.Words.Text,
        };
        if (pairing.RunnerUp is { } runnerUp)
        {
            json["runnerUp"] = new JsonObject { ["text"] = runnerUp, ["sire"] = pairing.Instead, ["cost"] = pairing.Cost };
        }

        return json;
    }

    private static string Unit(SeasonFigureKind kind) => kind switch
    {
        SeasonFigureKind.Chance => "probability",
        SeasonFigureKind.Bits => "bits",
        _ => "amount",
    };
}
