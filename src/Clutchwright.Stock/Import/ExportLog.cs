using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Import;

/// <summary>Writes what stands in the log of every animal out of the bin as a file that <see cref="LogFile"/> reads back to the same.</summary>
public sealed class ExportLog(Book book)
{
    /// <param name="writer">Takes the text; it should write UTF-8 and is left open.</param>
    /// <param name="cancellation">Stops between rows.</param>
    /// <returns>How many entries were written, the earliest first.</returns>
    public Task<Outcome<int>> RunAsync(TextWriter writer, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(writer);
        return book.ReadAsync<int>(async db => await WriteAsync(db, writer, cancellation));
    }

    internal static async Task<int> WriteAsync(StockContext db, TextWriter writer, CancellationToken cancellation)
    {
        var animals = await db.Animals.AsNoTracking().IgnoreAutoIncludes().Select(a => new { a.AnimalId, a.Tag, a.BinnedAt }).ToDictionaryAsync(a => a.AnimalId, cancellation);
        var clutches = await db.Clutches.AsNoTracking().ToDictionaryAsync(c => c.ClutchId, c => c.Tag, cancellation);
        var log = await db.Happenings.AsNoTracking().Where(h => h.WithdrawnAt == null).ToListAsync(cancellation);
        var here = log.Where(h => animals[h.AnimalId].BinnedAt is null).ToList();
        var rows = here
            .OrderBy(h => h.When.Latest).ThenBy(h => Tags.Order(animals[h.AnimalId].Tag), StringComparer.Ordinal)
                .ThenBy(h => h.Kind).ThenBy(h => h.When.Earliest).ThenBy(h => h.ToString(), StringComparer.Ordinal).ThenBy(h => h.When.Words, StringComparer.Ordinal)

                // By all that is written, never by when it was entered: the same log is the same file.
                .ThenBy(h => Mate(h), StringComparer.Ordinal).ThenBy(h => Clutch(h), StringComparer.Ordinal)
            .Select(h => LogCells.Of(
                new LogRow
                {
                    Row = 0,
                    Line = 0,
                    Animal = animals[h.AnimalId].Tag,
                    When = h.When,
                    Mate = Mate(h),
                    Clutch = Clutch(h),
                    Entries = [],
                },
                new(h.Kind, h.Amount, h.Text)));
        await CsvRows.WriteAsync(writer, Headers.Log.Written.Select(column => column.Name), rows, cancellation);
        return here.Count;

        string? Mate(Happening h) => h.MateId is { } mate ? animals[mate].Tag : null;
        string? Clutch(Happening h) => h.ClutchId is { } clutch ? clutches[clutch] : null;
    }
}
