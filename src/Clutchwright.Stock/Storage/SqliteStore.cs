using System.Data.Common;
using System.Diagnostics;
using System.Globalization;
using Clutchwright.Stock.Backups;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Clutchwright.Stock.Storage;

/// <summary>A book in one file of a folder.</summary>
internal sealed class SqliteStore : Store
{
    private const string MigrationsAssembly = "Clutchwright.Stock.Sqlite";
    private const string LockName = "clutchwright.lock";

    private readonly string _folder;
    private readonly string _connection;
    private readonly int _waitSeconds;

    public SqliteStore(string folder, IReadOnlyList<IInterceptor> interceptors, int waitSeconds = DefaultWaitSeconds)
    {
        _folder = folder;
        _waitSeconds = waitSeconds;
        Place = Path.Combine(folder, Book.FileName);
        _connection = new SqliteConnectionStringBuilder
        {
            DataSource = Place,
            ForeignKeys = true,
            DefaultTimeout = waitSeconds,
        }.ToString();
        Options = OptionsFor(_connection, interceptors);
    }

    /// <summary>The file, as a full path.</summary>
    public override string Place { get; }

    public override DbContextOptions<StockContext> Options { get; }

    public static DbContextOptions<StockContext> OptionsFor(string connection, IReadOnlyList<IInterceptor> interceptors) =>
        new DbContextOptionsBuilder<StockContext>()
            .UseSqlite(connection, sqlite => sqlite.MigrationsAssembly(MigrationsAssembly))
            .AddInterceptors(new DurableConnection())
            .AddInterceptors(interceptors)
            .Options;

    /// <summary>For a file that is read, or that nobody else has yet: without the settings of a book in use.</summary>
    public static DbContextOptions<StockContext> OptionsForFile(string connection) =>
        new DbContextOptionsBuilder<StockContext>().UseSqlite(connection, sqlite => sqlite.MigrationsAssembly(MigrationsAssembly)).Options;

    public override void MakePlace() => Directory.CreateDirectory(_folder);

    // The system frees this lock when its holder dies, which the lock table of EF Core would not survive: a killed migration
    // would block the book for ever.
    public override async Task<IAsyncDisposable?> LockFormAsync(CancellationToken cancellation)
    {
        var path = Path.Combine(_folder, LockName);
        var started = Stopwatch.GetTimestamp();
        while (true)
        {
            try
            {
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (File.Exists(path) && Stopwatch.GetElapsedTime(started).TotalSeconds < DefaultWaitSeconds)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(50), cancellation);
            }
            catch (IOException) when (File.Exists(path))
            {
                return null;
            }
        }
    }

    public override async Task<StorageProblem?> CheckSettingsAsync(StockContext db, CancellationToken cancellation)
    {
        var journalMode = await PragmaAsync(db, "journal_mode", cancellation);
        var synchronous = await PragmaAsync(db, "synchronous", cancellation);
        return string.Equals(journalMode, DurableConnection.ExpectedJournalMode, StringComparison.OrdinalIgnoreCase)
            && string.Equals(synchronous, DurableConnection.ExpectedSynchronous, StringComparison.Ordinal)
            ? null
            : new StorageProblem.NotDurable(Place, journalMode, synchronous);
    }

    public override async Task<bool> HasOtherTablesAsync(StockContext db, CancellationToken cancellation) =>
        await db.Database
            .SqlQuery<int>($"SELECT count(*) AS \"Value\" FROM sqlite_master WHERE type = 'table' AND name NOT LIKE '\\_\\_EF%' ESCAPE '\\' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'")
            .SingleAsync(cancellation) > 0;

    public override async Task ClearKilledMigrationAsync(StockContext db, CancellationToken cancellation) =>
        await db.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS \"__EFMigrationsLock\"", cancellation);

    /// <summary>Nothing: a transaction takes the write lock of the file when it begins.</summary>
    public override Task HoldOffOtherDeedsAsync(StockContext db, CancellationToken cancellation) => Task.CompletedTask;

    public override async Task<DbTransaction> FixMomentAsync(DbConnection connection, CancellationToken cancellation)
    {
        var moment = ((SqliteConnection)connection).BeginTransaction(deferred: true);

        // The moment is that of the first read.
        await using var command = connection.CreateCommand();
        command.Transaction = moment;
        command.CommandText = "SELECT count(*) FROM sqlite_master";
        await command.ExecuteScalarAsync(cancellation);
        return moment;
    }

    public override async Task<IReadOnlyList<string>> DamageAsync(BookMoment moment, CancellationToken cancellation)
    {
        await using var command = moment.Connection.CreateCommand();
        command.Transaction = moment.Transaction;
        command.CommandTimeout = 0;
        command.CommandText = $"PRAGMA integrity_check({BookCheck.MostTold})";
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        var found = new List<string>();
        while (await reader.ReadAsync(cancellation))
        {
            found.Add(reader.GetString(0));
        }

        return found is ["ok"] ? [] : found;
    }

    public override async Task<BookContents?> CopyToAsync(BookMoment moment, string file, CancellationToken cancellation)
    {
        await using var target = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString());
        await target.OpenAsync(cancellation);
        await using var command = target.CreateCommand();
        command.CommandText = "PRAGMA synchronous = OFF; PRAGMA journal_mode = OFF";
        await command.ExecuteNonQueryAsync(cancellation);

        // In the transaction, so that the pages are those of the moment.
        ((SqliteConnection)moment.Connection).BackupDatabase(target);

        // One file, with nothing beside it.
        command.CommandText = "PRAGMA journal_mode = DELETE";
        await command.ExecuteNonQueryAsync(cancellation);
        return null;
    }

    public override async Task<Replacement> BeginReplacingAsync(CancellationToken cancellation) =>
        await SqliteReplacement.BeginAsync(Place, _waitSeconds, "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL", cancellation);

    public override StorageProblem? ProblemOf(Exception exception) => exception switch
    {
        SqliteException here => ProblemOf(here),
        DbUpdateException { InnerException: SqliteException inner } => ProblemOf(inner),
        _ => null,
    };

    public override StorageProblem? ProblemOfOpening(Exception exception) => exception is IOException or UnauthorizedAccessException
        ? new StorageProblem.FolderUnusable(_folder, exception.Message)
        : ProblemOf(exception);

    /// <summary>Lets go of the file.</summary>
    public override void Dispose()
    {
        using var connection = new SqliteConnection(_connection);
        SqliteConnection.ClearPool(connection);
    }

    private StorageProblem? ProblemOf(SqliteException exception) => exception.SqliteErrorCode switch
    {
        SQLitePCL.raw.SQLITE_BUSY or SQLitePCL.raw.SQLITE_LOCKED => new StorageProblem.Locked(Place),
        SQLitePCL.raw.SQLITE_NOTADB or SQLitePCL.raw.SQLITE_CORRUPT => new StorageProblem.NotABook(Place, exception.Message),
        SQLitePCL.raw.SQLITE_FULL or SQLitePCL.raw.SQLITE_IOERR => new StorageProblem.DiskFailed(Place, exception.Message),
        SQLitePCL.raw.SQLITE_CANTOPEN or SQLitePCL.raw.SQLITE_READONLY or SQLitePCL.raw.SQLITE_PERM =>
            new StorageProblem.FolderUnusable(_folder, exception.Message),
        _ => null,
    };

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
}
