using System.Globalization;
using System.Text.Json;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Season;

/// <summary>A part of a JSON file that a keeper wrote, read with everything that is wrong told by its place.</summary>
internal sealed class JsonPart
{
    private readonly string _file;
    private readonly string _path;
    private readonly List<AskedWrongly> _problems;

    private JsonPart(string file, string path, JsonElement element, List<AskedWrongly> problems) =>
        (_file, _path, Element, _problems) = (file, path, element, problems);

    public JsonElement Element { get; }

    /// <summary>Opens a file; null where it is no JSON.</summary>
    public static JsonPart? Open(NamedFile file, List<AskedWrongly> problems)
    {
        try
        {
            using var document = JsonDocument.Parse(file.Content, new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
            return new(file.Name, string.Empty, document.RootElement.Clone(), problems);
        }
        catch (JsonException broken)
        {
            problems.Add(new(
                $"{file.Name}, line {((broken.LineNumber ?? 0) + 1).ToString(CultureInfo.InvariantCulture)}",
                "This is no JSON: a comma, quote or bracket is missing or too many here or just before."));
            return null;
        }
    }

    /// <summary>Says what is wrong here.</summary>
    public void Wrong(string text, IReadOnlyList<string>? didYouMean = null) =>
        _problems.Add(new(_path.Length == 0 ? _file : $"{_file}, {_path}", text, DidYouMean: didYouMean));

    /// <summary>Says what is wrong with what one of its keys holds.</summary>
    public void Wrong(string key, string text, IReadOnlyList<string>? didYouMean = null) => Of(key, default).Wrong(text, didYouMean);

    /// <summary>Checks that it is an object of known keys, each once.</summary>
    public bool IsObject(params string[] keys)
    {
        if (Element.ValueKind != JsonValueKind.Object)
        {
            Wrong($"Here stands {Kind(Element)}. Write an object in curly brackets with any of: {string.Join(", ", keys)}.");
            return false;
        }

        foreach (var group in Element.EnumerateObject().GroupBy(p => p.Name, StringComparer.Ordinal))
        {
            if (!keys.Contains(group.Key, StringComparer.Ordinal))
            {
                var near = NearWords.Of(group.Key, keys);
                Wrong($"There is no '{group.Key}' here{(near.Count == 0 ? $". Known are: {string.Join(", ", keys)}" : string.Empty)}.", near);
            }
            else if (group.Count() > 1)
            {
                Wrong($"'{group.Key}' stands twice.");
            }
        }

        return true;
    }

    public bool Has(string key) => Element.ValueKind == JsonValueKind.Object && Element.TryGetProperty(key, out var value) && value.ValueKind != JsonValueKind.Null;

    /// <summary>What a key holds; null: nothing.</summary>
    public JsonPart? Find(string key) => Has(key) ? Of(key, Element.GetProperty(key)) : null;

    public string? Text(string key) => Find(key) switch
    {
        null => null,
        { Element.ValueKind: JsonValueKind.String } part when !string.IsNullOrWhiteSpace(part.Element.GetString()) => part.Element.GetString()!.Trim(),
        var part => Refuse<string>(part, "a text in quotes"),
    };

    public double? Number(string key, double least, double most)
    {
        var part = Find(key);
        if (part is null)
        {
            return null;
        }

        if (part.Element.ValueKind == JsonValueKind.Number && part.Element.TryGetDouble(out var number) && number >= least && number <= most)
        {
            return number;
        }

        var range = double.IsPositiveInfinity(most) ? $"{Write(least)} or more" : $"from {Write(least)} to {Write(most)}";
        Refuse<string>(part, double.IsNegativeInfinity(least) ? "a number" : $"a number, {range}");
        return null;
    }

    public int? Whole(string key, int least, int most)
    {
        var part = Find(key);
        if (part is null)
        {
            return null;
        }

        if (part.Element.ValueKind == JsonValueKind.Number && part.Element.TryGetInt32(out var number) && number >= least && number <= most)
        {
            return number;
        }

        Refuse<string>(part, $"a whole number from {least} to {most}");
        return null;
    }

    public bool? YesNo(string key)
    {
        var part = Find(key);
        if (part is null || part.Element.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return part?.Element.GetBoolean();
        }

        Refuse<string>(part, "true or false");
        return null;
    }

    public DateOnly? Day(string key)
    {
        var text = Text(key);
        if (text is null)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return day;
        }

        Wrong(key, $"'{text}' is no day. Write it as 2026-10-31.");
        return null;
    }

    public IEnumerable<JsonPart> List(string key)
    {
        var part = Find(key);
        if (part is null)
        {
            return [];
        }

        if (part.Element.ValueKind != JsonValueKind.Array)
        {
            Refuse<string>(part, "a list in square brackets");
            return [];
        }

        return part.Element.EnumerateArray().Select((e, i) => new JsonPart(_file, string.Create(CultureInfo.InvariantCulture, $"{part._path}[{i + 1}]"), e, _problems));
    }

    /// <summary>Every key with what it holds.</summary>
    public IEnumerable<(string Key, JsonPart Part)> Entries(string key)
    {
        var part = Find(key);
        if (part is null)
        {
            return [];
        }

        if (part.Element.ValueKind != JsonValueKind.Object)
        {
            Refuse<string>(part, "an object in curly brackets");
            return [];
        }

        return part.Element.EnumerateObject().Select(p => (p.Name, part.Of(p.Name, p.Value)));
    }

    private static string Kind(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Array => "a list",
        JsonValueKind.Object => "an object",
        JsonValueKind.String => $"the text '{element.GetString()}'",
        _ => element.GetRawText(),
    };

    private static string Write(double number) => number.ToString("0.######", CultureInfo.InvariantCulture);

    private static T? Refuse<T>(JsonPart part, string right)
        where T : class
    {
        part.Wrong($"Here stands {Kind(part.Element)}. Write {right}.");
        return null;
    }

    private JsonPart Of(string key, JsonElement element) => new(_file, _path.Length == 0 ? key : $"{_path}.{key}", element, _problems);
}
