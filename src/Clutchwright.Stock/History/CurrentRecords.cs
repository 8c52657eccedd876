using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.History;

/// <summary>The records that a deed changed, as they are now.</summary>
internal sealed class CurrentRecords
{
    /// <summary>Few enough for one query on every database.</summary>
    private const int IdsAtOnce = 500;

    private readonly Dictionary<Guid, Animal> _animals = [];
    private readonly Dictionary<Guid, Statement> _statements = [];

    public IEnumerable<Animal> AnimalsOutOfBin => _animals.Values.Where(animal => animal.BinnedAt is null);

    public static async Task<CurrentRecords> LoadAsync(StockContext db, IReadOnlyList<Change> changes, CancellationToken cancellation)
    {
        var records = new CurrentRecords();
        foreach (var ids in changes.Where(c => c.Kind == RecordKind.Animal).Select(c => new AnimalId(c.RecordId)).Chunk(IdsAtOnce))
        {
            foreach (var animal in await db.Animals.Where(a => ids.Contains(a.AnimalId)).ToListAsync(cancellation))
            {
                records._animals.Add(animal.AnimalId.Value, animal);
            }
        }

        foreach (var ids in changes.Where(c => c.Kind == RecordKind.Statement).Select(c => new StatementId(c.RecordId)).Chunk(IdsAtOnce))
        {
            foreach (var statement in await db.Statements.Where(s => ids.Contains(s.StatementId)).ToListAsync(cancellation))
            {
                records._statements.Add(statement.StatementId.Value, statement);
            }
        }

        return records;
    }

    /// <summary>The record's state as JSON; null if there is no such record.</summary>
    public string? StateOf(Change change) => change.Kind switch
    {
        RecordKind.Animal => _animals.TryGetValue(change.RecordId, out var animal)
            ? Snapshots.Write(AnimalSnapshot.Of(animal, animal.PossibleSireIds))
            : null,
        RecordKind.Statement => _statements.TryGetValue(change.RecordId, out var statement)
            ? Snapshots.Write(StatementSnapshot.Of(statement))
            : null,
    };

    /// <summary>Brings the records to their state before the changes, in the context only.</summary>
    public void PutBack(StockContext db, IReadOnlyList<Change> changes)
    {
        // What is said of an animal goes before it does, and comes after it.
        var statements = changes.Where(c => c.Kind == RecordKind.Statement).ToLookup(c => c.Before is null);
        foreach (var going in statements[true])
        {
            PutBackStatement(db, going);
        }

        // A possible sire can go only after it is named no more.
        var animals = changes.Where(c => c.Kind == RecordKind.Animal).ToList();
        db.PossibleSires.RemoveRange(animals.Where(c => c.Before is null).SelectMany(c => _animals[c.RecordId].PossibleSires).ToList());
        foreach (var animal in animals)
        {
            PutBackAnimal(db, animal);
        }

        foreach (var coming in statements[false])
        {
            PutBackStatement(db, coming);
        }
    }

    private void PutBackAnimal(StockContext db, Change change)
    {
        if (change.Before is null)
        {
            db.Animals.Remove(_animals[change.RecordId]);
            _animals.Remove(change.RecordId);
            return;
        }

        if (!_animals.TryGetValue(change.RecordId, out var animal))
        {
            animal = new Animal(new AnimalId(change.RecordId));
            _animals.Add(change.RecordId, animal);
            animal.Take(Snapshots.Read<AnimalSnapshot>(change.Before));
            db.Animals.Add(animal);
            return;
        }

        animal.Take(Snapshots.Read<AnimalSnapshot>(change.Before));
    }

    private void PutBackStatement(StockContext db, Change change)
    {
        if (change.Before is null)
        {
            db.Statements.Remove(_statements[change.RecordId]);
            _statements.Remove(change.RecordId);
        }
        else if (_statements.TryGetValue(change.RecordId, out var statement))
        {
            statement.Take(Snapshots.Read<StatementSnapshot>(change.Before));
        }
        else
        {
            db.Statements.Add(new Statement(Snapshots.Read<StatementSnapshot>(change.Before)));
        }
    }
}
