using System.Diagnostics;
using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Clutchwright.Stock.Storage;

/// <summary>The keeper's book, open. Every deed and question works on one. Safe to use from many threads.</summary>
public sealed class Book : IDisposable
{
    public const string FileName = "clutchwright.db";

    private const string MigrationsAssembly = "Clutchwright.Stock.Sqlite";
    private const string LockName = "clutchwright.lock";
    private const int WaitSeconds = 15;

    private readonly DbContextOptions<StockContext> _options;
    private readonly string _connection;
    private readonly TimeProvider _clock;

    private Book(string folder, TimeProvider clock, IReadOnlyList<IInterceptor> interceptors, int waitSeconds)
    {
        Folder = folder;
        _clock = clock;
        _connection = new SqliteConnectionStringBuilder
        {
            DataSource = File,
            ForeignKeys = true,
            DefaultTimeout = waitSeconds,
        }.ToString();
        _options = OptionsFor(_connection, interceptors);
    }

    /// <summary>The data folder, as a full path.</summary>
    public string Folder { get; }

    /// <summary>The file that holds the book, as a full path.</summary>
    public string File => Path.Combine(Folder, FileName);

    /// <summary>Now, in UTC.</summary>
    internal DateTime Now => _clock.GetUtcNow().UtcDateTime;

    /// <summary>Opens the book in a data folder; makes the folder and an empty book if there is none, and brings an older
    /// book to this program's form.</summary>
    public static Task<Outcome<Book>> OpenAsync(string folder, TimeProvider clock, CancellationToken cancellation) =>
        OpenAsync(folder, clock, [], cancellation);

    /// <summary>Lets go of the file.</summary>
    public void Dispose()
    {
        using var connection = new SqliteConnection(_connection);
        SqliteConnection.ClearPool(connection);
    }

    internal static DbContextOptions<StockContext> OptionsFor(string connection, IReadOnlyList<IInterceptor> interceptors) =>
        new DbContextOptionsBuilder<StockContext>()
            .UseSqlite(connection, sqlite => sqlite.MigrationsAssembly(MigrationsAssembly))
            .AddInterceptors(new DurableConnection())
            .AddInterceptors(interceptors)
            .Options;

