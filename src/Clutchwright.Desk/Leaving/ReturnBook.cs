using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Backups;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Pictures;
using Clutchwright.Stock;
using Clutchwright.Stock.Backups;
using Clutchwright.Stock.Books;
using Clutchwright.Stock.Export;

namespace Clutchwright.Desk.Leaving;

/// <summary>Everything from a file back into the book, after showing what that would do.</summary>
public sealed class ReturnBook
{

    private static readonly PhotoReader Photos = new(KeptPicture.IsOne, KeptPicture.Thumbnail);

    private readonly OpenBook _book;
    private readonly BackUp _backUp;
    private readonly string _workFolder;
    private readonly TimeProvider _clock;

    internal ReturnBook(OpenBook book, BackUp backUp, string workFolder, TimeProvider clock)
    {
        _book = book;
        _backUp = backUp;
        _workFolder = workFolder;
        _clock = clock;
    }

    /// <summary>Looks through a file and counts; writes nothing.</summary>
    /// <param name="file">The file: a ZIP or JSON as <see cref="LeaveBook"/> writes them.</param>
    /// <param name="cancel">Stops it.</param>
    public Task<Answer<ReturnAnswer>> PreviewAsync(ReturningFile file, CancellationToken cancel) => OnFileAsync<ReturnAnswer>(
        file,
        async read =>
        {
            var present = await new CountBook(_book.Book).RunAsync(cancel);
            return present.IsDone
                ? new ReturnAnswer(read.Name, BookLeft.Named(read.Counts), read.PhotosLeftOut, BookAnswer.Of(present.Value), present.Value.IsEmpty, RestoreStock.MarkOf(present.Value.LastDeed))
                : Refusals.Of(LeaveBook.Disk, present.Problem);
        },
        cancel);

    /// <summary>Fills the book with what the file holds: all of it or nothing.</summary>
    /// <param name="file">The file.</param>
    /// <param name="mark">As the preview gave it: if anything was done since, nothing happens.</param>
    /// <param name="isReplacing">Whether what the book holds may go, after a backup.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops it; the book is as it was then.</param>
    public Task<Answer<ReturnDone>> RunAsync(ReturningFile file, string mark, bool isReplacing, string who, CancellationToken cancel) => OnFileAsync<ReturnDone>(
        file,
        async read =>
        {
            var last = await new CountBook(_book.Book).RunAsync(cancel);
            if (!last.IsDone)
            {
                return Refusals.Of(LeaveBook.Disk, last.Problem);
            }

            if (RestoreStock.MarkOf(last.Value.LastDeed) != mark)
            {
                return Refusals.Of("book", new BackupProblem.BookChanged(last.Value.LastDeed));
            }

            var done = await new ComeBack(_book.Book, _clock).RunAsync(
                read, isReplacing, last.Value.LastDeed, _backUp.NewFile(BackupReason.BeforeRestoring), _workFolder, Photos, who, cancel);
            return done.IsDone
                ? new ReturnDone(BookAnswer.Of(done.Value.Contents), done.Value.Before is { } before ? BackUp.Of(before) : null)
                : Of(file, done.Problem);
        },
        cancel);

    private static async Task<Answer<T>> OnFileAsync<T>(ReturningFile file, Func<BookFile, Task<Answer<T>>> ask, CancellationToken cancel)
        where T : class => await Task.Run(
            async () =>
            {
                var opened = await BookFile.OpenAsync(file.Path, file.Called, file.IsWithoutPhotos, Photos, cancel);
                if (!opened.IsDone)
                {
                    return Of(file, opened.Problem);
                }

                using var read = opened.Value;
                return await ask(read);
            },
            cancel);

    // Each fault by itself, with the place where it is.
    private static AskedWrongly[] Of(ReturningFile file, Problem problem) => problem switch
    {
        BookFileProblem.Refused refused => [.. refused.Faults.Select(f => new AskedWrongly(f.Place is null ? f.File : $"{f.File}, {f.Place}", f.Reason))],
        BookFileProblem.PhotosMissing => Refusals.Of("file", problem),
        BookFileProblem.BookNotEmpty => Refusals.Of("book", problem),
        BookFileProblem.FileUnusable unusable when file.Called is { } called => Refusals.Of(LeaveBook.Disk, unusable with { File = called }),
        _ => Refusals.Of(LeaveBook.Disk, problem),
    };
}

/// <summary>A file that everything comes back from.</summary>
/// <param name="Path">Where it lies.</param>
/// <param name="Called">What the keeper calls it; <c>null</c>: by its name there.</param>
/// <param name="IsWithoutPhotos">Whether the photos of a file without pictures may stay behind.</param>
public sealed record ReturningFile(string Path, string? Called = null, bool IsWithoutPhotos = false);
