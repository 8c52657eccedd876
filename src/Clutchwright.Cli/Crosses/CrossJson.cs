using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Crosses;

namespace Clutchwright.Cli.Crosses;

/// <summary>The JSON of <c>cross</c>. Programs rely on these keys: add freely, rename nothing.</summary>
internal static class CrossJson
{
    public static JsonObject Of(CrossAnswer cross) => new JsonObject
    {
        ["sire"] = Of(cross.Sire),
        ["dam"] = Of(cross.Dam),
        ["outcomes"] = JsonShapes.Array(cross.Outcomes, Of),
        ["moreOutcomes"] = cross.HasMoreOutcomes,
    }
        .With("outcomesShare", cross.OutcomesShare)
        .With("genotypes", JsonShapes.Array(cross.Genotypes, Of))
        .With("moreGenotypes", cross.HasMoreGenotypes)
        .With("want", JsonShapes.Array(cross.Wants, Of))
        .With("survival", cross.Survival)
        .With("losses", JsonShapes.Array(cross.Losses, l =>
            new JsonObject { ["genotype"] = l.Text, ["stage"] = l.Stage }.With("probability", l.PerEgg)))
        .With("clutch", new JsonObject { ["text"] = cross.ClutchText, ["meanGoodEggs"] = cross.MeanGoodEggs })
        .With("warnings", JsonShapes.Array(cross.Warnings, JsonShapes.Of));

    private static JsonObject Of(ParentAnswer parent) => new JsonObject
    {
        ["asked"] = parent.Asked,
        ["id"] = parent.Tag,
        ["sex"] = JsonShapes.OddsSex(parent.Sex),
    }
        .WithWords(parent.Words)
        .With("notes", JsonShapes.Array(parent.Notes));

    private static JsonObject Of(OutcomeLine outcome) => new JsonObject
    {
        ["look"] = outcome.Name,
        ["label"] = outcome.Label,
        ["sex"] = JsonShapes.OddsSex(outcome.Sex),
    }
        .With("probability", outcome.PerEgg)
        .With("perHatchling", outcome.PerHatchling)
        .With("hidden", JsonShapes.Array(outcome.Hidden, h =>
            new JsonObject { ["carries"] = h.Carries }.With("probability", h.Chance)))
        .With("faint", JsonShapes.Array(outcome.Faint))
        .With("mean", outcome.InClutch.Mean)
        .With("low", outcome.InClutch.Low)
        .With("high", outcome.InClutch.High)
        .With("atLeastOne", outcome.AtLeastOne)
        .With("composed", !outcome.Look.IsRecorded);

    private static JsonObject Of(GenotypeLine genotype) => new JsonObject
    {
        ["genotype"] = genotype.Text,
        ["notation"] = genotype.Notation,
        ["sex"] = JsonShapes.OddsSex(genotype.Sex),
    }
        .With("probability", genotype.PerEgg)
        .With("survival", genotype.Survival);

    private static JsonObject Of(WantAnswer want) => new JsonObject { ["text"] = want.Text }
        .With("probability", want.PerEgg)
        .With("perHatchling", want.PerHatchling)
        .With("atLeastOne", want.AtLeastOne)
        .With("atLeast", want.AtLeast)
        .With("atLeastCount", want.AtLeastCount)
        .With("mean", want.InClutch.Mean)
        .With("low", want.InClutch.Low)
        .With("high", want.InClutch.High)
        .With("ceiling", want.Ceiling)
        .With("eggsFor", Of(want.EggsFor))
        .With("clutchesFor", Of(want.ClutchesFor))
        .With("why", JsonShapes.Array(want.Why, w =>
        {
            var step = new JsonObject { ["text"] = w.Text };
            return w.Value is { } value ? step.With("value", value) : step;
        }));

    // A number that no clutch reaches is null, and there all the same.
    private static JsonObject Of(IReadOnlyDictionary<int, int?> needed)
    {
        var json = new JsonObject();
        foreach (var (percent, number) in needed.OrderBy(n => n.Key))
        {
            json[percent.ToString(CultureInfo.InvariantCulture)] = number;
        }

        return json;
    }
}
