using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Animals;

/// <summary>What would an import of this file do? Writes nothing.</summary>
public sealed class PreviewImport
{
    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;

    internal PreviewImport(OpenBook book, OpenCatalogue catalogue)
    {
        _book = book;
        _catalogue = catalogue;
    }

    /// <summary>Reads the file and checks it against the stock.</summary>
    /// <param name="file">The file.</param>
    /// <param name="mapping">By header, in any case: the word of a field. Headers left out go by their names.</param>
    /// <param name="cancel">Stops the reading.</param>
    public async Task<ImportPreview> RunAsync(
        ReadOnlyMemory<byte> file, IReadOnlyDictionary<string, string?>? mapping, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var read = await ImportReader.ReadAsync(file, mapping, problems, cancel);
        var preview = (await new ReadAnimalFile(_book.Book, (column, text) => StatementReader.Check(_catalogue, column, text))
            .RunAsync(read, cancel)).Expect();
        return new(
            read.Columns.Select(c => new ImportColumn(
                c.Header, c.Field == AnimalField.KeptAsNote ? null : ImportReader.Word(c.Field), read.Samples[c.Index])).ToArray(),
            ImportReader.Fields.Select(f => f.Word).ToArray(),
            preview.Rows.Where(r => r.Fate != RowFate.Refused).Select(r => new ImportRow(r.Row.Row, r.Row.Tag, Say(r.Row), r.Fate == RowFate.AlreadyThere)).ToArray(),
            [
                .. problems.Select(p => new ImportProblem(0, null, p.Text)),
                .. preview.Problems.Select(ImportReader.Say),
            ]);
    }

    private static string Say(AnimalRow row)
    {
        var parts = new List<string>();
        Add(row.Name);
        Add(row.Sex switch { Sex.Male => "male", Sex.Female => "female", null => "not sexed" });
        Add(row.Hatched is { } hatched ? $"hatched {hatched.Words}" : null);
        Add(row.Sire is { } sire ? $"sire {sire}" : row.PossibleSires.Count > 0 ? $"sire one of {string.Join(", ", row.PossibleSires)}" : null);
        Add(row.Dam is { } dam ? $"dam {dam}" : null);
        foreach (var statement in row.Statements)
        {
            Add($"{StatementWords.Of(statement.Kind)} {statement.Text}".TrimEnd());
        }

        return string.Join(", ", parts);

        void Add(string? part)
        {
            if (!string.IsNullOrWhiteSpace(part))
            {
                parts.Add(part);
            }
        }
    }
}
