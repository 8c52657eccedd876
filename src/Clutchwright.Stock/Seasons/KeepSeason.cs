using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Seasons;

/// <summary>Keeps what is wanted of a season in the book, in place of what was kept of it before.</summary>
public sealed class KeepSeason(Book book)
{
    /// <returns>The season as it is kept; a <see cref="SeasonProblem"/> if nothing was written.</returns>
    public Task<Outcome<KeptSeason>> RunAsync(SeasonEntry entry, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<KeptSeason>(
            async db =>
            {
                var put = await PutAsync(db, entry, cancellation);
                if (put.IsDone)
                {
                    await db.RecordAsync(who, $"Kept the season of {entry.Year}", book.Now, cancellation);
                }

                return put;
            },
            cancellation);
    }

    /// <summary>Brings the season to what is to be kept of it, in the context only.</summary>
    internal static async Task<Outcome<KeptSeason>> PutAsync(StockContext db, SeasonEntry entry, CancellationToken cancellation)
    {
        if (KeptSeason.WhyNot(entry) is { } problem)
        {
            return problem;
        }

        var known = await db.Seasons.SingleOrDefaultAsync(s => s.Year == entry.Year, cancellation);
        if (known?.Version != entry.Version)
        {
            return new SeasonProblem.ChangedSince(entry.Year);
        }

        // An animal that went to the bin since may stay named; it is left out when the season is read.
        var before = known?.Animals.Select(a => a.Animal).ToHashSet() ?? [];
        var named = entry.Animals.Select(a => a.Animal).Except(before).ToArray();
        var here = await db.Animals.IgnoreAutoIncludes().Where(a => a.BinnedAt == null && named.Contains(a.AnimalId)).Select(a => a.AnimalId).ToListAsync(cancellation);
        if (named.Except(here).FirstOrDefault() is var missing && missing != default(AnimalId))
        {
            return new SeasonProblem.AnimalNotFound(entry.Animals.First(a => a.Animal == missing).Name, missing);
        }

        if (known is null)
        {
            known = new(KeptSeasonId.New(), entry);
            db.Seasons.Add(known);
        }
        else
        {
            known.Take(entry);
        }

        return known;
    }
}
