using System.Text.Json.Nodes;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.History;

/// <summary>One field of a record that a deed changed, in words; null: empty, or no record.</summary>
public sealed record FieldChange(DeedId DeedId, RecordKind Kind, string Label, string Field, string? Before, string? After);

/// <summary>What did these deeds change?</summary>
public sealed class ShowChanges(Book book)
{
    /// <summary>How many records of one deed are shown; a whole import is not told field by field.</summary>
    public const int MostRecords = 20;

    /// <returns>The changes by deed, in the order in which they were made; parents by their tags of today.</returns>
    public Task<Outcome<IReadOnlyList<FieldChange>>> RunAsync(IReadOnlyList<DeedId> deeds, CancellationToken cancellation) =>
        book.ReadAsync(async db =>
        {
            var changes = await db.Deeds.AsNoTracking()
                .Where(d => deeds.Contains(d.DeedId))
                .SelectMany(d => d.Changes.Where(c => c.Number <= MostRecords))
                .ToListAsync(cancellation);
            var tags = await db.Animals.AsNoTracking().ToDictionaryAsync(a => a.AnimalId.Value, a => a.Tag, cancellation);
            foreach (var clutch in await db.Clutches.AsNoTracking().Select(c => new { c.ClutchId, c.Tag }).ToListAsync(cancellation))
            {
                tags[clutch.ClutchId.Value] = clutch.Tag;
            }

            foreach (var incubator in await db.Incubators.AsNoTracking().Select(i => new { i.IncubatorId, i.Name }).ToListAsync(cancellation))
            {
                tags[incubator.IncubatorId.Value] = incubator.Name;
            }

            return Outcome.Of<IReadOnlyList<FieldChange>>(
                [.. changes.OrderBy(c => c.DeedId.Number).ThenBy(c => c.Number).SelectMany(c => Fields(c, tags))]);
        });

    private static IEnumerable<FieldChange> Fields(Change change, Dictionary<Guid, string> tags)
    {
        var before = Parse(change.Before);
        var after = Parse(change.After);
        foreach (var name in before.Select(p => p.Key).Union(after.Select(p => p.Key), StringComparer.Ordinal))
        {
            if (name is nameof(AnimalSnapshot.Id) or nameof(StatementSnapshot.Animal) or nameof(RouteSnapshot.Steps) or nameof(PhotoSnapshot.Digest) or nameof(ReadingSnapshot.Incubator) || (name == nameof(SeasonSnapshot.Animals) && change.Kind == RecordKind.Season) || JsonNode.DeepEquals(before[name], after[name]))
            {
                continue;
            }

            var (old, now) = (Words(before[name], tags), Words(after[name], tags));
            if (!string.Equals(old, now, StringComparison.Ordinal))
            {
                yield return new(change.DeedId, change.Kind, change.Label, FieldWords.Of(name), FieldWords.Value(name, old), FieldWords.Value(name, now));
            }
        }
    }

    private static JsonObject Parse(string? json) => json is null ? [] : JsonNode.Parse(json)!.AsObject();

    private static string? Words(JsonNode? node, Dictionary<Guid, string> tags) => node switch
    {
        null => null,
        JsonArray { Count: 0 } => null,
        JsonArray array => string.Join(", ", array.Select(item => Words(item, tags))),
        JsonObject date when date[nameof(DateSnapshot.Words)] is { } words => words.ToString(),
        JsonObject other => string.Join(", ", other.Select(p => $"{p.Key} {Words(p.Value, tags)}")),
        _ => node.ToString() is var text && Guid.TryParse(text, out var id) && tags.TryGetValue(id, out var tag)
            ? tag
            : node.ToString() is { Length: > 0 } plain ? plain : null,
    };
}
