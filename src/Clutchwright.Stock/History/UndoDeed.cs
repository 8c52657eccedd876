using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.History;

/// <summary>Brings every record that a deed changed back to what it was before. Undoing is a deed itself, so it can be undone.</summary>
public sealed class UndoDeed(Book book)
{
    /// <returns>The deed that undid it, or why it cannot be undone: a later change would be lost
    /// (<see cref="HistoryProblem.ChangedSince"/>), a record is in use (<see cref="HistoryProblem.StillUsed"/>), or a rule
    /// would be broken (<see cref="HistoryProblem.NoLongerAllowed"/>).</returns>
    public async Task<Outcome<DeedLine>> RunAsync(DeedId deed, string who, CancellationToken cancellation)
    {
        var done = await RunAsync([deed], who, cancellation);
        return done.IsDone ? done.Value[0] : done.Problem;
    }

    /// <summary>Undoes several, the latest first: all of them or, if one cannot be undone, none.</summary>
    /// <param name="deeds">The deeds, in any order.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops before anything is kept.</param>
    /// <returns>The deeds that undid them, in the order in which they were done.</returns>
    public Task<Outcome<IReadOnlyList<DeedLine>>> RunAsync(IReadOnlyCollection<DeedId> deeds, string who, CancellationToken cancellation) =>
        book.WriteAsync<IReadOnlyList<DeedLine>>(
            async db =>
            {
                var done = new List<DeedLine>();
                foreach (var deed in deeds.Distinct().OrderByDescending(d => d.Number))
                {
                    db.ChangeTracker.Clear();
                    var undone = await UndoAsync(db, deed, who, cancellation);
                    if (!undone.IsDone)
                    {
                        return undone.Problem;
                    }

                    done.Add(undone.Value);
                }

                return done;
            },
            cancellation);

    private async Task<Outcome<DeedLine>> UndoAsync(StockContext db, DeedId deed, string who, CancellationToken cancellation)
    {
        var undone = await db.Deeds.Include(d => d.Changes).AsNoTracking().SingleOrDefaultAsync(d => d.DeedId == deed, cancellation);
        if (undone is null)
        {
            return new HistoryProblem.NoSuchDeed(deed);
        }

        var now = await CurrentRecords.LoadAsync(db, undone.Changes, cancellation);
        if (await ChangedSinceAsync(db, undone, now, cancellation) is { Count: > 0 } changed)
        {
            return new HistoryProblem.ChangedSince(deed) { Records = changed };
        }

        if (await StillUsedAsync(db, undone, cancellation) is { } used)
        {
            return used;
        }

        now.PutBack(db, undone.Changes);
        if (await NoLongerAllowedAsync(db, undone, now, cancellation) is { } forbidden)
        {
            return forbidden;
        }

        var undoing = await db.RecordAsync(who, $"Undid {deed}: {undone.Words}", book.Now, cancellation, deed)
            ?? throw new InvalidOperationException($"Deed {deed} changed nothing.");
        return new DeedLine(undoing.DeedId, undoing.When, undoing.Who, undoing.Words, undoing.Changes.Count, deed, null);
    }

    private static async Task<List<ChangedRecord>> ChangedSinceAsync(
        StockContext db, Deed undone, CurrentRecords now, CancellationToken cancellation)
    {
        var changed = new List<ChangedRecord>();
        foreach (var change in undone.Changes)
        {
            var current = now.StateOf(change);
            var left = Snapshots.Rewrite(change.Kind, change.After);
            if (string.Equals(current, left, StringComparison.Ordinal))
            {
                continue;
            }

            var last = await db.Deeds
                .Where(d => db.Changes.Where(c => c.RecordId == change.RecordId).Select(c => c.DeedId).Contains(d.DeedId))
                .OrderByDescending(d => d.DeedId)
                .Select(d => new { d.DeedId, d.Words })
                .FirstAsync(cancellation);
            changed.Add(new ChangedRecord(change.Kind, change.RecordId, change.Label, last.DeedId, last.Words)
            {
                Fields = Snapshots.Differences(left, current),
            });
        }

        return changed;
    }

    /// <summary>A record that the deed added can go only if no other record names it. One that the deed changed names it no more once it is put back.</summary>
    private static async Task<HistoryProblem?> StillUsedAsync(StockContext db, Deed undone, CancellationToken cancellation)
    {
        var going = undone.Changes.Where(c => c.Before is null).ToDictionary(c => c.RecordId, c => c.Label);
        var changed = undone.Changes.Select(c => c.RecordId).ToHashSet();
        foreach (var use in await RecordUses.OfAsync(db, [.. undone.Changes.Where(c => c.Before is null)], cancellation))
        {
            if (!changed.Contains(use.By))
            {
                return new HistoryProblem.StillUsed(undone.DeedId, going[use.Of], use.Words);
            }
        }

        return null;
    }

    private static async Task<HistoryProblem?> NoLongerAllowedAsync(
        StockContext db, Deed undone, CurrentRecords now, CancellationToken cancellation)
    {
        if (await TakenNames.OfAsync(db, cancellation) is var (label, taken))
        {
            return new HistoryProblem.NoLongerAllowed(undone.DeedId, label, taken);
        }

        var all = await AnimalFacts.LoadAsync(db, cancellation);
        foreach (var change in undone.Changes.Where(c => c.Kind == RecordKind.Animal))
        {
            all.Remove(new AnimalId(change.RecordId));
        }

        var back = now.AnimalsOutOfBin.ToList();
        foreach (var animal in back)
        {
            all[animal.AnimalId] = AnimalFacts.Of(animal);
        }

        foreach (var (id, problem) in new AnimalRules(all).WhyNot([.. back.Select(animal => animal.AnimalId)]))
        {
            return new HistoryProblem.NoLongerAllowed(undone.DeedId, all[id].Tag, problem.Problem);
        }

        // An animal that goes, or goes to the bin, leaves its offspring without a parent.
        foreach (var change in undone.Changes.Where(c => c.Kind == RecordKind.Animal && !all.ContainsKey(new AnimalId(c.RecordId))))
        {
            var gone = new AnimalId(change.RecordId);
            var offspring = all.Values.Where(a => a.Sire == gone || a.Dam == gone || a.PossibleSires.Contains(gone)).Select(a => a.Tag).ToList();
            if (offspring.Count > 0)
            {
                return new HistoryProblem.NoLongerAllowed(
                    undone.DeedId, change.Label, new AnimalProblem.HasOffspring(change.Label) { Offspring = offspring });
            }
        }

        return null;
    }
}
