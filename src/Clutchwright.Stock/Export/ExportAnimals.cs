using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Export;

/// <summary>Writes every animal out of the bin as a pedigree file that <see cref="AnimalFile"/> reads back to the same.</summary>
public sealed class ExportAnimals(Book book)
{
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
            await WriteAsync(animals, writer, cancellation);
            return animals.Count;
        });
    }

    /// <summary>Writes animals among which their parents are.</summary>
    internal static Task WriteAsync(IReadOnlyList<Animal> animals, TextWriter writer, CancellationToken cancellation)
    {
        var tags = animals.ToDictionary(animal => animal.AnimalId, animal => animal.Tag);

        // The database may sort otherwise than we do; the file must not depend on it.
        var rows = animals.OrderBy(a => a.TagOrder, StringComparer.Ordinal).ThenBy(a => a.TagKey, StringComparer.Ordinal);
        return CsvRows.WriteAsync(writer, Headers.Written.Select(column => column.Name), rows.Select(animal => AnimalCells.Of(animal, id => tags[id])), cancellation);
    }
}
