using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace Clutchwright.Stock.History;

/// <summary>How the records of one kind go into the history and come back from it.</summary>
internal abstract class RecordForm
{
    public abstract RecordKind Kind { get; }

    /// <summary>Kept JSON as today's program would write it, so that it can be compared.</summary>
    public abstract string Rewrite(string json);

    /// <summary>The state of a record, as JSON.</summary>
    public abstract string Write(object record);

    /// <summary>Adds to a deed what changed in this context of this kind.</summary>
    public abstract void AddChanges(StockContext db, Deed deed);

    /// <summary>The records of these ids, as they are now; those that are there.</summary>
    public abstract Task<IReadOnlyList<KeyValuePair<Guid, object>>> LoadAsync(StockContext db, Guid[] ids, CancellationToken cancellation);

    /// <summary>Brings one record to its state before a change, in the context only.</summary>
    public abstract void PutBack(StockContext db, Change change, Dictionary<Guid, object> known);

    protected static bool IsChanged(EntityEntry entry) => entry.State is EntityState.Added or EntityState.Modified or EntityState.Deleted;
}

/// <summary>The form of a kind whose records stand each by itself.</summary>
/// <typeparam name="T">The record.</typeparam>
/// <typeparam name="TSnapshot">The record as the history keeps it.</typeparam>
internal sealed class RecordForm<T, TSnapshot>(RecordKind kind) : RecordForm
    where T : class
{
    public override RecordKind Kind => kind;

    public required Func<T, Guid> Id { get; init; }

    public required Func<StockContext, Guid[], IQueryable<T>> Among { get; init; }

    public required Func<EntityEntry<T>, TSnapshot> Original { get; init; }

    public required Func<T, TSnapshot> Of { get; init; }

    public required Func<TSnapshot, T> Make { get; init; }

    public required Action<T, TSnapshot> Take { get; init; }

    public required Action<T> NewVersion { get; init; }

    public override string Rewrite(string json) => Snapshots.Write(Snapshots.Read<TSnapshot>(json));

    public override string Write(object record) => Snapshots.Write(Of((T)record));

    public override void AddChanges(StockContext db, Deed deed)
    {
        foreach (var entry in db.ChangeTracker.Entries<T>().Where(IsChanged).ToList())
        {
            var before = entry.State == EntityState.Added ? null : Snapshots.Write(Original(entry));
            var after = entry.State == EntityState.Deleted ? null : Snapshots.Write(Of(entry.Entity));
            if (!string.Equals(before, after, StringComparison.Ordinal))
            {
                deed.Add(kind, Id(entry.Entity), entry.Entity.ToString()!, before, after);
                NewVersion(entry.Entity);
            }
        }
    }

    public override async Task<IReadOnlyList<KeyValuePair<Guid, object>>> LoadAsync(StockContext db, Guid[] ids, CancellationToken cancellation) =>
        [.. (await Among(db, ids).ToListAsync(cancellation)).Select(record => KeyValuePair.Create(Id(record), (object)record))];

    public override void PutBack(StockContext db, Change change, Dictionary<Guid, object> known)
    {
        if (change.Before is null)
        {
            db.Remove((T)known[change.RecordId]);
            known.Remove(change.RecordId);
        }
        else if (known.TryGetValue(change.RecordId, out var record))
        {
            Take((T)record, Snapshots.Read<TSnapshot>(change.Before));
        }
        else
        {
            var back = Make(Snapshots.Read<TSnapshot>(change.Before));
            db.Add(back);
            known.Add(change.RecordId, back);
        }
    }
}
