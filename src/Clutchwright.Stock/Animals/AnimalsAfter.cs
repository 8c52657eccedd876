using Clutchwright.Stock.History;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Animals;

/// <summary>Every animal out of the bin, with its statements, as the book had them right after a deed: reckoned back from the records of today
/// by what the deeds since then wrote down of how each was before.</summary>
public sealed class AnimalsAfter(Book book)
{
    private const int IdsAtOnce = 500;
    private const int MostTries = 5;

    /// <summary>Reckons back.</summary>
    /// <param name="deed">The deed; the default stands for the time before the first.</param>
    /// <param name="cancellation">Stops the question.</param>
    /// <returns>The animals in the order of <see cref="AllAnimals"/>.</returns>
    public Task<Outcome<IReadOnlyList<Animal>>> RunAsync(DeedId deed, CancellationToken cancellation) =>
        book.ReadAsync(async db =>
        {
            // Another program may write while we read: what was read counts only if no deed came between.
            for (var tries = 1; ; tries++)
            {
                var latest = await LatestAsync(db, cancellation);
                var animals = await ReadAsync(db, deed, cancellation);
                if (tries == MostTries || await LatestAsync(db, cancellation) == latest)
                {
                    return Outcome.Of(animals);
                }
            }
        });

    private static Task<DeedId?> LatestAsync(StockContext db, CancellationToken cancellation) =>
        db.Deeds.OrderByDescending(d => d.DeedId).Select(d => (DeedId?)d.DeedId).FirstOrDefaultAsync(cancellation);

    private static async Task<IReadOnlyList<Animal>> ReadAsync(StockContext db, DeedId deed, CancellationToken cancellation)
    {
        var changes = await db.Deeds.AsNoTracking()
            .Where(d => d.DeedId > deed)
            .SelectMany(d => d.Changes)
            .Where(c => c.Kind == RecordKind.Animal || c.Kind == RecordKind.Statement)
            .Select(c => new { c.DeedId, c.Number, c.Kind, c.RecordId, c.Before })
            .OrderBy(c => c.DeedId).ThenBy(c => c.Number)
            .ToListAsync(cancellation);

        // Of each record the first change since then tells how it was.
        var before = changes.GroupBy(c => (c.Kind, c.RecordId)).ToDictionary(g => g.Key, g => g.First().Before);
        var animals = (await AllAnimals.LoadAsync(db, cancellation)).ToDictionary(a => a.AnimalId);
        var statements = animals.Values.SelectMany(a => a.Statements).ToDictionary(s => s.StatementId);
        await AddOfBinnedAsync(db, before.Keys.Where(k => k.Kind == RecordKind.Animal).Select(k => new AnimalId(k.RecordId)).Where(id => !animals.ContainsKey(id)), statements, cancellation);
        var touched = new HashSet<AnimalId>();
        foreach (var ((kind, record), json) in before)
        {
            if (kind == RecordKind.Animal)
            {
                var id = new AnimalId(record);
                animals.Remove(id);
                if (json is not null && Snapshots.Read<AnimalSnapshot>(json) is { BinnedAt: null } was)
                {
                    animals.Add(id, Animal.Of(was, []));
                    touched.Add(id);
                }

                continue;
            }

            var statement = new StatementId(record);
            if (statements.Remove(statement, out var now))
            {
                touched.Add(now.AnimalId);
            }

            if (json is not null && Snapshots.Read<StatementSnapshot>(json) is { WithdrawnAt: null } said)
            {
                statements.Add(statement, new Statement(said));
                touched.Add(statements[statement].AnimalId);
            }
        }

        var spoken = statements.Values.Where(s => touched.Contains(s.AnimalId)).OrderBy(s => s.StatementId.Value).ToLookup(s => s.AnimalId);
        foreach (var id in touched.Where(animals.ContainsKey))
        {
            animals[id] = Animal.Of(AnimalSnapshot.Of(animals[id], animals[id].PossibleSireIds), spoken[id]);
        }

        return [.. animals.Values.OrderBy(a => a.TagOrder, StringComparer.Ordinal).ThenBy(a => a.TagKey, StringComparer.Ordinal)];
    }

    // An animal that is in the bin now may not have been there, and what was said of it stood.
    private static async Task AddOfBinnedAsync(
        StockContext db, IEnumerable<AnimalId> binned, Dictionary<StatementId, Statement> statements, CancellationToken cancellation)
    {
        foreach (var ids in binned.Chunk(IdsAtOnce))
        {
            foreach (var statement in await db.Statements.AsNoTracking()
                .Where(s => ids.Contains(s.AnimalId) && s.WithdrawnAt == null)
                .ToListAsync(cancellation))
            {
                statements.TryAdd(statement.StatementId, statement);
            }
        }
    }
}
