using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Carry;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Cli.Carry;

/// <summary>The JSON answer of <c>carry</c>.</summary>
internal static class CarryJson
{
    public static JsonObject Of(CarryAnswer answer)
    {
        var json = new JsonObject
        {
            ["animals"] = JsonShapes.Array(answer.Animals, Of),
            ["logLikelihood"] = double.IsFinite(answer.LogLikelihood) ? answer.LogLikelihood : null,
            ["contradictions"] = JsonShapes.Array(answer.Contradictions, c => new JsonObject
            {
                ["loci"] = JsonShapes.Array(c.Loci),
                ["animals"] = JsonShapes.Array(c.Animals),
                ["records"] = JsonShapes.Array(c.Records),
                ["causes"] = JsonShapes.Array(c.Causes, cause => new JsonObject
                {
                    ["cause"] = cause.Kind,
                    ["animal"] = cause.Animal,
                    ["other"] = cause.Other,
                    ["text"] = cause.Text,
                    ["check"] = cause.Check,
                }.With("probability", cause.Chance)),
                ["notWeighed"] = JsonShapes.Array(c.NotWeighed),
            }),
            ["method"] = answer.IsExact ? "exact" : "sampled",
        };
        if (!answer.IsExact)
        {
            json["standardError"] = answer.StandardError;
        }

        return json.With("unread", JsonShapes.Array(answer.Unread));
    }

    private static JsonObject Of(CarryAnimal animal)
    {
        var json = new JsonObject
        {
            ["id"] = animal.Id,
            ["sex"] = animal.Sex switch { Sex.Male => "m", Sex.Female => "f", _ => "u" },
        };
        if (animal.Count > 1)
        {
            json["count"] = animal.Count;
        }

        json["words"] = animal.Words.Text;
        json["loci"] = JsonShapes.Array(animal.Loci, l =>
        {
            var locus = new JsonObject
            {
                ["locus"] = l.Id,
                ["genotypes"] = JsonShapes.Array(l.Genotypes, g => new JsonObject { ["genotype"] = g.Notation }.With("probability", g.Chance)),
            };
            return l.StandardError is { } error ? locus.With("standardError", error) : locus;
        });
        return animal.NotCounted.Count == 0 ? json : json.With("notCounted", JsonShapes.Array(animal.NotCounted));
    }
}
