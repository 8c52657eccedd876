using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Import;

namespace Clutchwright.Desk.Animals;

/// <summary>Takes all animals of a file into the stock, or none.</summary>
public sealed class ImportStock
{
    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;

    internal ImportStock(OpenBook book, OpenCatalogue catalogue)
    {
        _book = book;
        _catalogue = catalogue;
    }

    /// <summary>Imports the file as the preview showed it.</summary>
    /// <param name="file">The file.</param>
    /// <param name="mapping">By header, in any case: the word of a field.</param>
    /// <param name="fileName">What the file is called, for the history.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is kept.</param>
    public async Task<Answer<ImportDone>> RunAsync(
        ReadOnlyMemory<byte> file, IReadOnlyDictionary<string, string?>? mapping, string fileName, string who, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var read = await ImportReader.ReadAsync(file, mapping, problems, cancel);
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var done = await new ImportAnimals(_book.Book, (column, text) => StatementReader.Check(_catalogue, column, text))
            .RunAsync(read, fileName, who, cancel);
        return done switch
        {
            { IsDone: true } => new ImportDone(done.Value.Added, done.Value.Skipped, done.Value.Deed.Number),
            { Problem: Stock.Import.ImportProblem.Refused refused } => refused.Problems
                .Select(p => new AskedWrongly(
                    p.Row == 0 ? "file" : p.Column is null ? $"row {p.Row}" : $"row {p.Row}, column {p.Column}",
                    Stock.ProblemWords.Say(p.Problem).ToString()))
                .ToArray(),
            _ => Refusals.Of("file", done.Problem),
        };
    }
}
