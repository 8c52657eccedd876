using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Photos;

/// <summary>Says something else of a photo, takes it back, or brings it back.</summary>
public sealed class ChangePhoto(Book book)
{
    /// <summary>Changes its day and caption.</summary>
    public Task<Outcome<Photo>> DescribeAsync(PhotoId photo, Guid version, DateRange? taken, string caption, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(caption);
        return book.WriteAsync<Photo>(
            async db =>
            {
                var found = await db.Photos.SingleOrDefaultAsync(p => p.PhotoId == photo && p.WithdrawnAt == null, cancellation);
                if (found is null)
                {
                    return new PhotoProblem.NotFound(photo);
                }

                if (found.Version != version)
                {
                    return new PhotoProblem.ChangedSince(photo);
                }

                var subject = await SubjectAsync(db, found, cancellation);
                if (AddPhoto.WhyNot(subject, taken, caption, book.Now) is { } problem)
                {
                    return problem;
                }

                found.Describe(taken, caption);
                await db.RecordAsync(who, $"Changed of {subject.Tag}: {found}", book.Now, cancellation);
                return found;
            },
            cancellation);
    }

    /// <summary>Takes it back. It stays in the book and can come back.</summary>
    public Task<Outcome<Photo>> WithdrawAsync(PhotoId photo, string who, CancellationToken cancellation) => TurnAsync(photo, isBack: false, who, cancellation);

    /// <summary>Brings back one that was taken back.</summary>
    public Task<Outcome<Photo>> RestoreAsync(PhotoId photo, string who, CancellationToken cancellation) => TurnAsync(photo, isBack: true, who, cancellation);

    private Task<Outcome<Photo>> TurnAsync(PhotoId photo, bool isBack, string who, CancellationToken cancellation) =>
        book.WriteAsync<Photo>(
            async db =>
            {
                var found = await db.Photos.SingleOrDefaultAsync(p => p.PhotoId == photo, cancellation);
                if (found is null)
                {
                    return new PhotoProblem.NotFound(photo);
                }

                if (found.WithdrawnAt is null == isBack)
                {
                    return isBack ? found : new PhotoProblem.AlreadyWithdrawn(photo);
                }

                found.Withdraw(isBack ? null : book.Now);
                await db.RecordAsync(who, $"{(isBack ? "Brought back" : "Took back")} of {(await SubjectAsync(db, found, cancellation)).Tag}: {found}", book.Now, cancellation);
                return found;
            },
            cancellation);

    private static Task<Animal> SubjectAsync(StockContext db, Photo photo, CancellationToken cancellation) =>
        db.Animals.IgnoreAutoIncludes().AsNoTracking().SingleAsync(a => a.AnimalId == photo.AnimalId, cancellation);
}
