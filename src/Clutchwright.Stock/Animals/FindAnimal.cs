using Clutchwright.Stock.History;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Animals;

/// <summary>Everything that is recorded of one animal.</summary>
public sealed class AnimalRecord
{
    public required Animal Animal { get; init; }

    public required AnimalLine? Sire { get; init; }

    public required AnimalLine? Dam { get; init; }

    public required IReadOnlyList<AnimalLine> PossibleSires { get; init; }

    /// <summary>Oldest first, then by tag; without those in the bin.</summary>
    public required IReadOnlyList<AnimalLine> Offspring { get; init; }

    /// <summary>Animals of which it is one of several possible sires; without those in the bin.</summary>
    public required IReadOnlyList<AnimalLine> PossibleOffspring { get; init; }

    /// <summary>In the order in which they were recorded (those of one deed in any); without withdrawn ones.</summary>
    public required IReadOnlyList<Statement> Statements { get; init; }

    /// <summary>The deeds that changed it or what is said of it, the latest first.</summary>
    public required IReadOnlyList<DeedLine> History { get; init; }
}

/// <summary>What is recorded of this animal?</summary>
public sealed class FindAnimal(Book book)
{
    /// <summary>Finds by the identity in the book; also in the bin.</summary>
    public Task<Outcome<AnimalRecord>> RunAsync(AnimalId animal, CancellationToken cancellation) =>
        book.ReadAsync(db => ReadAsync(db, animal, cancellation));

    /// <summary>Finds by the keeper's own id, whatever the case; not in the bin.</summary>
    public Task<Outcome<AnimalRecord>> RunAsync(string tag, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(tag);
        return book.ReadAsync<AnimalRecord>(async db =>
        {
            if (await IdAsync(db, tag, cancellation) is { } found)
            {
                return await ReadAsync(db, found, cancellation);
            }

            var tags = await db.Animals.Where(a => a.BinnedAt == null).Select(a => a.Tag).ToListAsync(cancellation);
            return new AnimalProblem.NoSuchTag(tag, Tags.Nearest(tag, tags));
        });
    }

    /// <summary>Whose is a tag, and nothing else read; not in the bin.</summary>
    /// <returns>The animal; <see cref="AnimalProblem.NoSuchTag"/> without the nearest tag.</returns>
    public Task<Outcome<AnimalId>> IdAsync(string tag, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(tag);
        return book.ReadAsync<AnimalId>(async db => await IdAsync(db, tag, cancellation) is { } found ? found : new AnimalProblem.NoSuchTag(tag, null));
    }

    private static Task<AnimalId?> IdAsync(StockContext db, string tag, CancellationToken cancellation)
    {
        var key = Tags.Key(tag);
        return db.Animals.Where(a => a.TagKey == key && a.BinnedAt == null).Select(a => (AnimalId?)a.AnimalId).SingleOrDefaultAsync(cancellation);
    }

    private static async Task<Outcome<AnimalRecord>> ReadAsync(StockContext db, AnimalId id, CancellationToken cancellation)
    {
        var animal = await db.Animals.AsNoTracking().SingleOrDefaultAsync(a => a.AnimalId == id, cancellation);
        if (animal is null)
        {
            return new AnimalProblem.NotFound(id);
        }

        var parentIds = animal.PossibleSireIds.ToList();
        parentIds.AddRange(new[] { animal.SireId, animal.DamId }.OfType<AnimalId>());
        var parents = await LinesAsync(db.Animals.Where(a => parentIds.Contains(a.AnimalId)), cancellation);
        var living = db.Animals.Where(a => a.BinnedAt == null);
        var offspring = await LinesAsync(living.Where(a => a.SireId == id || a.DamId == id), cancellation);
        var possible = await LinesAsync(living.Where(a => a.PossibleSires.Any(p => p.SireId == id)), cancellation);
        var statements = await db.Statements.AsNoTracking().Where(s => s.AnimalId == id).ToListAsync(cancellation);
        var records = statements.ConvertAll(s => s.StatementId.Value);
        records.Add(id.Value);

        // By the index of the changes: a book of many years has far more deeds than one animal.
        var deeds = await db.Changes.Where(c => records.Contains(c.RecordId)).Select(c => c.DeedId).Distinct().ToListAsync(cancellation);
        return new AnimalRecord
        {
            Animal = animal,
            Sire = parents.Find(parent => parent.AnimalId == animal.SireId),
            Dam = parents.Find(parent => parent.AnimalId == animal.DamId),
            PossibleSires = parents.FindAll(parent => animal.PossibleSireIds.Contains(parent.AnimalId)),
            Offspring = offspring,
            PossibleOffspring = possible,
            Statements = [.. statements.Where(s => s.WithdrawnAt is null).OrderBy(s => s.StatementId.Value)],
            History = await ListDeeds.LinesAsync(
                db, db.Deeds.Where(d => deeds.Contains(d.DeedId)), int.MaxValue, cancellation),
        };
    }

    private static async Task<List<AnimalLine>> LinesAsync(IQueryable<Animal> animals, CancellationToken cancellation) =>
        await animals.OrderBy(a => a.Hatched == null).ThenBy(a => (DateOnly?)a.Hatched!.Earliest).ThenBy(a => a.TagOrder)
            .Select(ListAnimals.ToLine)
            .AsNoTracking()
            .ToListAsync(cancellation);
}
