using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Backups;

/// <summary>A backup that was looked through: what it holds, and the checksum of its bytes.</summary>
internal sealed record BackupRead(BookContents Contents, uint Sum);

/// <summary>A backup: one file, which is a book of its own in SQLite's format. Here it is only read, and nothing is left beside it.</summary>
internal static class BackupFile
{
    /// <summary>The ending of its name.</summary>
    public const string Extension = ".clutchwright";

    private static readonly byte[] Beginning = "SQLite format 3\0"u8.ToArray();

    /// <summary>Opens a file of this program's form as a book, looks through all of it, and tells what it holds and the checksum to seal it with.</summary>
    /// <returns>Or why it is none.</returns>
    /// <remarks>Its pages, its records and its bytes are looked through at the same time.</remarks>
    public static async Task<Outcome<BackupRead>> ReadAsync(string file, CancellationToken cancellation)
    {
        var pages = TryAsync(file, () => PagesAsync(file, cancellation), cancellation);
        var records = TryAsync(file, () => RecordsAsync(file, cancellation), cancellation);
        var bytes = TryAsync(file, async () => Outcome.Of(await BackupSeal.SumAsync(file, cancellation)), cancellation);
        await Task.WhenAll(pages, records, bytes);
        return ((await pages).Problem ?? (await records).Problem ?? (await bytes).Problem) is { } problem
            ? problem
            : new BackupRead((await records).Value!, (await bytes).Value);
    }

    /// <summary>The last deed of a backup, and nothing else looked at; null if there is none or the file cannot be read.</summary>
    public static async Task<DeedMark?> LastDeedAsync(string file, CancellationToken cancellation)
    {
        try
        {
            await using var db = Open(file);
            await db.Database.OpenConnectionAsync(cancellation);
            return await BookContents.LastDeedAsync(db.Database.GetDbConnection(), null, cancellation);
        }
        catch (Exception exception) when (ProblemOf(file, exception) is not null)
        {
            return null;
        }
    }

    /// <summary>Whether a file begins as one that SQLite wrote.</summary>
    public static async Task<bool> IsDatabaseAsync(string file, CancellationToken cancellation)
    {
        await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var first = new byte[Beginning.Length];
        return await stream.ReadAtLeastAsync(first, first.Length, throwOnEndOfStream: false, cancellation) == first.Length && first.AsSpan().SequenceEqual(Beginning);
    }

    /// <summary>What is wrong with the pages of a file, its rows against the rules of their tables, or links between them; null: nothing.</summary>
    public static async Task<string?> DamageAsync(SqliteConnection connection, CancellationToken cancellation)
    {
        await using var command = connection.CreateCommand();
        command.CommandTimeout = 0;
        command.CommandText = "PRAGMA integrity_check(1)";
        if (await command.ExecuteScalarAsync(cancellation) is string found && found != "ok")
        {
            return found;
        }

        command.CommandText = "PRAGMA foreign_key_check";
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        return await reader.ReadAsync(cancellation) ? $"a record of {reader.GetString(0)} names one of {reader.GetString(2)} that is not there" : null;
    }

    /// <summary>The problem that an exception while a backup is read stands for; null if it is a mistake of the program's.</summary>
    public static BackupProblem? ProblemOf(string file, Exception exception) => exception switch
    {
        SqliteException { SqliteErrorCode: SQLitePCL.raw.SQLITE_NOTADB or SQLitePCL.raw.SQLITE_CORRUPT or SQLitePCL.raw.SQLITE_ERROR } found =>
            new BackupProblem.NotABackup(file, found.Message),
        SqliteException found => new BackupProblem.FileUnusable(file, found.Message),
        IOException or UnauthorizedAccessException => new BackupProblem.FileUnusable(file, exception.Message),
        _ => null,
    };

    private static async Task<Outcome<string>> PagesAsync(string file, CancellationToken cancellation)
    {
        await using var db = Open(file);
        await db.Database.OpenConnectionAsync(cancellation);
        return await DamageAsync((SqliteConnection)db.Database.GetDbConnection(), cancellation) is { } damage ? new BackupProblem.NotABackup(file, damage) : file;
    }

    private static async Task<Outcome<BookContents>> RecordsAsync(string file, CancellationToken cancellation)
    {
        await using var db = Open(file);
        await db.Database.OpenConnectionAsync(cancellation);
        if (await FormProblemAsync(db, file, cancellation) is { } problem)
        {
            return problem;
        }

        _ = await AllAnimals.LoadAsync(db, cancellation);
        return await BookContents.ReadAsync(db.Database.GetDbConnection(), null, BookTable.Of(db.Model), cancellation);
    }

    private static async Task<Outcome<T>> TryAsync<T>(string file, Func<Task<Outcome<T>>> work, CancellationToken cancellation)
        where T : notnull
    {
        try
        {
            return await Task.Run(work, cancellation);
        }
        catch (Exception exception) when (ProblemOf(file, exception) is { } problem)
        {
            return problem;
        }
    }

    private static async Task<BackupProblem?> FormProblemAsync(StockContext db, string file, CancellationToken cancellation)
    {
        var known = db.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        var applied = (await db.Database.GetAppliedMigrationsAsync(cancellation)).ToHashSet(StringComparer.Ordinal);
        return applied.IsSubsetOf(known)
            ? applied.Count == known.Count ? null : new BackupProblem.NotABackup(file, "it is not of this program's form")
            : new BackupProblem.MadeByNewerProgram(file);
    }

    private static StockContext Open(string file) => new(SqliteStore.OptionsForFile(
        new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString()));
}
