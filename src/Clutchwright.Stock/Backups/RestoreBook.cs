using System.Runtime.CompilerServices;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Backups;

/// <summary>Puts back everything that a backup holds, in place of everything that the book holds, the history too.</summary>
public sealed class RestoreBook(Book book)
{
    /// <summary>What would go and what would come.</summary>
    public Task<Outcome<RestorePreview>> PreviewAsync(StagedBackup backup, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(backup);
        return backup.Book.ReadMomentAsync(
            there => book.ReadMomentAsync(
                async here => Outcome.Of(await CompareAsync(
                    backup.Contents, await here.ContentsAsync(cancellation), DeedsAsync(there, cancellation), DeedsAsync(here, cancellation), cancellation)),
                cancellation),
            cancellation);
    }

    /// <summary>Makes a backup of the book as it is, then replaces all that it holds in one transaction.</summary>
    /// <param name="backup">What is restored.</param>
    /// <param name="last">The last deed of the book as the preview told it. If another was done since, nothing happens.</param>
    /// <param name="before">Where the backup of the book as it is goes. None is made of an empty book.</param>
    /// <param name="cancellation">Stops it; the book is as it was then.</param>
    public Task<Outcome<Restored>> RunAsync(StagedBackup backup, DeedMark? last, string before, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(backup);
        return backup.Book.ReadMomentAsync(
            there => book.ReplaceAsync<Restored>(
                async (replacement, target) =>
                {
                    if (await BookContents.LastDeedAsync(replacement.Connection, replacement.Transaction, cancellation) is var now && now != last)
                    {
                        return new BackupProblem.BookChanged(now);
                    }

                    var kept = now is null ? null : await new BackupBook(book).RunAsync(before, cancellation);
                    if (kept is { IsDone: false })
                    {
                        return kept.Problem;
                    }

                    await replacement.ClearAsync(target, cancellation);
                    await BookCopy.RunAsync(there, replacement, target, cancellation);
                    if (await OrphanAsync(replacement, target, cancellation) is { } orphan)
                    {
                        return new BackupProblem.NotABackup(backup.File, $"a record of {orphan} names one that is not there");
                    }

                    var written = await BookContents.ReadAsync(replacement.Connection, replacement.Transaction, target, cancellation);
                    return backup.Contents.Differences(written) is { Count: > 0 } different
                        ? new BackupProblem.NotAsTheBook(book.Place, different)
                        : new Restored(written, kept?.Value);
                },
                cancellation),
            cancellation);
    }

    private static async Task<RestorePreview> CompareAsync(
        BookContents backup, BookContents present, IAsyncEnumerable<DeedMark> inBackup, IAsyncEnumerable<DeedMark> inBook, CancellationToken cancellation)
    {
        await using var theirs = inBackup.GetAsyncEnumerator(cancellation);
        await using var ours = inBook.GetAsyncEnumerator(cancellation);
        DeedMark? common = null;
        long shared = 0;
        var (hasTheirs, hasOurs) = (await theirs.MoveNextAsync(), await ours.MoveNextAsync());
        while (hasTheirs && hasOurs && theirs.Current == ours.Current)
        {
            common = ours.Current;
            shared++;
            (hasTheirs, hasOurs) = (await theirs.MoveNextAsync(), await ours.MoveNextAsync());
        }

        var lost = new Queue<DeedMark>();
        for (; hasOurs; hasOurs = await ours.MoveNextAsync())
        {
            lost.Enqueue(ours.Current);
            if (lost.Count > RestorePreview.MostNamed)
            {
                lost.Dequeue();
            }
        }

        return new(backup, present, common, present.Deeds - shared, backup.Deeds - shared, [.. lost.Reverse()]);
    }

    private static async IAsyncEnumerable<DeedMark> DeedsAsync(BookMoment moment, [EnumeratorCancellation] CancellationToken cancellation)
    {
        await using var command = moment.Connection.CreateCommand();
        command.Transaction = moment.Transaction;
        command.CommandText = "SELECT \"DeedId\", \"When\", \"Who\", \"Words\" FROM \"Deeds\" ORDER BY \"DeedId\"";
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        while (await reader.ReadAsync(cancellation))
        {
            yield return BookContents.MarkOf(reader);
        }
    }

    private static async Task<string?> OrphanAsync(Replacement replacement, IReadOnlyList<BookTable> tables, CancellationToken cancellation)
    {
        foreach (var (table, sql) in tables.SelectMany(table => table.OrphanSql, (table, sql) => (table, sql)))
        {
            if (await BookContents.CountAsync(replacement.Connection, replacement.Transaction, sql, cancellation) > 0)
            {
                return table.Name;
            }
        }

        return null;
    }
}
