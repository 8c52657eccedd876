using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.History;

/// <summary>The records that a deed changed, as they are now.</summary>
internal sealed class CurrentRecords
{
    /// <summary>Few enough for one query on every database.</summary>
    public const int IdsAtOnce = 500;

    private readonly Dictionary<RecordKind, Dictionary<Guid, object>> _records = RecordForms.All.ToDictionary(form => form.Kind, _ => new Dictionary<Guid, object>());

    public IEnumerable<Animal> AnimalsOutOfBin => _records[RecordKind.Animal].Values.Cast<Animal>().Where(animal => animal.BinnedAt is null);

    public static async Task<CurrentRecords> LoadAsync(StockContext db, IReadOnlyCollection<Change> changes, CancellationToken cancellation)
    {
        var records = new CurrentRecords();
        foreach (var form in RecordForms.All)
        {
            foreach (var ids in changes.Where(c => c.Kind == form.Kind).Select(c => c.RecordId).Chunk(IdsAtOnce))
            {
                foreach (var (id, record) in await form.LoadAsync(db, ids, cancellation))
                {
                    records._records[form.Kind].Add(id, record);
                }
            }
        }

        return records;
    }

    /// <summary>The record's state as JSON; null if there is no such record.</summary>
    public string? StateOf(Change change) =>
        _records[change.Kind].TryGetValue(change.RecordId, out var record) ? RecordForms.Of(change.Kind).Write(record) : null;

    /// <summary>Brings the records to their state before the changes, in the context only.</summary>
    public void PutBack(StockContext db, IReadOnlyCollection<Change> changes)
    {
        var going = changes.Where(c => c.Before is null).ToLookup(c => c.Kind);
        var staying = changes.Where(c => c.Before is not null).ToLookup(c => c.Kind);

        // A possible sire can go only after it is named no more.
        db.PossibleSires.RemoveRange(going[RecordKind.Animal].SelectMany(c => ((Animal)_records[RecordKind.Animal][c.RecordId]).PossibleSires).ToList());

        // What names others goes before them, and comes after them.
        foreach (var form in RecordForms.All.Reverse())
        {
            foreach (var change in going[form.Kind])
            {
                form.PutBack(db, change, _records[form.Kind]);
            }
        }

        foreach (var form in RecordForms.All)
        {
            foreach (var change in staying[form.Kind])
            {
                form.PutBack(db, change, _records[form.Kind]);
            }
        }
    }
}
