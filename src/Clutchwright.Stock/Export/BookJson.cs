using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Export;

/// <summary>The whole book as JSON: one object, its kinds of records in arrays, each record on a line of its own. The same book gives the same
/// bytes.</summary>
internal static class BookJson
{
    public static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Strict: every key stands once and is known, none is left out, nothing is guessed from a value of another kind.</summary>
    public static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false), new UtcJson(), new AnimalIdJson() },
    };

    /// <summary>Writes it and leaves the stream open.</summary>
    public static async Task WriteAsync(BookRecords records, Stream stream, CancellationToken cancellation)
    {
        await using var writer = new StreamWriter(stream, Utf8, bufferSize: 1 << 16, leaveOpen: true) { NewLine = "\n" };
        await writer.WriteAsync($"{{\n\"format\": \"{BookFormat.Name}\",\n\"version\": {BookFormat.Version},\n\"units\": {{\"mass\": \"g\", \"temperature\": \"°C\", \"humidity\": \"%\"}}");
        await WriteAsync(writer, "animals", records.Animals, cancellation);
        await WriteAsync(writer, "statements", records.Statements, cancellation);
        await WriteAsync(writer, "incubators", records.Incubators, cancellation);
        await WriteAsync(writer, "readings", records.Readings, cancellation);
        await WriteAsync(writer, "clutches", records.Clutches, cancellation);
        await WriteAsync(writer, "log", records.Log, cancellation);
        await WriteAsync(writer, "photos", records.Photos, cancellation);
        await WriteAsync(writer, "routes", records.Routes, cancellation);
        await WriteAsync(writer, "seasons", records.Seasons, cancellation);
        await WriteAsync(writer, "settings", records.Settings, cancellation);
        await writer.WriteAsync("\n}\n");
    }

    private static async Task WriteAsync<T>(StreamWriter writer, string key, IReadOnlyList<T> records, CancellationToken cancellation)
    {
        await writer.WriteAsync($",\n\"{key}\": [");
        for (var i = 0; i < records.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            await writer.WriteAsync(i == 0 ? "\n" : ",\n");
            await writer.WriteAsync(JsonSerializer.Serialize(records[i], Options));
        }

        await writer.WriteAsync(records.Count == 0 ? "]" : "\n]");
    }

    private sealed class UtcJson : JsonConverter<DateTime>
    {
        public override DateTime Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String && reader.TryGetDateTime(out var when) && when.Kind == DateTimeKind.Utc
                ? Instants.ToMicrosecond(when)
                : throw new JsonException("An instant is written in UTC, as 2026-05-01T12:00:00Z.");

        public override void Write(Utf8JsonWriter writer, DateTime value, JsonSerializerOptions options) => writer.WriteStringValue(Instants.ToMicrosecond(value));
    }

    private sealed class AnimalIdJson : JsonConverter<AnimalId>
    {
        public override AnimalId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String && reader.TryGetGuid(out var id)
                ? new(id)
                : throw new JsonException("The id of an animal is a UUID.");

        public override void Write(Utf8JsonWriter writer, AnimalId value, JsonSerializerOptions options) => writer.WriteStringValue(value.Value);
    }
}
