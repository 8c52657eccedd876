using System.Globalization;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Backups;

/// <summary>What was found wrong with a book; nothing in a sound one.</summary>
/// <param name="Contents">What it holds.</param>
/// <param name="Damage">Pages of the file that are damaged, and records that break a rule of their table.</param>
/// <param name="Orphans">Records that name one that is not there.</param>
/// <param name="History">Where the history does not hang together, or does not lead to the records as they are.</param>
public sealed record BookCheck(BookContents Contents, IReadOnlyList<string> Damage, IReadOnlyList<string> Orphans, IReadOnlyList<string> History)
{
    /// <summary>At most so many are told of each kind.</summary>
    public const int MostTold = 20;

    public bool IsSound => Damage.Count + Orphans.Count + History.Count == 0;
}

/// <summary>Is the book whole, does every record keep the rules, and does its history lead to what it holds?</summary>
public sealed class CheckBook(Book book)
{
    /// <summary>Looks through everything, as it is at one moment.</summary>
    public Task<Outcome<BookCheck>> RunAsync(CancellationToken cancellation) =>
        book.ReadMomentAsync(
            async moment =>
            {
                var damage = await book.DamageAsync(moment, cancellation);
                return Outcome.Of(new BookCheck(
                    await moment.ContentsAsync(cancellation),
                    damage,
                    await OrphansAsync(moment, cancellation),
                    await new HistoryReplay(moment).RunAsync(cancellation)));
            },
            cancellation);

    private static async Task<IReadOnlyList<string>> OrphansAsync(BookMoment moment, CancellationToken cancellation)
    {
        var found = new List<string>();
        foreach (var (table, sql) in moment.Tables.SelectMany(table => table.OrphanSql, (table, sql) => (table, sql)))
        {
            if (await moment.CountAsync(sql, cancellation) is > 0 and var count)
            {
                found.Add(string.Create(CultureInfo.InvariantCulture, $"{table.Name}: {count} name a record that is not there"));
            }
        }

        return found;
    }
}
