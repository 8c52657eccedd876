using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.History;

/// <summary>A date in doubt as the history keeps it.</summary>
internal sealed record DateSnapshot(DateOnly Earliest, DateOnly Latest, string Words)
{
    public static DateSnapshot? Of(DateRange? range) => range is null ? null : new(range.Earliest, range.Latest, range.Words);

    public DateRange ToRange() => new(Earliest, Latest, Words);
}

/// <summary>An animal as the history keeps it. A new field must have a default, so that old history can still be read.</summary>
internal sealed record AnimalSnapshot(
    Guid Id,
    string Tag,
    string? Name,
    Sex? Sex,
    DateSnapshot? Hatched,
    Guid? Sire,
    Guid? Dam,
    IReadOnlyList<Guid> PossibleSires,
    AnimalStatus Status,
    double? MassGrams,
    string Notes,
    DateTime? BinnedAt)
{
    public static AnimalSnapshot Of(Animal animal, IEnumerable<AnimalId> possibleSires) => new(
        animal.AnimalId.Value,
        animal.Tag,
        animal.Name,
        animal.Sex,
        DateSnapshot.Of(animal.Hatched),
        animal.SireId?.Value,
        animal.DamId?.Value,
        [.. possibleSires.Select(sire => sire.Value).Order()],
        animal.Status,
        animal.MassGrams,
        animal.Notes,
        animal.BinnedAt);
}

/// <summary>A statement as the history keeps it. A new field must have a default, so that old history can still be read.</summary>
internal sealed record StatementSnapshot(
    Guid Id,
    Guid Animal,
    StatementKind Kind,
    string Text,
    DateSnapshot? When,
    double Confidence,
    string? By,
    DnaTest? Test,
    DateTime? WithdrawnAt)
{
    public static StatementSnapshot Of(Statement statement) => new(
        statement.StatementId.Value,
        statement.AnimalId.Value,
        statement.Kind,
        statement.Text,
        DateSnapshot.Of(statement.When),
        statement.Confidence,
        statement.By,
        statement.Test,
        statement.WithdrawnAt);
}

/// <summary>Turns records into the JSON of the history and back.</summary>
internal static class Snapshots
{
    private static readonly JsonSerializerOptions Options = new()
    {
        Converters = { new JsonStringEnumConverter() },
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        RespectNullableAnnotations = true,
    };

    public static string Write<T>(T snapshot) => JsonSerializer.Serialize(snapshot, Options);

    public static T Read<T>(string json) => JsonSerializer.Deserialize<T>(json, Options)
        ?? throw new InvalidOperationException("The history holds an empty record.");

    /// <summary>Writes kept JSON as today's program would write it, so that it can be compared.</summary>
    public static string? Rewrite(RecordKind kind, string? json) => json is null ? null : kind switch
    {
        RecordKind.Animal => Write(Read<AnimalSnapshot>(json)),
        RecordKind.Statement => Write(Read<StatementSnapshot>(json)),
    };

    /// <summary>The names of the fields in which two states differ; none if one of them is no state.</summary>
    public static IReadOnlyList<string> Differences(string? one, string? other)
    {
        if (one is null || other is null)
        {
            return [];
        }

        var first = JsonNode.Parse(one)!.AsObject();
        var second = JsonNode.Parse(other)!.AsObject();
        return [.. first.Select(p => p.Key).Union(second.Select(p => p.Key), StringComparer.Ordinal)
            .Where(name => !JsonNode.DeepEquals(first[name], second[name]))];
    }
}
