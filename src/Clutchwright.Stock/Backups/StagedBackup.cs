using Clutchwright.Stock.Storage;
using Microsoft.Data.Sqlite;

namespace Clutchwright.Stock.Backups;

/// <summary>A copy of a backup in a folder of its own, looked through and brought to this program's form: what a book is restored from.
/// The file it was copied from is not touched.</summary>
public sealed class StagedBackup : IDisposable
{
    private const string Beginning = "restoring-";

    private readonly string _folder;

    private StagedBackup(string file, string folder, Book book, BookContents contents)
    {
        File = file;
        _folder = folder;
        Book = book;
        Contents = contents;
    }

    /// <summary>The backup it was copied from, as a full path.</summary>
    public string File { get; }

    public BookContents Contents { get; }

    internal Book Book { get; }

    /// <summary>Copies a backup and opens the copy.</summary>
    /// <param name="file">The backup; a book's own file will do too.</param>
    /// <param name="workFolder">Where there is room for the copy; it goes when the result is disposed.</param>
    /// <param name="clock">For the book.</param>
    /// <param name="cancellation">Stops it.</param>
    public static async Task<Outcome<StagedBackup>> OpenAsync(string file, string workFolder, TimeProvider clock, CancellationToken cancellation)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(file);
        var path = Path.GetFullPath(file);
        var folder = Path.Combine(Path.GetFullPath(workFolder), $"{Beginning}{Guid.CreateVersion7():N}");
        Book? book = null;
        var isKept = false;
        try
        {
            if (!await BackupFile.IsDatabaseAsync(path, cancellation))
            {
                return new BackupProblem.NotABackup(path, "it does not begin as one");
            }

            SweepLeftOver(workFolder, clock);
            Directory.CreateDirectory(folder);
            var copy = Path.Combine(folder, Book.FileName);
            var isWhole = await CopyAsync(path, copy, cancellation);
            if (await WhyNotAsync(copy, cancellation) is var damage && (damage is not null || !isWhole))
            {
                return new BackupProblem.NotABackup(path, damage ?? "its bytes are not those that were written");
            }

            var opened = await Book.OpenAsync(BookPlace.InFolder(folder), clock, cancellation);
            if (!opened.IsDone)
            {
                return BackupProblem.OfCopy(path, opened.Problem);
            }

            book = opened.Value;
            var contents = await book.ContentsAsync(cancellation);
            if (!contents.IsDone)
            {
                return BackupProblem.OfCopy(path, contents.Problem);
            }

            isKept = true;
            return new StagedBackup(path, folder, book, contents.Value);
        }
        catch (Exception exception) when (BackupFile.ProblemOf(path, exception) is { } problem)
        {
            return problem;
        }
        finally
        {
            if (!isKept)
            {
                book?.Dispose();
                TakeAway(folder);
            }
        }
    }

    /// <summary>A new book in a folder of its own, filled with what comes from a file of another kind.</summary>
    /// <param name="file">What it is filled from.</param>
    /// <param name="workFolder">Where there is room for it; it goes when the result is disposed.</param>
    /// <param name="clock">For the book.</param>
    /// <param name="fill">Fills it, or says why it cannot.</param>
    /// <param name="cancellation">Stops it.</param>
    internal static async Task<Outcome<StagedBackup>> FillAsync(
        string file, string workFolder, TimeProvider clock, Func<Book, Task<Problem?>> fill, CancellationToken cancellation)
    {
        var folder = Path.Combine(Path.GetFullPath(workFolder), $"{Beginning}{Guid.CreateVersion7():N}");
        Book? book = null;
        var isKept = false;
        try
        {
            SweepLeftOver(workFolder, clock);
            var opened = await Book.OpenAsync(BookPlace.InFolder(folder), clock, cancellation);
            if (!opened.IsDone)
            {
                return BackupProblem.OfCopy(file, opened.Problem);
            }

            book = opened.Value;
            if (await fill(book) is { } problem)
            {
                return problem;
            }

            var contents = await book.ContentsAsync(cancellation);
            if (!contents.IsDone)
            {
                return BackupProblem.OfCopy(file, contents.Problem);
            }

            isKept = true;
            return new StagedBackup(file, folder, book, contents.Value);
        }
        finally
        {
            if (!isKept)
            {
                book?.Dispose();
                TakeAway(folder);
            }
        }
    }

    public void Dispose()
    {
        Book.Dispose();
        TakeAway(_folder);
    }

    private static async Task<bool> CopyAsync(string file, string copy, CancellationToken cancellation)
    {
        // A book in use has commits beside its file; SQLite puts them together.
        if (System.IO.File.Exists(file + "-wal"))
        {
            await using var source = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString());
            await source.OpenAsync(cancellation);
            await using var target = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = copy, Pooling = false }.ToString());
            source.BackupDatabase(target);
            return true;
        }

        await using var read = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        await using var write = new FileStream(copy, FileMode.CreateNew);
        return await BackupSeal.CopyAsync(read, write, cancellation);
    }

    // Before the form of the copy is changed: a file that is damaged, or of another program, would become an empty book.
    private static async Task<string?> WhyNotAsync(string copy, CancellationToken cancellation)
    {
        await using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = copy, Pooling = false }.ToString());
        await connection.OpenAsync(cancellation);
        if (await BackupFile.DamageAsync(connection, cancellation) is { } damage)
        {
            return damage;
        }

        await using var command = connection.CreateCommand();
        command.CommandText = "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name IN ('Animals', 'Deeds', '__EFMigrationsHistory')";
        return await command.ExecuteScalarAsync(cancellation) is 3L ? null : "it holds no book";
    }

    // A program that was killed leaves its copy.
    private static void SweepLeftOver(string workFolder, TimeProvider clock)
    {
        var dayAgo = clock.GetUtcNow().UtcDateTime.AddDays(-1);
        foreach (var left in Directory.Exists(workFolder) ? new DirectoryInfo(workFolder).GetDirectories(Beginning + "*") : [])
        {
            if (left.LastWriteTimeUtc < dayAgo)
            {
                TakeAway(left.FullName);
            }
        }
    }

    private static void TakeAway(string folder)
    {
        try
        {
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder, recursive: true);
            }
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // A copy that could not be taken away does no harm.
        }
    }
}
