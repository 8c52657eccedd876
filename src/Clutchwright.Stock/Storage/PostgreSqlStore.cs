using System.Data;
using System.Data.Common;
using System.Globalization;
using Clutchwright.Stock.Backups;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Metadata;
using Npgsql;

namespace Clutchwright.Stock.Storage;

/// <summary>A book in a database of its own on a PostgreSQL server.</summary>
internal sealed class PostgreSqlStore : Store
{
    private const string MigrationsAssembly = "Clutchwright.Stock.PostgreSql";

    /// <summary>Names the lock that every deed and every change of form holds, among those of the database: "Clutch" in ASCII.</summary>
    private const long LockKey = 0x436C_7574_6368;

    private const int DefaultPort = 5432;

    private readonly NpgsqlDataSource _source;
    private readonly int _waitSeconds;

    private PostgreSqlStore(NpgsqlConnectionStringBuilder connection, IReadOnlyList<IInterceptor> interceptors, int waitSeconds)
    {
        connection.ApplicationName ??= "Clutchwright";
        var port = connection.Port == DefaultPort ? "" : string.Create(CultureInfo.InvariantCulture, $", port {connection.Port}");
        Place = $"Database {connection.Database} on {connection.Host}{port}";
        _source = NpgsqlDataSource.Create(connection);
        _waitSeconds = waitSeconds;
        Options = new DbContextOptionsBuilder<StockContext>()
            .UseNpgsql(_source, postgres => postgres.MigrationsAssembly(MigrationsAssembly))
            .AddInterceptors(interceptors)
            .Options;
    }

    public override string Place { get; }

    public override DbContextOptions<StockContext> Options { get; }

    /// <summary>Reads the connection string. What is wrong with it is not told in words of the reader, which may repeat a password.</summary>
    public static Outcome<PostgreSqlStore> Of(string connection, IReadOnlyList<IInterceptor> interceptors, int waitSeconds = DefaultWaitSeconds)
    {
        try
        {
            var read = new NpgsqlConnectionStringBuilder(connection);
            return string.IsNullOrWhiteSpace(read.Host) || string.IsNullOrWhiteSpace(read.Database)
                ? new StorageProblem.ConnectionUnreadable()
                : new PostgreSqlStore(read, interceptors, waitSeconds);
        }
        catch (Exception exception) when (exception is ArgumentException or FormatException or InvalidCastException or NotSupportedException)
        {
            return new StorageProblem.ConnectionUnreadable();
        }
    }

    /// <summary>Text is compared and sorted as SQLite does it, whatever the language of the server.</summary>
    public static void CompareTextByItsCodes(IMutableModel model)
    {
        var properties = model.GetEntityTypes()
            .SelectMany(entity => entity.GetProperties().Concat(entity.GetComplexProperties().SelectMany(part => part.ComplexType.GetProperties())));
        foreach (var property in properties.Where(p => (p.GetValueConverter()?.ProviderClrType ?? p.GetProviderClrType() ?? p.ClrType) == typeof(string)))
        {
            property.SetCollation("C");
        }
    }

    /// <summary>Nothing: a database is made by whoever keeps the server.</summary>
    public override void MakePlace()
    {
    }

    public override async Task<IAsyncDisposable?> LockFormAsync(CancellationToken cancellation)
    {
        var connection = await _source.OpenConnectionAsync(cancellation);
        try
        {
            // Closing the connection ends the transaction, and that the lock; so does the server when the program is killed.
            await connection.BeginTransactionAsync(cancellation);
            await TakeLockAsync(connection, cancellation);
            return connection;
        }
        catch (PostgresException exception) when (exception.SqlState == PostgresErrorCodes.LockNotAvailable)
        {
            await connection.DisposeAsync();
            return null;
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }
    }

    public override async Task<StorageProblem?> CheckSettingsAsync(StockContext db, CancellationToken cancellation)
    {
        var settings = (await db.Database
            .SqlQuery<string>($"SELECT name || '=' || setting AS \"Value\" FROM pg_settings WHERE name IN ('fsync', 'full_page_writes', 'synchronous_commit', 'server_encoding')")
            .ToListAsync(cancellation))
            .Select(line => line.Split('=', 2))
            .ToDictionary(parts => parts[0], parts => parts[1], StringComparer.Ordinal);
        if (settings["server_encoding"] != "UTF8")
        {
            return new StorageProblem.ServerUnusable(Place, $"its text is kept as {settings["server_encoding"]}, which cannot hold every character; UTF8 can");
        }

        var lax = settings.Where(setting => setting.Value == "off").Select(setting => setting.Key).Order(StringComparer.Ordinal).ToList();
        return lax.Count == 0 ? null : new StorageProblem.ServerNotDurable(Place, lax);
    }

    public override async Task<bool> HasOtherTablesAsync(StockContext db, CancellationToken cancellation) =>
        await db.Database
            .SqlQuery<int>($"SELECT count(*)::int AS \"Value\" FROM pg_tables WHERE schemaname = current_schema() AND tablename NOT LIKE '\\_\\_EF%'")
            .SingleAsync(cancellation) > 0;

