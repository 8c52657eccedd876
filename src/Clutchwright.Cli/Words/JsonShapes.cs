using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Cli.Words;

/// <summary>The shapes that the JSON answers share. Numbers are invariant; an exact ratio stands beside its number.</summary>
internal static class JsonShapes
{
    private static readonly JsonSerializerOptions Layout = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes an answer.</summary>
    public static void Send(this Terminal terminal, JsonObject answer) =>
        terminal.Output.Write(answer.ToJsonString(Layout).ReplaceLineEndings("\n") + "\n");

    /// <summary>Adds a value.</summary>
    public static JsonObject With(this JsonObject json, string key, JsonNode? value)
    {
        json[key] = value;
        return json;
    }

    /// <summary>Adds a chance, and beside it <c>keyExact</c> where it is an exact ratio.</summary>
    public static JsonObject With(this JsonObject json, string key, Probability chance)
    {
        json[key] = chance.Value;
        if (chance.Exact is { } exact)
        {
            json[key + "Exact"] = exact.ToString();
        }

        return json;
    }

    /// <summary>Makes a list.</summary>
    public static JsonArray Array<T>(IEnumerable<T> items, Func<T, JsonNode?> shape) => new(items.Select(shape).ToArray());

    /// <summary>Makes a list of texts.</summary>
    public static JsonArray Array(IEnumerable<string> items) => Array(items, i => JsonValue.Create(i));

    /// <summary>The sex of which odds are told: <c>any</c>, <c>male</c> or <c>female</c>.</summary>
    public static string OddsSex(Sex? sex) => sex switch { null => "any", Sex.Male => "male", _ => "female" };

    /// <summary>A warning.</summary>
    public static JsonObject Of(Warning warning) => new()
    {
        ["code"] = warning.Code,
        ["text"] = warning.Text,
        ["source"] = warning.Sources.Count > 0 ? string.Join("; ", warning.Sources) : warning.Grade,
        ["sources"] = Array(warning.Sources),
        ["severity"] = warning.Severity,
        ["grade"] = warning.Grade,
    };

    /// <summary>The parts of an animal's text: what is seen and what is carried.</summary>
    public static JsonObject WithWords(this JsonObject json, AnimalWords words) => json
        .With("genotype", words.Text)
        .With("notation", words.Notation)
        .With("seen", Array(words.Parts.Where(p => p.IsSeen).Select(p => p.Text)))
        .With("carried", Array(words.Parts.Where(p => !p.IsSeen), p =>
        {
            var part = new JsonObject { ["text"] = p.Text };
            return p.Chance is { } chance ? part.With("probability", chance) : part;
        }));
}
