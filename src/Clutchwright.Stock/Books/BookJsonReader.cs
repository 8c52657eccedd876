using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using Clutchwright.Stock.Export;

namespace Clutchwright.Stock.Books;

/// <summary>Reads the JSON of the whole book. What it gives has the right form; what is in it is for <see cref="BookRules"/>.</summary>
internal sealed class BookJsonReader(string file, List<BookFileFault> faults)
{
    private static ReadOnlySpan<byte> Mark => [0xEF, 0xBB, 0xBF];

    /// <returns>Null if it cannot be read; then a fault was added.</returns>
    public BookRecords? Read(ReadOnlySpan<byte> json)
    {
        json = json.StartsWith(Mark) ? json[Mark.Length..] : json;
        if (!Utf8.IsValid(json))
        {
            return Say($"line {LineOf(json)}", "it is not UTF-8 text.");
        }

        try
        {
            if (WhyNotThisFormat(json) is { } reason)
            {
                return Say(null, reason);
            }

            var document = JsonSerializer.Deserialize<BookDocument>(json, BookJson.Options);
            if (document is null)
            {
                return Say(null, "it is empty.");
            }

            return document.Units != BookUnits.Only ? Say("units", "masses are in g, temperatures in °C and humidities in %, and nothing else.")
                : WhyNotWhole(document) is { } place ? Say(place, "there is a null in place of a record.")
                : document.ToRecords().Counts.Sum(c => (long)c.Value) > BookFormat.MostRecords
                    ? Say(null, string.Create(CultureInfo.InvariantCulture, $"it holds more than {BookFormat.MostRecords:N0} records."))
                : document.ToRecords();
        }
        catch (JsonException exception)
        {
            return Say(PlaceOf(exception), ReasonOf(exception));
        }
        catch (InvalidOperationException)
        {
            return Say(null, "a text in it is half of a character.");
        }
    }

    private BookRecords? Say(string? place, string reason)
    {
        faults.Add(new(file, place, reason));
        return null;
    }

    /// <summary>Format and version come first, so that a file of another version is told apart from a broken one.</summary>
    private static string? WhyNotThisFormat(ReadOnlySpan<byte> json)
    {
        var reader = new Utf8JsonReader(json);
        if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject
            || !reader.Read() || reader.TokenType != JsonTokenType.PropertyName || !reader.ValueTextEquals("format")
            || !reader.Read() || reader.TokenType != JsonTokenType.String || !reader.ValueTextEquals(BookFormat.Name))
        {
            return $"it is no book: it begins with {{\"format\": \"{BookFormat.Name}\", \"version\": {BookFormat.Version}.";
        }

        if (!reader.Read() || reader.TokenType != JsonTokenType.PropertyName || !reader.ValueTextEquals("version")
            || !reader.Read() || reader.TokenType != JsonTokenType.Number || !reader.TryGetInt32(out var version))
        {
            return $"it does not say its version second: \"version\": {BookFormat.Version}.";
        }

        return version == BookFormat.Version ? null
            : version > BookFormat.Version ? string.Create(CultureInfo.InvariantCulture, $"it is of version {version}, made by a newer program; this one reads version {BookFormat.Version}.")
            : string.Create(CultureInfo.InvariantCulture, $"there is no version {version}; this program reads version {BookFormat.Version}.");
    }

    private static string? WhyNotWhole(BookDocument document)
    {
        foreach (var (key, records) in new (string, IReadOnlyList<object?>)[]
        {
            ("animals", document.Animals), ("statements", document.Statements), ("incubators", document.Incubators), ("readings", document.Readings),
            ("clutches", document.Clutches), ("log", document.Log), ("photos", document.Photos), ("routes", document.Routes), ("seasons", document.Seasons),
            ("settings", document.Settings),
        })
        {
            for (var i = 0; i < records.Count; i++)
            {
                if (records[i] is null)
                {
                    return BookRules.Place(key, i);
                }
            }
        }

        var clutch = document.Clutches.ToList().FindIndex(c => c.Counted.Any(young => young is null));
        var season = document.Seasons.ToList().FindIndex(s => s.Animals.Any(animal => animal is null));
        return clutch >= 0 ? $"{BookRules.Place("clutches", clutch)}.counted" : season >= 0 ? $"{BookRules.Place("seasons", season)}.animals" : null;
    }

    private static string PlaceOf(JsonException exception)
    {
        var line = string.Create(CultureInfo.InvariantCulture, $"line {(exception.LineNumber ?? 0) + 1}");
        return exception.Path is { Length: > 2 } path ? $"{line}, {BookZip.Plain(path[2..])}" : line;
    }

    // The library names its types, which say nothing to a keeper, or repeats the rest of the file.
    private static string ReasonOf(JsonException exception)
    {
        var message = exception.Message;
        return message.Contains("missing required properties", StringComparison.Ordinal)
                ? $"a key is missing: {After(message, "including: ").TrimEnd('.')}."
            : message.Contains("could not be mapped to any", StringComparison.Ordinal) ? $"there is no key {Quoted(message)} here."
            : message.Contains("Duplicate", StringComparison.Ordinal) ? $"the key {Quoted(message)} stands twice."
            : message.Contains("could not be converted", StringComparison.Ordinal) ? "the value is not of the kind that belongs here."
            : message.Contains("doesn't allow null", StringComparison.Ordinal) ? "null cannot stand here."
            : message.Contains("LineNumber: ", StringComparison.Ordinal) ? "it is no JSON from here on."
            : message;
    }

    private static string After(string text, string mark) =>
        text.IndexOf(mark, StringComparison.Ordinal) is >= 0 and var at ? text[(at + mark.Length)..].Split(" Path: ")[0] : text;

    private static string Quoted(string text) => text.Split('\'') is [_, var name, ..] ? $"\"{BookZip.Plain(name)}\"" : "";

    private static int LineOf(ReadOnlySpan<byte> json)
    {
        var line = 1;
        while (Rune.DecodeFromUtf8(json, out var rune, out var length) == System.Buffers.OperationStatus.Done)
        {
            line += rune.Value == '\n' ? 1 : 0;
            json = json[length..];
        }

        return line;
    }
}
