using System.Diagnostics;
using Clutchwright.Stock.Storage;
using Microsoft.Data.Sqlite;

namespace Clutchwright.Stock.Backups;

/// <summary>A backup that was made and read back: where, how large, how long it took, and what it holds.</summary>
public sealed record BackupMade(string File, long Bytes, TimeSpan Took, DateTime MadeAt, BookContents Contents);

/// <summary>Writes everything that the book holds into one file, while others go on reading and writing.</summary>
/// <remarks>The file is a book in SQLite's format, whatever database the book lies on. It is of one moment. It gets its name only after it
/// was opened as a book, looked through, compared with the book as of that moment, and is on the disk.</remarks>
public sealed class BackupBook(Book book)
{
    /// <summary>The ending of a backup's name.</summary>
    public const string Extension = BackupFile.Extension;

    /// <param name="file">Where; its folder is made, and a file that is there is not overwritten.</param>
    /// <param name="cancellation">Stops it; no file is left then.</param>
    public async Task<Outcome<BackupMade>> RunAsync(string file, CancellationToken cancellation)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(file);
        var path = Path.GetFullPath(file);
        var started = Stopwatch.GetTimestamp();
        var at = book.Now;
        var unfinished = SafeFile.Unfinished(path);
        try
        {
            if (Path.Exists(path))
            {
                return new BackupProblem.FileThere(path);
            }

            Directory.CreateDirectory(Path.GetDirectoryName(path)!);

            // The copy is looked through while the book is read as of the same moment.
            var copied = await book.CopyToAsync(unfinished, () => BackupFile.ReadAsync(unfinished, cancellation), cancellation);
            if (!copied.IsDone)
            {
                // The book itself is only read: a disk that fails is the one written to.
                return copied.Problem is StorageProblem.DiskFailed failed ? new BackupProblem.FileUnusable(path, failed.Reason) : copied.Problem;
            }

            var (held, read) = copied.Value;
            if (!read.IsDone)
            {
                return read.Problem is BackupProblem.NotABackup damaged ? damaged with { File = path } : read.Problem;
            }

            if (held.Differences(read.Value.Contents) is { Count: > 0 } different)
            {
                return new BackupProblem.NotAsTheBook(path, different);
            }

            await BackupSeal.PutAsync(unfinished, read.Value.Sum, cancellation);
            SafeFile.Finish(unfinished, path);
            return new BackupMade(path, new FileInfo(path).Length, Stopwatch.GetElapsedTime(started), at, read.Value.Contents);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or SqliteException)
        {
            return Path.Exists(path) ? new BackupProblem.FileThere(path) : new BackupProblem.FileUnusable(path, exception.Message);
        }
        finally
        {
            Sweep(unfinished);
        }
    }

    private static void Sweep(string unfinished)
    {
        try
        {
            SafeFile.Discard(unfinished);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // It could not be written there, and so there is nothing to take away.
        }
    }
}
