using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Import;

/// <summary>Writes every clutch out of the bin as a file that <see cref="ClutchFile"/> reads back to the same.</summary>
public sealed class ExportClutches(Book book)
{
    /// <param name="writer">Takes the text; it should write UTF-8 and is left open.</param>
    /// <param name="cancellation">Stops between rows.</param>
    /// <returns>How many clutches were written, in the order of their ids.</returns>
    public Task<Outcome<int>> RunAsync(TextWriter writer, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(writer);
        return book.ReadAsync<int>(async db => await WriteAsync(db, writer, cancellation));
    }

    internal static async Task<int> WriteAsync(StockContext db, TextWriter writer, CancellationToken cancellation)
    {
        var there = await ClutchesInBook.LoadAsync(db, cancellation);
        await CsvRows.WriteAsync(
            writer,
            Headers.Clutches.Written.Select(column => column.Name),
            there.Clutches.OrderBy(c => Tags.Order(c.Tag), StringComparer.Ordinal).ThenBy(c => c.TagKey, StringComparer.Ordinal).Select(c => ClutchCells.Of(there.ToRow(c))),
            cancellation);
        return there.Clutches.Count;
    }
}
