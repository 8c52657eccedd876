using Clutchwright.Stock.Backups;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Tests.Testing;

/// <summary>Everything in a book but its history.</summary>
internal static class Records
{
    /// <summary>By table the digest of all rows. The versions are left out: undoing gives a record a new one, so that no page that was open
    /// before overwrites it.</summary>
    public static async Task<IReadOnlyList<TableContents>> OfAsync(Book book)
    {
        await using var db = book.NewContext();
        await db.Database.OpenConnectionAsync(TestBook.Cancellation);
        var read = new List<TableContents>();
        foreach (var table in BookTable.Of(db.Model).Where(t => t.Name is not ("Deeds" or "Changes" or "PhotoContents")))
        {
            var version = table.Columns.ToList().FindIndex(column => column.Name == "Version");
            using var digest = new TableDigest();
            await foreach (var row in table.RowsAsync(db.Database.GetDbConnection(), null, TestBook.Cancellation))
            {
                if (version >= 0)
                {
                    row[version] = null;
                }

                digest.Add(row);
            }

            read.Add(new(table.Name, digest.Rows, digest.Finish()));
        }

        return read;
    }
}
