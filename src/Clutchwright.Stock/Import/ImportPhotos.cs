using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Photos;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Import;

/// <summary>Keeps all the new photos of a set, or none, in one deed. One picture at a time is in memory.</summary>
public sealed class ImportPhotos(Book book)
{
    /// <summary>What taking them in would do. Writes nothing.</summary>
    public Task<Outcome<PhotoSetPreview>> PreviewAsync(IReadOnlyList<SetPhoto> photos, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(photos);
        return book.ReadAsync<PhotoSetPreview>(async db => (await CheckAsync(db, photos, book.Now, cancellation)).Preview);
    }

    /// <param name="photos">The pictures, each by the same rules as one that is added by itself.</param>
    /// <param name="source">What the set is called, for the history.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops before anything is kept.</param>
    /// <returns>What was added, or <see cref="ImportProblem.PhotosRefused"/> with every problem, or <see cref="ImportProblem.NothingNew"/>.</returns>
    public Task<Outcome<ImportResult>> RunAsync(IReadOnlyList<SetPhoto> photos, string source, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(photos);
        return book.WriteAsync<ImportResult>(
            async db =>
            {
                var (added, preview) = await CheckAsync(db, photos, book.Now, cancellation);
                if (preview.Problems.Count > 0)
                {
                    return new ImportProblem.PhotosRefused(preview.Problems);
                }

                if (added.Count == 0)
                {
                    return new ImportProblem.NothingNew(photos.Count);
                }

                foreach (var (animal, photo) in added)
                {
                    var entry = photo.Load() with { Taken = photo.Taken, Caption = photo.Caption };
                    await KeepContentAsync(db, photo.Digest, entry, cancellation);
                    db.Photos.Add(new Photo(PhotoId.New(), animal, photo.Digest, entry));
                }

                var words = string.Create(CultureInfo.InvariantCulture, $"Imported {added.Count:N0} {(added.Count == 1 ? "photo" : "photos")} from {source}");
                var deed = await db.RecordAsync(who, words, book.Now, cancellation)
                    ?? throw new InvalidOperationException("An import of new photos changed nothing.");
                return new ImportResult(deed.DeedId, added.Count, photos.Count - added.Count);
            },
            cancellation);
    }

    private static async Task KeepContentAsync(StockContext db, string digest, PhotoEntry entry, CancellationToken cancellation)
    {
        if (!string.Equals(Photo.DigestOf(entry.Picture.Span), digest, StringComparison.Ordinal))
        {
            throw new InvalidOperationException("A picture of a set changed while it was taken in.");
        }

        await PhotoContent.KeepAsync(db, digest, entry.Picture.ToArray(), entry.Thumbnail.ToArray(), cancellation);
    }

    private static async Task<(List<(AnimalId Animal, SetPhoto Photo)> New, PhotoSetPreview Preview)> CheckAsync(
        StockContext db, IReadOnlyList<SetPhoto> photos, DateTime now, CancellationToken cancellation)
    {
        var animals = await db.Animals.AsNoTracking().IgnoreAutoIncludes().Where(a => a.BinnedAt == null).ToDictionaryAsync(a => a.TagKey, StringComparer.Ordinal, cancellation);
        var there = (await db.Photos.AsNoTracking().Where(p => p.WithdrawnAt == null).Select(p => new { p.AnimalId, p.Digest }).ToListAsync(cancellation))
            .Select(p => (p.AnimalId, p.Digest)).ToHashSet();
        var unknown = new UnknownTags([.. animals.Values.Select(a => a.Tag)]);
        var (added, fates, problems) = (new List<(AnimalId, SetPhoto)>(), new List<RowFate>(), new List<PhotoRefused>());
        var first = new Dictionary<(AnimalId, string), string>();
        foreach (var photo in photos)
        {
            if (!animals.TryGetValue(Tags.Key(photo.Animal), out var animal))
            {
                Refuse(photo, unknown.Of(photo.Animal));
            }
            else if (AddPhoto.WhyNot(animal, photo.Taken, photo.Caption, now) is { } problem)
            {
                Refuse(photo, problem);
            }
            else if (!first.TryAdd((animal.AnimalId, photo.Digest), photo.File))
            {
                Refuse(photo, new ImportProblem.PhotoTwice(first[(animal.AnimalId, photo.Digest)]));
            }
            else if (there.Contains((animal.AnimalId, photo.Digest)))
            {
                fates.Add(RowFate.AlreadyThere);
            }
            else
            {
                fates.Add(RowFate.New);
                added.Add((animal.AnimalId, photo));
            }
        }

        return (added, new(fates, problems));

        void Refuse(SetPhoto photo, Problem problem)
        {
            fates.Add(RowFate.Refused);
            problems.Add(new(photo.File, problem));
        }
    }
}
