using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace Clutchwright.Stock.History;

/// <summary>A date in doubt as the history keeps it.</summary>
internal sealed record DateSnapshot(DateOnly Earliest, DateOnly Latest, string Words)
{
    public static DateSnapshot? Of(DateRange? range) => range is null ? null : new(range.Earliest, range.Latest, range.Words);

    /// <summary>The date as it was loaded.</summary>
    public static DateSnapshot? Original(ComplexPropertyEntry property) =>
        property.Property(nameof(DateRange.Words)).OriginalValue is string words
            ? new(
                (DateOnly)property.Property(nameof(DateRange.Earliest)).OriginalValue!,
                (DateOnly)property.Property(nameof(DateRange.Latest)).OriginalValue!,
                words)
            : null;

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
    DateTime? BinnedAt,
    Guid? Clutch = null)
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
        animal.BinnedAt,
        animal.ClutchId?.Value);

    /// <summary>The animal as it was loaded.</summary>
    public static AnimalSnapshot Original(EntityEntry<Animal> entry, IEnumerable<AnimalId> possibleSires) => new(
        entry.Entity.AnimalId.Value,
        entry.Property(a => a.Tag).OriginalValue,
        entry.Property(a => a.Name).OriginalValue,
        entry.Property(a => a.Sex).OriginalValue,
        DateSnapshot.Original(entry.ComplexProperty(a => a.Hatched)),
        entry.Property(a => a.SireId).OriginalValue?.Value,
        entry.Property(a => a.DamId).OriginalValue?.Value,
        [.. possibleSires.Select(sire => sire.Value).Order()],
        entry.Property(a => a.Status).OriginalValue,
        entry.Property(a => a.MassGrams).OriginalValue,
        entry.Property(a => a.Notes).OriginalValue,
        entry.Property(a => a.BinnedAt).OriginalValue,
        entry.Property(a => a.ClutchId).OriginalValue?.Value);
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

    /// <summary>The statement as it was loaded.</summary>
    public static StatementSnapshot Original(EntityEntry<Statement> entry) => new(
        entry.Entity.StatementId.Value,
        entry.Property(s => s.AnimalId).OriginalValue.Value,
        entry.Property(s => s.Kind).OriginalValue,
        entry.Property(s => s.Text).OriginalValue,
        DateSnapshot.Original(entry.ComplexProperty(s => s.When)),
        entry.Property(s => s.Confidence).OriginalValue,
        entry.Property(s => s.By).OriginalValue,
        Statement.TestOf(
            entry.Property(s => s.TestFound).OriginalValue,
            entry.Property(s => s.TestSensitivity).OriginalValue,
            entry.Property(s => s.TestSpecificity).OriginalValue),
        entry.Property(s => s.WithdrawnAt).OriginalValue);
}

/// <summary>Turns records into the JSON of the history and back.</summary>
internal static class Snapshots
{
    private static readonly JsonSerializerOptions Options = new()
    {
        Converters = { new JsonStringEnumConverter(), new InstantJson() },
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        RespectNullableAnnotations = true,
    };

    public static string Write<T>(T snapshot) => JsonSerializer.Serialize(snapshot, Options);

    public static T Read<T>(string json) => JsonSerializer.Deserialize<T>(json, Options)
        ?? throw new InvalidOperationException("The history holds an empty record.");

    /// <summary>A JSON text inside a snapshot.</summary>
    public static JsonElement Element(string json) => JsonElement.Parse(json);

    /// <summary>Writes kept JSON as today's program would write it, so that it can be compared.</summary>
    public static string? Rewrite(RecordKind kind, string? json) => json is null ? null : RecordForms.Of(kind).Rewrite(json);

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
