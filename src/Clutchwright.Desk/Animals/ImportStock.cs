using Clutchwright.Desk.Importing;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

/// <summary>Takes all animals of a file into the stock, or none.</summary>
public sealed class ImportStock
{
    private readonly ImportTable _import;

    internal ImportStock(ImportTable import) => _import = import;

    /// <summary>Imports the file as the preview showed it.</summary>
    /// <param name="file">The file.</param>
    /// <param name="mapping">By header, in any case: the word of a field.</param>
    /// <param name="fileName">What the file is called, for the history.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is kept.</param>
    public Task<Answer<ImportDone>> RunAsync(
        ReadOnlyMemory<byte> file, IReadOnlyDictionary<string, string?>? mapping, string fileName, string who, CancellationToken cancel) =>
        _import.RunAsync(ImportKind.Animals, new(file, fileName, mapping), who, cancel);
}
