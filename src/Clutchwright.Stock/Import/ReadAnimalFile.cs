using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Import;

/// <summary>What would an import of this file do? Writes nothing.</summary>
public sealed class ReadAnimalFile(Book book, CheckTradeText check)
{
    /// <param name="stream">The file.</param>
    /// <param name="fields">What the keeper says that columns are, by their index from 0; null or left out: by their header.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>The preview, also of a file that cannot be imported: its problems say why.</returns>
    public async Task<Outcome<ImportPreview>> RunAsync(
        Stream stream, IReadOnlyDictionary<int, AnimalField>? fields, CancellationToken cancellation) =>
        await RunAsync(await AnimalFile.ReadAsync(stream, fields, cancellation), cancellation);

    /// <param name="file">The file, read already.</param>
    /// <param name="cancellation">Stops the check against the book.</param>
    /// <returns>The preview, also of a file that cannot be imported: its problems say why.</returns>
    public Task<Outcome<ImportPreview>> RunAsync(AnimalFile file, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(file);
        return book.ReadAsync<ImportPreview>(
            async db => (await ImportCheck.RunAsync(db, file, check, cancellation)).Preview);
    }
}
