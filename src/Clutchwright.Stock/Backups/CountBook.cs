using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Backups;

/// <summary>How much does the book hold? Counts only, so that the answer is there at once.</summary>
public sealed class CountBook(Book book)
{
    /// <returns>Contents without digests.</returns>
    public Task<Outcome<BookContents>> RunAsync(CancellationToken cancellation) =>
        book.ReadMomentAsync(
            async moment =>
            {
                var tables = new List<TableContents>();
                foreach (var table in moment.Tables)
                {
                    tables.Add(new(table.Name, await moment.CountAsync($"SELECT count(*) FROM {BookTable.Quoted(table.Name)}", cancellation), null));
                }

                return Outcome.Of(await BookContents.OfAsync(tables, moment.Connection, moment.Transaction, cancellation));
            },
            cancellation);

    /// <summary>The last deed of a backup; null if there is none, or the file cannot be read.</summary>
    public static Task<DeedMark?> LastDeedOfAsync(string file, CancellationToken cancellation) => BackupFile.LastDeedAsync(file, cancellation);
}
