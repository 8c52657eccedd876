using System.Data.Common;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Backups;

/// <summary>The book as it is at one moment, whatever is written meanwhile: by its records, and by the rows under them.</summary>
internal sealed record BookMoment(StockContext Db, DbTransaction Transaction)
{
    public DbConnection Connection { get; } = Db.Database.GetDbConnection();

    public IReadOnlyList<BookTable> Tables { get; } = BookTable.Of(Db.Model);

    /// <summary>Reads through everything.</summary>
    public Task<BookContents> ContentsAsync(CancellationToken cancellation) => BookContents.ReadAsync(Connection, Transaction, Tables, cancellation);

    /// <summary>A number that SQL counts.</summary>
    public Task<long> CountAsync(string sql, CancellationToken cancellation) => BookContents.CountAsync(Connection, Transaction, sql, cancellation);
}
