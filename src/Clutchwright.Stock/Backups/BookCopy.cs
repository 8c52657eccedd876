using System.Runtime.CompilerServices;

namespace Clutchwright.Stock.Backups;

/// <summary>Copies every row of a book, from one database into another or the same, in memory for one row at a time.</summary>
internal static class BookCopy
{
    /// <param name="from">What is read.</param>
    /// <param name="into">Where the rows go; its tables are empty.</param>
    /// <param name="target">The same tables as the written database has them.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <returns>What was read.</returns>
    public static async Task<BookContents> RunAsync(
        BookMoment from, Replacement into, IReadOnlyList<BookTable> target, CancellationToken cancellation)
    {
        var read = new List<TableContents>(from.Tables.Count);
        foreach (var table in from.Tables)
        {
            using var digest = new TableDigest();
            var written = target.Single(t => t.Name == table.Name);
            await into.FillAsync(written, SeenAsync(table.RowsAsync(from.Connection, from.Transaction, cancellation), digest, cancellation), cancellation);
            var rows = digest.Rows;
            read.Add(new(table.Name, rows, digest.Finish()));
        }

        return await BookContents.OfAsync(read, from.Connection, from.Transaction, cancellation);
    }

    private static async IAsyncEnumerable<object?[]> SeenAsync(
        IAsyncEnumerable<object?[]> rows, TableDigest digest, [EnumeratorCancellation] CancellationToken cancellation)
    {
        await foreach (var row in rows.WithCancellation(cancellation))
        {
            digest.Add(row);
            yield return row;
        }
    }
}
