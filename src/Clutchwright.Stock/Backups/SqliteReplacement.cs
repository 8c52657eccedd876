using Microsoft.Data.Sqlite;

namespace Clutchwright.Stock.Backups;

/// <summary>The content of a book in a file replaced. The connection holds no foreign keys: a table that names itself could neither be
/// emptied nor filled row by row; whoever uses it looks for orphans before the commit.</summary>
internal sealed class SqliteReplacement(SqliteConnection connection, SqliteTransaction transaction) : Replacement(connection, transaction)
{
    /// <summary>Begins with the write lock of the file. The connection goes with the replacement.</summary>
    public static async Task<SqliteReplacement> BeginAsync(string file, int waitSeconds, string settings, CancellationToken cancellation)
    {
        var connection = new SqliteConnection(
            new SqliteConnectionStringBuilder { DataSource = file, ForeignKeys = false, DefaultTimeout = waitSeconds, Pooling = false }.ToString());
        try
        {
            await connection.OpenAsync(cancellation);
            await using (var command = connection.CreateCommand())
            {
                command.CommandText = settings;
                await command.ExecuteNonQueryAsync(cancellation);
            }

            return new(connection, connection.BeginTransaction());
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }
    }

    public override async Task FillAsync(BookTable table, IAsyncEnumerable<object?[]> rows, CancellationToken cancellation)
    {
        await using var command = (SqliteCommand)Connection.CreateCommand();
        command.Transaction = (SqliteTransaction)Transaction;
        command.CommandText = table.InsertSql;
        var parameters = table.Columns.Select((_, i) => command.Parameters.Add(new SqliteParameter($"@p{i}", null))).ToArray();
        await command.PrepareAsync(cancellation);
        await foreach (var row in rows.WithCancellation(cancellation))
        {
            for (var i = 0; i < parameters.Length; i++)
            {
                parameters[i].Value = row[i] ?? DBNull.Value;
            }

            await command.ExecuteNonQueryAsync(cancellation);
        }
    }

    public override async Task CommitAsync(CancellationToken cancellation)
    {
        await base.CommitAsync(cancellation);

        // Everything was written beside the file first; there is no need to keep room for that.
        await using var command = Connection.CreateCommand();
        command.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)";
        await command.ExecuteNonQueryAsync(cancellation);
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        await Connection.DisposeAsync();
    }
}
