using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Clutchwright.Stock.Storage;

/// <summary>Sets on each connection what SQLite forgets when one is closed. An acknowledged commit is on the disk: a write-ahead
/// log that is flushed at every commit.</summary>
internal sealed class DurableConnection : DbConnectionInterceptor
{
    public const string ExpectedJournalMode = "wal";

    /// <summary>FULL, as SQLite answers it.</summary>
    public const string ExpectedSynchronous = "2";

    private const string Settings = "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;";

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Settings;
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = Settings;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}
