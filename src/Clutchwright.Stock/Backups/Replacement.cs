using System.Data.Common;

namespace Clutchwright.Stock.Backups;

/// <summary>One transaction in which everything that a book holds gives way to something else. Until it is committed every other program
/// reads the old book, and no deed is carried out; without a commit nothing has happened.</summary>
internal abstract class Replacement(DbConnection connection, DbTransaction transaction) : IAsyncDisposable
{
    public DbConnection Connection => connection;

    public DbTransaction Transaction => transaction;

    /// <summary>Takes the rows of every table away, of those that name others first.</summary>
    public virtual async Task ClearAsync(IReadOnlyList<BookTable> tables, CancellationToken cancellation)
    {
        foreach (var table in tables.Reverse())
        {
            await RunAsync(table.DeleteSql, cancellation);
        }
    }

    /// <summary>Writes the rows of one table.</summary>
    public abstract Task FillAsync(BookTable table, IAsyncEnumerable<object?[]> rows, CancellationToken cancellation);

    /// <summary>Keeps what was written.</summary>
    public virtual Task CommitAsync(CancellationToken cancellation) => transaction.CommitAsync(cancellation);

    protected async Task RunAsync(string sql, CancellationToken cancellation)
    {
        await using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        command.CommandTimeout = 0;
        await command.ExecuteNonQueryAsync(cancellation);
    }

    public virtual async ValueTask DisposeAsync() => await transaction.DisposeAsync();
}
