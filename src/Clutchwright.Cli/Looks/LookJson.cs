using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Looks;
using Clutchwright.Desk.Words;

namespace Clutchwright.Cli.Looks;

/// <summary>The JSON of <c>look</c>.</summary>
internal static class LookJson
{
    public static JsonObject Of(LooksAnswer answer) => new()
    {
        ["query"] = answer.Query,
        ["understood"] = answer.Understood,
        ["stage"] = answer.Stage,
        ["makings"] = JsonShapes.Array(answer.Makings, Of),
        ["isMore"] = answer.IsMore,
        ["notes"] = JsonShapes.Array(answer.Notes),
    };

    private static JsonObject Of(Making making)
    {
        var json = new JsonObject
        {
            ["genotype"] = making.Genotype,
            ["notation"] = making.Notation,
            ["label"] = making.Label,
            ["loci"] = JsonShapes.Array(making.Loci, l => new JsonObject
            {
                ["locus"] = l.Locus,
                ["form"] = l.Form,
                ["ways"] = JsonShapes.Array(l.Ways),
            }),
            ["tone"] = making.At is { } at
                ? new JsonObject { ["stage"] = at.Stage, ["ground"] = Of(at.Ground), ["pattern"] = Of(at.Pattern), ["eye"] = Of(at.Eye) }
                : null,
            ["toneStrip"] = JsonShapes.Array(making.Look.Stages, s => new JsonObject
            {
                ["stage"] = s.Stage,
                ["fromMonths"] = s.FromMonths,
                ["ground"] = Of(s.Ground),
                ["pattern"] = Of(s.Pattern),
                ["eye"] = Of(s.Eye),
            }),
            ["words"] = JsonShapes.Array(making.Look.Words),
            ["evidence"] = new JsonObject
            {
                ["recorded"] = making.Look.IsRecorded,
                ["grade"] = making.Look.Grade,
                ["composedOf"] = JsonShapes.Array(making.Look.ComposedOf),
                ["varies"] = making.Look.Varies,
                ["sources"] = JsonShapes.Array(making.Look.Sources),
            },
            ["warnings"] = JsonShapes.Array(making.Warnings, JsonShapes.Of),
            ["distance"] = making.Distance is { } distance ? Math.Round(distance, 4) : null,
            ["alleles"] = making.Alleles,
        };
        if (making.Steps is { } steps)
        {
            json["steps"] = new JsonObject
            {
                ["sum"] = Math.Round(steps.Sum, 4),
                ["distance"] = Math.Round(steps.Distance, 4),
                ["doubt"] = steps.Doubt,
                ["alleles"] = steps.Alleles,
                ["stock"] = Math.Round(steps.Stock, 4),
                ["harm"] = steps.Harm,
            };
        }

        if (making.Nearness is { } nearness)
        {
            json["missing"] = JsonShapes.Array(nearness.Missing);
            json = nearness.BestChance is { } chance ? json.With("bestChance", chance) : json.With("bestChance", (JsonNode?)null);
            json["bestPair"] = nearness.BestPair is var (sire, dam) ? new JsonObject { ["sire"] = sire, ["dam"] = dam } : null;
            json["onlyByLeftOutPairs"] = nearness.IsOnlyByLeftOutPairs;
        }

        if (making.SeasonsNeeded is { } seasons)
        {
            json["seasonsNeeded"] = seasons;
        }

        return json;
    }

    private static JsonObject? Of(ToneWords? tone) =>
        tone is null ? null : new JsonObject { ["name"] = tone.Name, ["srgb"] = tone.Srgb };
}
