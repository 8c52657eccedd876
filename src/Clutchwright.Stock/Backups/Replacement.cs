using System.Data.Common;

namespace Clutchwright.Stock.Backups;

/// <summary>One transaction in which everything that a book holds gives way to something else. Until it is committed every other program
/// reads the old book, and no deed is carried out; without a commit nothing has happened.</summary>
internal abstract class Replacement(DbConnection connection, DbTransaction transaction) : IAsyncDisposable
{
    public DbConnection Connection => connection;

    public DbTransaction Transaction => transaction;

    /// <summary>Takes the rows of every table away.</summary>
    public async Task ClearAsync(IEnumerable<BookTable> tables, CancellationToken cancellation)
    {
        // Those that name others first.
        foreach (var table in tables.Reverse())
        {
            await using var command = connection.CreateCommand();
            command.Transaction = transaction;
            command.CommandText = table.DeleteSql;
            command.CommandTimeout = 0;
            await command.ExecuteNonQueryAsync(cancellation);
        }
    }

    /// <summary>Writes the rows of one table.</summary>
    public abstract Task FillAsync(BookTable table, IAsyncEnumerable<object?[]> rows, CancellationToken cancellation);

    /// <summary>Keeps what was written.</summary>
    public virtual Task CommitAsync(CancellationToken cancellation) => transaction.CommitAsync(cancellation);

    public virtual async ValueTask DisposeAsync() => await transaction.DisposeAsync();
}
