using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Clutches;

/// <summary>Puts a clutch that should not have been entered into the bin, or takes it out again.</summary>
public sealed class BinClutch(Book book)
{
    /// <returns>The clutch; <see cref="ClutchProblem.HasYoung"/> if young of it are in the book.</returns>
    public Task<Outcome<Clutch>> RunAsync(ClutchId clutch, string who, CancellationToken cancellation) =>
        book.WriteAsync<Clutch>(
            async db =>
            {
                var found = await db.Clutches.SingleOrDefaultAsync(c => c.ClutchId == clutch, cancellation);
                if (found is null)
                {
                    return new ClutchProblem.NotFound(string.Empty);
                }

                if (found.BinnedAt is not null)
                {
                    return new ClutchProblem.AlreadyBinned(found.Tag);
                }

                var young = await db.Animals.Where(a => a.ClutchId == clutch && a.BinnedAt == null).OrderBy(a => a.TagOrder).Select(a => a.Tag).ToListAsync(cancellation);
                if (young.Count > 0)
                {
                    return new ClutchProblem.HasYoung(found.Tag) { Young = young };
                }

                found.Bin(book.Now);
                await db.RecordAsync(who, $"Put clutch {found.Tag} in the bin", book.Now, cancellation);
                return found;
            },
            cancellation);

    /// <returns>The clutch; <see cref="ClutchProblem.TagTaken"/> if its id was given to another since.</returns>
    public Task<Outcome<Clutch>> RestoreAsync(ClutchId clutch, string who, CancellationToken cancellation) =>
        book.WriteAsync<Clutch>(
            async db =>
            {
                var found = await db.Clutches.SingleOrDefaultAsync(c => c.ClutchId == clutch, cancellation);
                if (found is null)
                {
                    return new ClutchProblem.NotFound(string.Empty);
                }

                if (found.BinnedAt is null)
                {
                    return new ClutchProblem.NotBinned(found.Tag);
                }

                if (await db.Clutches.AnyAsync(c => c.TagKey == found.TagKey && c.BinnedAt == null, cancellation))
                {
                    return new ClutchProblem.TagTaken(found.Tag);
                }

                found.TakeOutOfBin();
                await db.RecordAsync(who, $"Took clutch {found.Tag} out of the bin", book.Now, cancellation);
                return found;
            },
            cancellation);
}
