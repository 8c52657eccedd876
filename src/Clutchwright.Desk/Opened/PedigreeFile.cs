using Clutchwright.Desk.Words;
using Clutchwright.Stock;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Opened;

/// <summary>A pedigree file taken for a stock of its own, without the keeper's book.</summary>
/// <remarks>Every question that takes <c>FILE.csv</c> reads it here, by the rules of an import into an empty stock: a parent that
/// is named must have a row. A name without one is far more often a slip of the pen than a founder, and taken for a founder it would make
/// animals less related, and less is believed of them, than is so; a founder's own parents are left empty.</remarks>
internal sealed class PedigreeFile
{
    private PedigreeFile(IReadOnlyList<Animal> animals, AnimalFile file) => (Animals, Counts, SireWeights) = (animals, file.Counts(), SireChances.Of(file.SireWeights()));

    /// <summary>The animals with their statements, in the order of the file.</summary>
    public IReadOnlyList<Animal> Animals { get; }

    /// <summary>How many young those animals stand for that are several, of which only a count was kept.</summary>
    public IReadOnlyDictionary<AnimalId, int> Counts { get; }

    /// <summary>The chances of possible sires, where the file gives them.</summary>
    public SireChances SireWeights { get; }

    /// <summary>The stock that is asked about: a file, or else the keeper's own.</summary>
    /// <param name="catalogue">What animals are believed to be by.</param>
    /// <param name="file">The file; <c>null</c>: the keeper's stock.</param>
    /// <param name="stock">Opens the keeper's stock.</param>
    /// <param name="cancel">Stops the reading.</param>
    /// <returns>The stock, or everything that is wrong with the file.</returns>
    public static async Task<Answer<StockState>> StateAsync(OpenCatalogue catalogue, NamedFile? file, Func<StockBeliefs> stock, CancellationToken cancel)
    {
        if (file is null)
        {
            return await stock().ReadAsync(catalogue, cancel);
        }

        var read = await ReadAsync(catalogue, file, cancel);
        return read.Value is { } pedigree ? new StockState(default, StockRecord.Of(catalogue, pedigree), null, null, cancel) : read.Problems.ToArray();
    }

    /// <summary>Reads a file.</summary>
    /// <param name="catalogue">For the trade text in it.</param>
    /// <param name="file">The file.</param>
    /// <param name="cancel">Stops the reading.</param>
    /// <returns>The animals, or everything that is wrong with the file, with the line as an editor counts.</returns>
    public static Task<Answer<PedigreeFile>> ReadAsync(OpenCatalogue catalogue, NamedFile file, CancellationToken cancel) =>
        ReadAsync((column, text) => StatementReader.Check(catalogue, column, text), file, cancel);

    /// <summary>Reads a file whose words are understood in another way.</summary>
    /// <param name="check">What is wrong with a text of a column; <c>null</c>: nothing.</param>
    /// <param name="file">The file.</param>
    /// <param name="cancel">Stops the reading.</param>
    /// <returns>As above.</returns>
    public static async Task<Answer<PedigreeFile>> ReadAsync(CheckTradeText check, NamedFile file, CancellationToken cancel)
    {
        using var stream = new MemoryStream(file.Content.ToArray(), writable: false);
        var read = await AnimalFile.ReadAsync(stream, null, cancel);
        var animals = read.ToAnimals(check);
        return animals switch
        {
            { IsDone: true, Value.Count: 0 } => new AskedWrongly(file.Name, "The file has no animals. Below the header each animal has a row."),
            { IsDone: true } => new PedigreeFile(animals.Value, read),
            { Problem: Stock.Import.ImportProblem.Refused refused } => refused.Problems.Select(p => Say(file.Name, p)).ToArray(),
            _ => new AskedWrongly(file.Name, ProblemWords.Say(animals.Problem).ToString()),
        };
    }

    private static AskedWrongly Say(string name, RowProblem problem)
    {
        var place = (problem.Line, problem.Column) switch
        {
            (0, _) => name,
            (_, null) => $"{name}, line {problem.Line}",
            _ => $"{name}, line {problem.Line}, column {problem.Column}",
        };
        var text = problem.Problem is Stock.Import.ImportProblem.ParentUnknown parent
            ? $"{parent.Tag} has no row in the file. "
                + (parent.Nearest is null ? "Add one (a founder has no sire and no dam), or leave the cell empty."
                    : $"Did you mean {parent.Nearest}? Else add a row for it, or leave the cell empty.")
            : ProblemWords.Say(problem.Problem).ToString();
        return new(place, text);
    }
}
