using System.Buffers;
using System.Text.Json;
using Clutchwright.Catalogue.TradeTexts;
using Json.Schema;

namespace Clutchwright.Catalogue.Yaml;

/// <summary>Checks a file's tree against the published schema, and says what breaks it in words a keeper of data can act on.</summary>
internal sealed class SchemaCheck
{
    private const string RootId = "urn:clutchwright:catalogue";
    private static readonly Lazy<SchemaCheck> Only = new(Load);
    private readonly JsonElement _root;
    private readonly Dictionary<string, JsonSchema> _kinds;
    private readonly Lock _gate = new();

    private SchemaCheck(JsonElement root, Dictionary<string, JsonSchema> kinds)
    {
        _root = root;
        _kinds = kinds;
    }

    public static SchemaCheck Published => Only.Value;

    /// <summary>Checks a tree against the definition <c>KIND-file</c>.</summary>
    public void Check(string kind, YamlItem root, Action<int, int, string> report)
    {
        var buffer = new ArrayBufferWriter<byte>(1 << 16);
        using (var writer = new Utf8JsonWriter(buffer))
        {
            root.WriteTo(writer);
        }

        using var document = JsonDocument.Parse(buffer.WrittenMemory);
        lock (_gate)
        {
            var schema = _kinds[kind];
            if (schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.Flag }).IsValid)
            {
                return;
            }

            var results = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
            var told = false;
            foreach (var fault in results.Details ?? [])
            {
                told |= Tell(fault, root, report);
            }

            if (!told)
            {
                report(root.Line, root.Column, $"The file does not follow {kind}-file of the schema.");
            }
        }
    }

    private static SchemaCheck Load()
    {
        using var stream = typeof(SchemaCheck).Assembly.GetManifestResourceStream("catalogue.schema.json")!;
        using var reader = new StreamReader(stream);
        var text = reader.ReadToEnd();

        // A registry of our own: the global one refuses a second copy of the same id in one process.
        var options = new BuildOptions { SchemaRegistry = new SchemaRegistry() };
        _ = JsonSchema.FromText(text, options);
        using var document = JsonDocument.Parse(text);
        var root = document.RootElement.Clone();
        var kinds = root.GetProperty("$defs").EnumerateObject()
            .Where(d => d.Name.EndsWith("-file", StringComparison.Ordinal))
            .ToDictionary(
                d => d.Name[..^"-file".Length],
                d => JsonSchema.FromText($$"""{"$ref":"{{RootId}}#/$defs/{{d.Name}}"}""", options),
                StringComparer.Ordinal);
        return new(root, kinds);
    }

    private bool Tell(EvaluationResults fault, YamlItem root, Action<int, int, string> report)
    {
        if (fault.IsValid || fault.Errors is not { Count: > 0 } errors)
        {
            return false;
        }

        var (item, key) = Find(root, fault.InstanceLocation.ToString());
        var location = fault.SchemaLocation.ToString();
        var pointer = location[(location.IndexOf('#', StringComparison.Ordinal) + 1)..];
        foreach (var error in errors)
        {
            var text = Words(error.Key, item, key, pointer);
            var place = error.Key.Length == 0 && key is not null ? key : item;
            report(place.Line, place.Column, text);
        }

        return true;
    }

    private string Words(string keyword, YamlItem item, YamlScalar? key, string pointer)
    {
        var schema = At(pointer);
        var named = key is null ? "This" : $"'{key.Text}'";
        switch (keyword)
        {
            case "": // a key that additionalProperties: false keeps out
                var known = Known(pointer);
                return $"Unknown key '{key?.Text}'{Spelling.DidYouMean(key?.Text ?? "", known)}; known keys: {string.Join(", ", known)}.";
            case "required":
                var missing = schema.GetProperty("required").EnumerateArray()
                    .Select(r => r.GetString()!)
                    .Where(r => item is YamlMap map && map[r] is null)
                    .Select(r => $"'{r}'");
                return $"Missing here: {string.Join(", ", missing)}.";
            case "enum":
                var allowed = schema.GetProperty("enum").EnumerateArray().Select(e => e.ToString()).ToArray();
                return $"{named} is {Value(item)}{Spelling.DidYouMean((item as YamlScalar)?.Text ?? "", allowed)}; it must be one of: {string.Join(", ", allowed)}.";
            case "const":
                return $"{named} is {Value(item)}; it must be {schema.GetProperty("const")}.";
            case "type":
                var type = schema.GetProperty("type");
                var types = type.ValueKind == JsonValueKind.Array ? type.EnumerateArray().Select(t => t.ToString()) : [type.ToString()];
                return $"{named} is {Value(item)}; it must be {string.Join(" or ", types.Select(TypeWord))}.";
            case "pattern":
                return schema.TryGetProperty("description", out var description)
                    ? $"{named} is {Value(item)}; it must be {description.GetString()}."
                    : item is YamlScalar { Text: var text } && string.IsNullOrWhiteSpace(text)
                        ? $"{named} is empty; write a text or leave the key out."
                        : $"{named} is {Value(item)}; it must match {schema.GetProperty("pattern").GetString()}.";
            case "minItems":
                return $"{named} is an empty list; it needs at least {schema.GetProperty("minItems")}.";
            case "minimum":
                return $"{named} is {Value(item)}; it must be at least {schema.GetProperty("minimum")}.";
            case "maximum":
                return $"{named} is {Value(item)}; it must be at most {schema.GetProperty("maximum")}.";
            case "exclusiveMinimum":
                return $"{named} is {Value(item)}; it must be more than {schema.GetProperty("exclusiveMinimum")}.";
            default:
                return $"{named} breaks the rule '{keyword}' of the schema.";
        }
    }

    private static string Value(YamlItem item) => item switch
    {
        YamlScalar { IsNull: true } => "empty",
        YamlScalar scalar => $"'{scalar.Text}'",
        YamlList => "a list",
        _ => "a mapping",
    };

    private static string TypeWord(string type) => type switch
    {
        "array" => "a list",
        "object" => "a mapping",
        "string" => "text",
        "integer" => "a whole number",
        "number" => "a number",
        "boolean" => "true or false",
        _ => type,
    };

    private JsonElement At(string pointer)
    {
        var element = _root;
        foreach (var step in pointer.Split('/').Skip(1).Select(Unescape))
        {
            // Below `items` and `additionalProperties` the package adds a step of its own to the location.
            if (element.ValueKind != JsonValueKind.Object || !element.TryGetProperty(step, out element))
            {
                return default;
            }
        }

        return element;
    }

    private string[] Known(string pointer)
    {
        var parent = pointer[..pointer.LastIndexOf("/additionalProperties", StringComparison.Ordinal)];
        return At(parent).GetProperty("properties").EnumerateObject().Select(p => p.Name).ToArray();
    }

    private static (YamlItem Item, YamlScalar? Key) Find(YamlItem root, string pointer)
    {
        var (item, key) = (root, (YamlScalar?)null);
        foreach (var step in pointer.Split('/').Skip(1).Select(Unescape))
        {
            switch (item)
            {
                case YamlMap map when map.Find(step) is { } entry:
                    (item, key) = (entry.Value, entry.Key);
                    break;
                case YamlList list:
                    item = list.Items[int.Parse(step, System.Globalization.CultureInfo.InvariantCulture)];
                    break;
            }
        }

        return (item, key);
    }

    private static string Unescape(string step) =>
        step.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);
}
