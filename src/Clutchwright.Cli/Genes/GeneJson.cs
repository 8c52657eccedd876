using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Genes;
using Clutchwright.Desk.Words;

namespace Clutchwright.Cli.Genes;

/// <summary>The JSON of <c>catalogue</c>.</summary>
internal static class GeneJson
{
    public static JsonObject Of(CatalogueCheck check, string folder) => new()
    {
        ["folder"] = folder,
        ["problems"] = JsonShapes.Array(check.Problems, p => new JsonObject
        {
            ["file"] = p.File,
            ["line"] = p.Line,
            ["column"] = p.Column,
            ["text"] = p.Text,
        }),
        ["loci"] = check.Loci,
        ["alleles"] = check.Alleles,
        ["forms"] = check.Forms,
        ["combinations"] = check.Combinations,
        ["looks"] = check.Looks,
        ["dangers"] = check.Dangers,
    };

    public static JsonObject Of(GeneLine line) => new()
    {
        ["id"] = line.Id,
        ["name"] = line.Name,
        ["kind"] = line.Kind,
        ["inheritance"] = line.Inheritance,
        ["locus"] = line.Locus,
        ["summary"] = line.Summary,
        ["severity"] = line.Severity,
    };

    public static JsonObject Of(GeneAnswer gene) => Of(gene.Line)
        .With("also", JsonShapes.Array(gene.Also))
        .With("claims", JsonShapes.Array(gene.Claims, c => new JsonObject
        {
            ["heading"] = c.Heading,
            ["text"] = c.Text,
            ["grade"] = c.Grade,
            ["sources"] = JsonShapes.Array(c.Sources),
        }))
        .With("neighbours", JsonShapes.Array(gene.Neighbours, n => new JsonObject
        {
            ["id"] = n.Id,
            ["name"] = n.Name,
            ["pair"] = n.PairName,
            ["shows"] = n.Shows,
        }))
        .With("looks", JsonShapes.Array(gene.Looks, Of))
        .With("partOf", JsonShapes.Array(gene.PartOf, Of))
        .With("hides", JsonShapes.Array(gene.Hides))
        .With("dangers", JsonShapes.Array(gene.Dangers, JsonShapes.Of));

    public static JsonObject Of(LookWords look) => new()
    {
        ["name"] = look.Name,
        ["recorded"] = look.IsRecorded,
        ["composedOf"] = JsonShapes.Array(look.ComposedOf),
        ["stages"] = JsonShapes.Array(look.Stages, s => new JsonObject
        {
            ["stage"] = s.Stage,
            ["fromMonths"] = s.FromMonths,
            ["ground"] = Of(s.Ground),
            ["pattern"] = Of(s.Pattern),
            ["eye"] = Of(s.Eye),
        }),
        ["words"] = JsonShapes.Array(look.Words),
        ["varies"] = look.Varies,
        ["grade"] = look.Grade,
        ["sources"] = JsonShapes.Array(look.Sources),
    };

    private static JsonObject? Of(ToneWords? tone) =>
        tone is null ? null : new JsonObject { ["name"] = tone.Name, ["srgb"] = tone.Srgb };
}
