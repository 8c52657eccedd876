using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Backups;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Photos;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Settings;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Books;

/// <summary>Fills the book with everything that a file holds: all of it or nothing, by one deed. What was in the book before, its history too, is
/// backed up and gives way.</summary>
/// <remarks>A book of its own is filled first, beside the keeper's, and then put in its place as a backup is.</remarks>
public sealed class ComeBack(Book book, TimeProvider clock)
{
    private const int PicturesAtOnce = 4;

    /// <param name="file">The file.</param>
    /// <param name="isReplacing">Whether what the book holds may go; without it only an empty book is filled.</param>
    /// <param name="last">The last deed of the book as the keeper saw it. If another was done since, nothing happens.</param>
    /// <param name="before">Where the backup of the book as it is goes. None is made of an empty book.</param>
    /// <param name="workFolder">Where there is room for the book that is filled first.</param>
    /// <param name="photos">Makes the small pictures.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops it; the book is as it was then.</param>
    public async Task<Outcome<Restored>> RunAsync(
        BookFile file, bool isReplacing, DeedMark? last, string before, string workFolder, PhotoReader photos, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(photos);
        if (!isReplacing)
        {
            var present = await new CountBook(book).RunAsync(cancellation);
            if (!present.IsDone)
            {
                return present.Problem;
            }

            if (!present.Value.IsEmpty)
            {
                return new BookFileProblem.BookNotEmpty(present.Value.Animals, present.Value.Deeds);
            }
        }

        var staged = await StagedBackup.FillAsync(file.Path, workFolder, clock, filled => FillAsync(filled, file, photos, who, cancellation), cancellation);
        if (!staged.IsDone)
        {
            return staged.Problem;
        }

        using var copy = staged.Value;
        return await new RestoreBook(book).RunAsync(copy, last, before, cancellation);
    }

    /// <summary>Fills an empty book.</summary>
    internal static async Task<Problem?> FillAsync(Book filled, BookFile file, PhotoReader photos, string who, CancellationToken cancellation)
    {
        try
        {
            var written = await filled.WriteAsync<BookFile>(
                async db =>
                {
                    if (await AddPicturesAsync(db, file, photos, cancellation) is { } problem)
                    {
                        return problem;
                    }

                    Add(db, file.Records);
                    await db.RecordAsync(who, $"Came back with everything from {file.Name}", filled.Now, cancellation);
                    return file;
                },
                cancellation);
            return written.Problem;
        }
        catch (InvalidDataException)
        {
            return new BookFileProblem.Refused([new(file.Name, null, "the ZIP was changed since it was looked at.")]);
        }
        catch (DbUpdateException exception)
        {
            // A rule of the tables that was not asked before; the words are the database's.
            return new BookFileProblem.Refused([new(file.Name, null, $"the book cannot hold it: {(exception.InnerException ?? exception).Message}")]);
        }
    }

    private static async Task<Problem?> AddPicturesAsync(StockContext db, BookFile file, PhotoReader photos, CancellationToken cancellation)
    {
        // Read one after another, made small side by side.
        foreach (var some in file.Records.Photos.DistinctBy(p => p.Digest).Chunk(PicturesAtOnce * Environment.ProcessorCount))
        {
            var read = new List<(PhotoRecord Photo, byte[]? Picture, Task<byte[]?> Thumbnail)>();
            foreach (var photo in some)
            {
                var picture = await file.PictureAsync(photo, cancellation);
                read.Add((photo, picture, picture is null ? Task.FromResult<byte[]?>(null) : Task.Run(() => photos.Thumbnail(picture), cancellation)));
            }

            await Task.WhenAll(read.Select(r => r.Thumbnail));
            foreach (var (photo, picture, made) in read)
            {
                if (picture is null || await made is not { } thumbnail)
                {
                    return new BookFileProblem.Refused([new(BookZip.Plain(photo.File), null, "it is no picture that can be shown, or was changed since it was looked at.")]);
                }

                await PhotoContent.KeepAsync(db, photo.Digest, picture, thumbnail, cancellation);
            }
        }

        return null;
    }

    private static void Add(StockContext db, BookRecords records)
    {
        db.ChangeTracker.AutoDetectChangesEnabled = false;
        foreach (var snapshot in records.Animals)
        {
            var animal = new Animal(new AnimalId(snapshot.Id));
            animal.Take(snapshot);
            db.Animals.Add(animal);
        }

        db.AddRange(records.Statements.Select(s => new Statement(s)));
        db.AddRange(records.Incubators.Select(i => new Incubator(i)));
        db.AddRange(records.Readings.Select(r => new Reading(r)));
        db.AddRange(records.Clutches.Select(c => new Clutch(c)));
        db.AddRange(records.Log.Select(h => new Happening(h)));
        db.AddRange(records.Photos.Select(p => new Photo(p.ToSnapshot())));
        db.AddRange(records.Routes.Select(r => new AdoptedRoute(r)));
        db.AddRange(records.Seasons.Select(s => new KeptSeason(s)));
        db.AddRange(records.Settings.Select(s => new KeptSetting(s)));
    }
}