    /// <summary>Nothing: a killed migration was a transaction, and left none of it.</summary>
    public override Task ClearKilledMigrationAsync(StockContext db, CancellationToken cancellation) => Task.CompletedTask;

    // Each statement of the transaction sees what was committed before it, and with this lock that is every deed before this one.
    public override Task HoldOffOtherDeedsAsync(StockContext db, CancellationToken cancellation) =>
        TakeLockAsync((NpgsqlConnection)db.Database.GetDbConnection(), cancellation);

    public override async Task<DbTransaction> FixMomentAsync(DbConnection connection, CancellationToken cancellation)
    {
        var moment = await connection.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancellation);
        await using var command = connection.CreateCommand();
        command.CommandText = "SET TRANSACTION READ ONLY; SELECT 1";
        await command.ExecuteScalarAsync(cancellation);
        return moment;
    }

    /// <summary>The pages are the server's to look after; that rows keep the rules is asked again, since a restored dump may not have been held to them.</summary>
    public override async Task<IReadOnlyList<string>> DamageAsync(BookMoment moment, CancellationToken cancellation)
    {
        var rules = await moment.Db.Database
            .SqlQuery<string>($"SELECT format('%I|%s|SELECT count(*) FROM %I WHERE NOT (%s)', t.relname, c.conname, t.relname, pg_get_expr(c.conbin, c.conrelid)) AS \"Value\" FROM pg_constraint c JOIN pg_class t ON t.oid = c.conrelid WHERE c.contype = 'c' AND t.relnamespace = current_schema()::regnamespace ORDER BY 1")
            .ToListAsync(cancellation);
        var found = new List<string>();
        foreach (var rule in rules.Select(rule => rule.Split('|', 3)))
        {
            if (await moment.CountAsync(rule[2], cancellation) is > 0 and var count)
            {
                found.Add(string.Create(CultureInfo.InvariantCulture, $"{rule[0]}: {count} break the rule {rule[1]}"));
            }
        }

        return found;
    }

    public override async Task<BookContents?> CopyToAsync(BookMoment moment, string file, CancellationToken cancellation)
    {
        await using var made = new StockContext(SqliteStore.OptionsForFile(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString()));
        await made.Database.MigrateAsync(cancellation);
        await using var into = await SqliteReplacement.BeginAsync(file, DefaultWaitSeconds, "PRAGMA journal_mode = DELETE; PRAGMA synchronous = OFF", cancellation);
        var contents = await BookCopy.RunAsync(moment, into, BookTable.Of(made.Model), cancellation);
        await into.CommitAsync(cancellation);
        return contents;
    }

    public override async Task<Replacement> BeginReplacingAsync(CancellationToken cancellation)
    {
        var connection = await _source.OpenConnectionAsync(cancellation);
        try
        {
            var transaction = await connection.BeginTransactionAsync(cancellation);
            await TakeLockAsync(connection, cancellation);
            return new PostgreSqlReplacement(connection, transaction);
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }
    }

    public override StorageProblem? ProblemOf(Exception exception)
    {
        if (exception is OperationCanceledException)
        {
            return null;
        }

        // EF Core wraps what comes from the server, passing troubles twice.
        for (var cause = exception; cause is not null; cause = cause.InnerException)
        {
            if (cause is NpgsqlException found)
            {
                return found is PostgresException told ? ProblemOf(told) : new StorageProblem.ServerUnusable(Place, Reason(found));
            }
        }

        return null;
    }

    /// <summary>Lets go of the connections.</summary>
    public override void Dispose() => _source.Dispose();

    private static string Reason(NpgsqlException exception) => exception.InnerException is { } inner
        ? $"{exception.Message.TrimEnd('.')}: {inner.Message}"
        : exception.Message;

    private StorageProblem? ProblemOf(PostgresException exception) => exception.SqlState[..2] switch
    {
        "55" or "40" => new StorageProblem.Locked(Place),
        "53" or "58" => new StorageProblem.DiskFailed(Place, exception.MessageText),
        "XX" => new StorageProblem.NotABook(Place, exception.MessageText),

        // The connection, who it is, the database or schema it asks for, what it may do, the server shutting down.
        "08" or "25" or "28" or "3D" or "3F" or "57" => new StorageProblem.ServerUnusable(Place, exception.MessageText),
        "42" when exception.SqlState == PostgresErrorCodes.InsufficientPrivilege => new StorageProblem.ServerUnusable(Place, exception.MessageText),
        _ => null,
    };

    private async Task TakeLockAsync(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = "SELECT set_config('lock_timeout', @wait, true), pg_advisory_xact_lock(@key)::text";
        command.Parameters.AddWithValue("wait", string.Create(CultureInfo.InvariantCulture, $"{_waitSeconds}s"));
        command.Parameters.AddWithValue("key", LockKey);
        await command.ExecuteScalarAsync(cancellation);
    }
}
