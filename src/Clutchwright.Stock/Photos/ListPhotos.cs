using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Photos;

/// <summary>Which photos are kept, and what do they show?</summary>
public sealed class ListPhotos(Book book)
{
    /// <param name="animal">The animal.</param>
    /// <param name="withdrawn">Those that were taken back instead.</param>
    /// <param name="cancellation">Stops the question.</param>
    /// <returns>By the day they were taken, those of no known day last; of one day as they were entered.</returns>
    public Task<Outcome<IReadOnlyList<Photo>>> RunAsync(AnimalId animal, bool withdrawn, CancellationToken cancellation) =>
        book.ReadAsync(async db => Outcome.Of<IReadOnlyList<Photo>>(
        [
            .. (await db.Photos.AsNoTracking().Where(p => p.AnimalId == animal && withdrawn == (p.WithdrawnAt != null)).ToListAsync(cancellation))
                .OrderBy(p => p.Taken?.Earliest ?? DateOnly.MaxValue).ThenBy(p => p.PhotoId.Value),
        ]));

    /// <summary>The picture of a digest, or its small one, as a JPEG file.</summary>
    public Task<Outcome<byte[]>> PictureAsync(string digest, bool isSmall, CancellationToken cancellation) =>
        book.ReadAsync<byte[]>(async db =>
        {
            var contents = db.PhotoContents.AsNoTracking().Where(c => c.Digest == digest);
            return await contents.Select(c => isSmall ? c.Thumbnail : c.Picture).SingleOrDefaultAsync(cancellation) is { } bytes ? bytes : new PhotoProblem.NotFound(default);
        });
}
