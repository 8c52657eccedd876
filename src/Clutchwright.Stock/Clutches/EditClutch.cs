using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Clutches;

/// <summary>Changes what is recorded of a clutch. Its young in the book get its parents, so that the two never differ.</summary>
public sealed class EditClutch(Book book, CheckTradeText check)
{
    /// <param name="clutch">The clutch.</param>
    /// <param name="version">The <see cref="Clutch.Version"/> that the keeper saw.</param>
    /// <param name="entry">All fields as they are to be.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops before anything is written.</param>
    /// <returns>The clutch as it is now; <see cref="ClutchProblem.ChangedSince"/> if somebody else was faster; <see cref="ClutchProblem.Refused"/> with everything
    /// that is wrong.</returns>
    public Task<Outcome<Clutch>> RunAsync(ClutchId clutch, Guid version, ClutchEntry entry, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<Clutch>(
            async db =>
            {
                var found = await db.Clutches.SingleOrDefaultAsync(c => c.ClutchId == clutch && c.BinnedAt == null, cancellation);
                if (found is null)
                {
                    return new ClutchProblem.NotFound(entry.Tag);
                }

                if (found.Version != version)
                {
                    return new ClutchProblem.ChangedSince(found.Tag);
                }

                var problems = (await ClutchRules.WhyNotAsync(db, found, entry, check, book.Now, cancellation)).ToList();
                if (problems.Count > 0)
                {
                    return new ClutchProblem.Refused(problems);
                }

                var before = Snapshots.Write(ClutchSnapshot.Of(found));
                var tag = found.Tag;
                var hasOtherParents = found.DamId != entry.DamId || !found.Sires.ToHashSet().SetEquals(entry.Sires);
                found.Take(entry);
                if (hasOtherParents && await GiveParentsAsync(db, found, cancellation) is { Count: > 0 } wrong)
                {
                    return new ClutchProblem.YoungRefused(wrong);
                }

                var fields = Snapshots.Differences(before, Snapshots.Write(ClutchSnapshot.Of(found)));
                await db.RecordAsync(who, $"Changed clutch {tag}: {FieldWords.Of(fields)}", book.Now, cancellation);
                return found;
            },
            cancellation);
    }

    private static async Task<List<FieldProblem>> GiveParentsAsync(StockContext db, Clutch clutch, CancellationToken cancellation)
    {
        var young = await db.Animals.Where(a => a.ClutchId == clutch.ClutchId).ToListAsync(cancellation);
        foreach (var animal in young)
        {
            animal.DescendFrom(clutch.DamId, clutch.Sires);
        }

        var all = await AnimalFacts.LoadAsync(db, cancellation);
        var here = young.Where(a => a.BinnedAt is null).ToList();
        foreach (var animal in here)
        {
            all[animal.AnimalId] = AnimalFacts.Of(animal);
        }

        return [.. new AnimalRules(all).WhyNot([.. here.Select(a => a.AnimalId)]).Select(found => found.Problem)];
    }
}
