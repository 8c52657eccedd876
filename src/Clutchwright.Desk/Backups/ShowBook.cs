using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Backups;

namespace Clutchwright.Desk.Backups;

/// <summary>What does the book hold, and what is there in case it is lost?</summary>
public sealed class ShowBook
{
    private readonly OpenBook _book;
    private readonly BackupSettings _settings;
    private readonly KeepBackups _kept;
    private readonly TimeProvider _clock;

    internal ShowBook(OpenBook book, BackupSettings settings, KeepBackups kept, TimeProvider clock)
    {
        _book = book;
        _settings = settings;
        _kept = kept;
        _clock = clock;
    }

    /// <summary>Counts what it holds, and looks into the folder of backups.</summary>
    public async Task<Answer<BookStanding>> RunAsync(CancellationToken cancel)
    {
        var counted = await new CountBook(_book.Book).RunAsync(cancel);
        if (!counted.IsDone)
        {
            return Refusals.Of("book", counted.Problem);
        }

        var backups = InFolder(_settings.Folder, _clock);
        var changed = backups is [var newest, ..]
            ? await CountBook.LastDeedOfAsync(newest.File, cancel) != counted.Value.LastDeed
            : (bool?)null;
        return new BookStanding(_book.Book.Place, BookAnswer.Of(counted.Value), _settings, backups, changed, _kept.Failure);
    }

    /// <summary>The backups in a folder, the latest first.</summary>
    internal static IReadOnlyList<KeptBackup> InFolder(string folder, TimeProvider clock) => !Directory.Exists(folder) ? [] :
    [
        .. new DirectoryInfo(folder).GetFiles("*" + BackupBook.Extension)
            .Where(file => file.Extension == BackupBook.Extension && !file.Name.StartsWith('.'))
            .Select(file => Of(file, clock))
            .OrderByDescending(backup => backup.MadeAt)
            .ThenByDescending(backup => backup.Name, StringComparer.Ordinal),
    ];

    private static KeptBackup Of(FileInfo file, TimeProvider clock)
    {
        var named = BackupName.Read(file.Name);
        var made = named is { } known
            ? new DateTimeOffset(known.Local, clock.LocalTimeZone.GetUtcOffset(known.Local))
            : new DateTimeOffset(file.LastWriteTimeUtc, TimeSpan.Zero);
        return new(file.Name, file.FullName, file.Length, made, named?.Reason);
    }
}
