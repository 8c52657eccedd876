using System.Globalization;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock;
using Clutchwright.Stock.Backups;

namespace Clutchwright.Desk.Backups;

/// <summary>Puts back what a backup holds, after showing what that would do.</summary>
public sealed class RestoreStock
{
    private const string NoDeed = "none";

    private readonly OpenBook _book;
    private readonly BackUp _backUp;
    private readonly string _workFolder;
    private readonly TimeProvider _clock;

    internal RestoreStock(OpenBook book, BackUp backUp, string workFolder, TimeProvider clock)
    {
        _book = book;
        _backUp = backUp;
        _workFolder = workFolder;
        _clock = clock;
    }

    /// <summary>Compares a backup with the book; writes nothing.</summary>
    public Task<Answer<RestoreAnswer>> PreviewAsync(string file, CancellationToken cancel) =>
        OnCopyAsync<RestoreAnswer, RestorePreview>(
            file,
            staged => new RestoreBook(_book.Book).PreviewAsync(staged, cancel),
            preview => new(
                Path.GetFullPath(file),
                BookAnswer.Of(preview.Backup),
                BookAnswer.Of(preview.Present),
                BookAnswer.StampOf(preview.Common),
                preview.Lost,
                preview.Gained,
                [.. preview.LastLost.Select(d => BookAnswer.StampOf(d)!)],
                preview.IsSame,
                MarkOf(preview.Present.LastDeed)),
            cancel);

    /// <summary>Makes a backup of the book as it is, then replaces all that it holds.</summary>
    /// <param name="file">The backup.</param>
    /// <param name="mark">As the preview gave it: if anything was done since, nothing happens.</param>
    /// <param name="cancel">Stops it; the book is as it was then.</param>
    public Task<Answer<RestoreDone>> RunAsync(string file, string mark, CancellationToken cancel) =>
        OnCopyAsync<RestoreDone, Restored>(
            file,
            async staged =>
            {
                var last = await new CountBook(_book.Book).RunAsync(cancel);
                return !last.IsDone ? last.Problem
                    : MarkOf(last.Value.LastDeed) != mark ? new BackupProblem.BookChanged(last.Value.LastDeed)
                    : await new RestoreBook(_book.Book).RunAsync(staged, last.Value.LastDeed, _backUp.NewFile(BackupReason.BeforeRestoring), cancel);
            },
            done => new(BookAnswer.Of(done.Contents), done.Before is null ? null : BackUp.Of(done.Before)),
            cancel);

    private async Task<Answer<T>> OnCopyAsync<T, TFound>(
        string file, Func<StagedBackup, Task<Outcome<TFound>>> ask, Func<TFound, T> answer, CancellationToken cancel)
        where T : class
        where TFound : notnull =>
        await Task.Run<Answer<T>>(
            async () =>
            {
                var staged = await StagedBackup.OpenAsync(file, _workFolder, _clock, cancel);
                if (!staged.IsDone)
                {
                    return Refusals.Of("file", staged.Problem);
                }

                using var copy = staged.Value;
                var found = await ask(copy);
                return found.IsDone ? answer(found.Value) : Refusals.Of("file", found.Problem);
            },
            cancel);

    /// <summary>The last deed as a preview gives it and takes it back.</summary>
    internal static string MarkOf(DeedMark? deed) =>
        deed is null ? NoDeed : string.Create(CultureInfo.InvariantCulture, $"{deed.Number}-{deed.When.Ticks}");
}