    internal static async Task<Outcome<Book>> OpenAsync(
        string folder, TimeProvider clock, IReadOnlyList<IInterceptor> interceptors, CancellationToken cancellation, int waitSeconds = WaitSeconds)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        ArgumentNullException.ThrowIfNull(clock);
        var book = new Book(Path.GetFullPath(folder), clock, interceptors, waitSeconds);
        try
        {
            Directory.CreateDirectory(book.Folder);
            if (await book.PrepareAsync(cancellation) is { } problem)
            {
                book.Dispose();
                return problem;
            }

            return book;
        }
        catch (SqliteException exception) when (ProblemOf(exception, book.File) is { } problem)
        {
            book.Dispose();
            return problem;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            book.Dispose();
            return new StorageProblem.FolderUnusable(book.Folder, exception.Message);
        }
    }

    internal StockContext NewContext() => new(_options);

    /// <summary>Carries out one deed: what is read, checked and written in it sees no other deed in between, and is kept as a
    /// whole or not at all.</summary>
    internal async Task<Outcome<T>> WriteAsync<T>(Func<StockContext, Task<Outcome<T>>> deed, CancellationToken cancellation)
        where T : notnull
    {
        try
        {
            await using var db = NewContext();

            // On SQLite this takes the write lock at once, so that no two deeds can decide on the same state.
            await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
            var outcome = await deed(db);
            if (outcome.IsDone)
            {
                await transaction.CommitAsync(cancellation);
            }

            return outcome;
        }
        catch (SqliteException exception) when (ProblemOf(exception, File) is { } problem)
        {
            return problem;
        }
        catch (DbUpdateException exception)
            when (exception.InnerException is SqliteException inner && ProblemOf(inner, File) is { } problem)
        {
            return problem;
        }
    }

    /// <summary>Answers one question.</summary>
    internal async Task<Outcome<T>> ReadAsync<T>(Func<StockContext, Task<Outcome<T>>> question)
        where T : notnull
    {
        try
        {
            await using var db = NewContext();
            return await question(db);
        }
        catch (SqliteException exception) when (ProblemOf(exception, File) is { } problem)
        {
            return problem;
        }
    }

    private static StorageProblem? ProblemOf(SqliteException exception, string file) => exception.SqliteErrorCode switch
    {
        SQLitePCL.raw.SQLITE_BUSY or SQLitePCL.raw.SQLITE_LOCKED => new StorageProblem.Locked(file),
        SQLitePCL.raw.SQLITE_NOTADB or SQLitePCL.raw.SQLITE_CORRUPT => new StorageProblem.NotABook(file, exception.Message),
        SQLitePCL.raw.SQLITE_FULL or SQLitePCL.raw.SQLITE_IOERR => new StorageProblem.DiskFailed(file, exception.Message),
        SQLitePCL.raw.SQLITE_CANTOPEN or SQLitePCL.raw.SQLITE_READONLY or SQLitePCL.raw.SQLITE_PERM =>
            new StorageProblem.FolderUnusable(Path.GetDirectoryName(file)!, exception.Message),
        _ => null,
    };

    private async Task<StorageProblem?> PrepareAsync(CancellationToken cancellation)
    {
        await using var db = NewContext();

        // Two programs may start at once; only one may change the form of the book. The system frees this lock when its
        // holder dies, which the lock table of EF Core would not survive: a killed migration would block the book for ever.
        await using var migrating = await TakeLockAsync(cancellation);
        if (migrating is null)
        {
            return new StorageProblem.Locked(File);
        }

        var journalMode = await PragmaAsync(db, "journal_mode", cancellation);
        var synchronous = await PragmaAsync(db, "synchronous", cancellation);
        if (!string.Equals(journalMode, DurableConnection.ExpectedJournalMode, StringComparison.OrdinalIgnoreCase)
            || !string.Equals(synchronous, DurableConnection.ExpectedSynchronous, StringComparison.Ordinal))
        {
            return new StorageProblem.NotDurable(File, journalMode, synchronous);
        }

        var known = db.Database.GetMigrations().ToList();
        var applied = (await db.Database.GetAppliedMigrationsAsync(cancellation)).ToList();
        if (applied.Except(known, StringComparer.Ordinal).ToList() is { Count: > 0 } unknown)
        {
            return new StorageProblem.MadeByNewerProgram(File) { Unknown = unknown };
        }

        if (applied.Count == 0 && await HasOtherTablesAsync(db, cancellation))
        {
            return new StorageProblem.NotABook(File, "it holds other tables");
        }

        if (applied.Count < known.Count)
        {
            await db.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS \"__EFMigrationsLock\"", cancellation);
            await db.Database.MigrateAsync(cancellation);
        }

        return null;
    }

    private static async Task<bool> HasOtherTablesAsync(StockContext db, CancellationToken cancellation) =>
        await db.Database
            .SqlQuery<int>($"SELECT count(*) AS \"Value\" FROM sqlite_master WHERE type = 'table' AND name NOT LIKE '\\_\\_EF%' ESCAPE '\\' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'")
            .SingleAsync(cancellation) > 0;

    private static async Task<string> PragmaAsync(StockContext db, string name, CancellationToken cancellation)
    {
        await db.Database.OpenConnectionAsync(cancellation);
        try
        {
            await using var command = db.Database.GetDbConnection().CreateCommand();
            command.CommandText = $"PRAGMA {name}";
            return Convert.ToString(await command.ExecuteScalarAsync(cancellation), CultureInfo.InvariantCulture) ?? "";
        }
        finally
        {
            await db.Database.CloseConnectionAsync();
        }
    }

    private async Task<FileStream?> TakeLockAsync(CancellationToken cancellation)
    {
        var path = Path.Combine(Folder, LockName);
        var started = Stopwatch.GetTimestamp();
        while (true)
        {
            try
            {
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (System.IO.File.Exists(path) && Stopwatch.GetElapsedTime(started).TotalSeconds < WaitSeconds)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(50), cancellation);
            }
            catch (IOException) when (System.IO.File.Exists(path))
            {
                return null;
            }
        }
    }
}
