using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Years;

/// <summary>Of each kind of record one that has much: a dam with many clutches, the youngest hatchling, the last clutch that hatched.</summary>
internal sealed record Sample(string Animal, string Young, string Clutch, string Incubator, string Digest, string Deed, long Animals, long Deeds, long Photos, long Bytes)
{
    public static async Task<Sample> OfAsync(string folder)
    {
        var opened = await Book.OpenAsync(folder, TimeProvider.System, CancellationToken.None);
        using var book = opened.IsDone ? opened.Value : throw new InvalidOperationException(opened.Problem.ToString());
        var read = await book.ReadAsync<Sample>(async db =>
        {
            var dam = (await db.Clutches.Select(c => c.DamId).ToListAsync()).GroupBy(d => d).OrderByDescending(g => g.Count()).ThenBy(g => g.Key.Value).First().Key;
            var clutch = (await db.Clutches.Where(c => c.Hatched != null).ToListAsync()).MaxBy(c => c.Laid.Latest)!;
            return new Sample(
                await db.Animals.Where(a => a.AnimalId == dam).Select(a => a.Tag).SingleAsync(),
                await db.Animals.Where(a => a.ClutchId == clutch.ClutchId).Select(a => a.Tag).FirstAsync(),
                clutch.Tag,
                (await db.Incubators.FirstAsync()).IncubatorId.Value.ToString(),
                await db.Photos.Select(p => p.Digest).FirstAsync(),
                ((await db.Deeds.CountAsync()) / 2).ToString(System.Globalization.CultureInfo.InvariantCulture),
                await db.Animals.CountAsync(),
                await db.Deeds.CountAsync(),
                await db.Photos.CountAsync(),
                new FileInfo(book.File!).Length);
        });
        return read.IsDone ? read.Value : throw new InvalidOperationException(read.Problem.ToString());
    }
}
