using System.Text.Json;
using System.Text.Json.Serialization;

namespace Clutchwright.Stock.Storage;

/// <summary>Instants as every database keeps them.</summary>
internal static class Instants
{
    /// <summary>The instant without what is finer than a microsecond.</summary>
    public static DateTime ToMicrosecond(DateTime instant) => instant.AddTicks(-(instant.Ticks % TimeSpan.TicksPerMicrosecond));
}

/// <summary>Writes instants to the microsecond: the history of old books has finer ones, with which no record compares as equal once the
/// book has been on PostgreSQL.</summary>
internal sealed class InstantJson : JsonConverter<DateTime>
{
    public override DateTime Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Instants.ToMicrosecond(reader.GetDateTime());

    public override void Write(Utf8JsonWriter writer, DateTime value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStringValue(Instants.ToMicrosecond(value));
    }
}
