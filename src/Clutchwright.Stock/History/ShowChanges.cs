using System.Text.Json.Nodes;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Incubators;
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
            var tags = await TagsAsync(db, Named(changes), cancellation);
            return Outcome.Of<IReadOnlyList<FieldChange>>(
                [.. changes.OrderBy(c => c.DeedId.Number).ThenBy(c => c.Number).SelectMany(c => Fields(c, tags))]);
        });

    // Whose ids stand in the changes, so that not the whole stock is read for a few deeds.
    private static HashSet<Guid> Named(List<Change> changes)
    {
        var ids = new HashSet<Guid>();
        foreach (var node in changes.SelectMany(c => new[] { c.Before, c.After }).OfType<string>().Select(json => JsonNode.Parse(json)))
        {
            Gather(node);
        }

        return ids;

        void Gather(JsonNode? node)
        {
            switch (node)
            {
                case JsonObject fields:
                    foreach (var (_, value) in fields)
                    {
                        Gather(value);
                    }

                    break;
                case JsonArray items:
                    foreach (var item in items)
                    {
                        Gather(item);
                    }

                    break;
                case JsonValue value when Guid.TryParse(value.ToString(), out var id):
                    ids.Add(id);
                    break;
            }
        }
    }

    private static async Task<Dictionary<Guid, string>> TagsAsync(StockContext db, HashSet<Guid> named, CancellationToken cancellation)
    {
        var tags = new Dictionary<Guid, string>();
        foreach (var ids in named.Chunk(CurrentRecords.IdsAtOnce))
        {
            AnimalId[] animals = [.. ids.Select(id => new AnimalId(id))];
            ClutchId[] clutches = [.. ids.Select(id => new ClutchId(id))];
            IncubatorId[] incubators = [.. ids.Select(id => new IncubatorId(id))];
            foreach (var animal in await db.Animals.AsNoTracking().Where(a => animals.Contains(a.AnimalId)).Select(a => new { a.AnimalId, a.Tag }).ToListAsync(cancellation))
            {
                tags[animal.AnimalId.Value] = animal.Tag;
            }

            foreach (var clutch in await db.Clutches.AsNoTracking().Where(c => clutches.Contains(c.ClutchId)).Select(c => new { c.ClutchId, c.Tag }).ToListAsync(cancellation))
            {
                tags[clutch.ClutchId.Value] = clutch.Tag;
            }

            foreach (var incubator in await db.Incubators.AsNoTracking().Where(i => incubators.Contains(i.IncubatorId)).Select(i => new { i.IncubatorId, i.Name }).ToListAsync(cancellation))
            {
                tags[incubator.IncubatorId.Value] = incubator.Name;
            }
        }

        return tags;
    }

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
