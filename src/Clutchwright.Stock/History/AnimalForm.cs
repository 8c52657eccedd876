using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.History;

/// <summary>The form of animals, whose possible sires are kept with them.</summary>
internal sealed class AnimalForm : RecordForm
{
    public override RecordKind Kind => RecordKind.Animal;

    public override string Rewrite(string json) => Snapshots.Write(Snapshots.Read<AnimalSnapshot>(json));

    public override string Write(object record) => Snapshots.Write(AnimalSnapshot.Of((Animal)record, ((Animal)record).PossibleSireIds));

    public override void AddChanges(StockContext db, Deed deed)
    {
        var sires = db.ChangeTracker.Entries<PossibleSire>().ToLookup(p => p.Entity.OffspringId);
        foreach (var entry in db.ChangeTracker.Entries<Animal>().Where(a => IsChanged(a) || sires[a.Entity.AnimalId].Any(IsChanged)).ToList())
        {
            var own = sires[entry.Entity.AnimalId];
            var before = entry.State == EntityState.Added
                ? null
                : Snapshots.Write(AnimalSnapshot.Original(
                    entry, own.Where(p => p.State != EntityState.Added).Select(p => p.Entity.SireId)));
            var after = entry.State == EntityState.Deleted
                ? null
                : Snapshots.Write(AnimalSnapshot.Of(
                    entry.Entity, own.Where(p => p.State != EntityState.Deleted).Select(p => p.Entity.SireId)));
            if (!string.Equals(before, after, StringComparison.Ordinal))
            {
                deed.Add(RecordKind.Animal, entry.Entity.AnimalId.Value, entry.Entity.Tag, before, after);
                entry.Entity.NewVersion();
            }
        }
    }

    public override async Task<IReadOnlyList<KeyValuePair<Guid, object>>> LoadAsync(StockContext db, Guid[] ids, CancellationToken cancellation)
    {
        var typed = ids.Select(id => new AnimalId(id)).ToArray();
        return [.. (await db.Animals.Where(a => typed.Contains(a.AnimalId)).ToListAsync(cancellation)).Select(a => KeyValuePair.Create(a.AnimalId.Value, (object)a))];
    }

    public override void PutBack(StockContext db, Change change, Dictionary<Guid, object> known)
    {
        if (change.Before is null)
        {
            db.Animals.Remove((Animal)known[change.RecordId]);
            known.Remove(change.RecordId);
        }
        else if (known.TryGetValue(change.RecordId, out var animal))
        {
            ((Animal)animal).Take(Snapshots.Read<AnimalSnapshot>(change.Before));
        }
        else
        {
            var back = new Animal(new AnimalId(change.RecordId));
            known.Add(change.RecordId, back);
            back.Take(Snapshots.Read<AnimalSnapshot>(change.Before));
            db.Animals.Add(back);
        }
    }
}
