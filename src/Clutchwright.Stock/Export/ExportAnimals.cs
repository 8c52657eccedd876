using System.Buffers;
using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Storage;
using CsvHelper;
using CsvHelper.Configuration;

namespace Clutchwright.Stock.Export;

/// <summary>Writes every animal out of the bin as a pedigree file that <see cref="AnimalFile"/> reads back to the same.</summary>
public sealed class ExportAnimals(Book book)
{
    private static readonly SearchValues<char> ToQuote = SearchValues.Create(",;\t\"\r\n");

    /// <summary>Told its line ending, the library would quote for that one only; a reader takes any.</summary>
    private static readonly CsvConfiguration Configuration = new(CultureInfo.InvariantCulture)
    {
        Delimiter = ",",
        NewLine = "\r\n",
        ShouldQuote = cell => cell.Field is { Length: > 0 } text
            && (text.AsSpan().ContainsAny(ToQuote) || char.IsWhiteSpace(text[0]) || char.IsWhiteSpace(text[^1])),
    };

    /// <summary>Writes rows by tag, cells that a spreadsheet could take for a formula with an apostrophe before them, lines
    /// ended by CR LF.</summary>
    /// <param name="writer">Takes the text; it should write UTF-8 and is left open.</param>
    /// <param name="cancellation">Stops between rows.</param>
    /// <returns>How many animals were written.</returns>
    public Task<Outcome<int>> RunAsync(TextWriter writer, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(writer);
        return book.ReadAsync<int>(async db =>
        {
            var animals = await AllAnimals.LoadAsync(db, cancellation);
            var tags = animals.ToDictionary(animal => animal.AnimalId, animal => animal.Tag);
            await using var csv = new CsvWriter(writer, Configuration, leaveOpen: true);
            foreach (var (_, name) in Headers.Written)
            {
                csv.WriteField(name);
            }

            await csv.NextRecordAsync();

            // The database may sort otherwise than we do; the file must not depend on it.
            foreach (var animal in animals.OrderBy(a => a.TagOrder, StringComparer.Ordinal).ThenBy(a => a.TagKey, StringComparer.Ordinal))
            {
                cancellation.ThrowIfCancellationRequested();
                foreach (var cell in AnimalCells.Of(animal, id => tags[id]))
                {
                    csv.WriteField(SpreadsheetCell.Protect(cell));
                }

                await csv.NextRecordAsync();
            }

            await csv.FlushAsync();
            return animals.Count;
        });
    }
}
