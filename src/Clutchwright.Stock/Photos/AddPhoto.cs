using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Photos;

/// <summary>Keeps a photo of an animal.</summary>
public sealed class AddPhoto(Book book)
{
    /// <returns>The photo; a <see cref="PhotoProblem"/> if nothing was written.</returns>
    public Task<Outcome<Photo>> RunAsync(AnimalId animal, PhotoEntry entry, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<Photo>(
            async db =>
            {
                var subject = await db.Animals.IgnoreAutoIncludes().AsNoTracking().SingleOrDefaultAsync(a => a.AnimalId == animal && a.BinnedAt == null, cancellation);
                if (subject is null)
                {
                    return new AnimalProblem.NotFound(animal);
                }

                if (entry.Picture.IsEmpty || entry.Thumbnail.IsEmpty || entry.Width < 1 || entry.Height < 1)
                {
                    return new PhotoProblem.Empty();
                }

                if (WhyNot(subject, entry.Taken, entry.Caption, book.Now) is { } problem)
                {
                    return problem;
                }

                var digest = Photo.DigestOf(entry.Picture.Span);
                if (await db.Photos.AnyAsync(p => p.AnimalId == animal && p.Digest == digest && p.WithdrawnAt == null, cancellation))
                {
                    return new PhotoProblem.AlreadyThere(subject.Tag);
                }

                if (!await db.PhotoContents.AnyAsync(c => c.Digest == digest, cancellation))
                {
                    db.PhotoContents.Add(new(digest, entry.Picture.ToArray(), entry.Thumbnail.ToArray()));
                }

                var photo = new Photo(PhotoId.New(), animal, digest, entry);
                db.Photos.Add(photo);
                await db.RecordAsync(who, $"Kept of {subject.Tag}: {photo}", book.Now, cancellation);
                return photo;
            },
            cancellation);
    }

    internal static PhotoProblem? WhyNot(Animal animal, DateRange? taken, string caption, DateTime now) =>
        caption.Trim().Length > Photo.MaxCaptionLength || !TextRules.IsPlainLine(caption.Trim()) ? new PhotoProblem.CaptionInvalid(Photo.MaxCaptionLength)

        // The keeper may be where it is a day later already than in UTC.
        : taken is { } day && day.Earliest > DateOnly.FromDateTime(now).AddDays(1) ? new PhotoProblem.InTheFuture(day)
        : taken is { } early && animal.Hatched is { } hatched && early.Latest < hatched.Earliest ? new PhotoProblem.BeforeItHatched(animal.Tag, hatched, early)
        : null;
}
