using Clutchwright.Desk.Words;
using Clutchwright.Stock;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Import;

namespace Clutchwright.Desk.Animals;

/// <summary>Reads a pedigree file with the mapping a keeper chose by header.</summary>
internal static class ImportReader
{
    /// <summary>The fields a column may be given to, by the words used for them.</summary>
    public static readonly IReadOnlyList<(string Word, AnimalField Field)> Fields =
    [
        ("id", AnimalField.Tag),
        ("name", AnimalField.Name),
        ("sex", AnimalField.Sex),
        ("sire", AnimalField.Sire),
        ("dam", AnimalField.Dam),
        ("hatched", AnimalField.Hatched),
        ("seen", AnimalField.Seen),
        ("told", AnimalField.Told),
        ("ruled_out", AnimalField.RuledOut),
        ("status", AnimalField.Status),
        ("mass_g", AnimalField.MassGrams),
        ("notes", AnimalField.Notes),
        ("statements", AnimalField.Statements),
        ("count", AnimalField.Count),
        ("note", AnimalField.KeptAsNote),
        ("leave out", AnimalField.LeftOut),
    ];

    /// <summary>Reads the file.</summary>
    /// <param name="file">Its bytes.</param>
    /// <param name="mapping">By header, in any case: the word of a field; <c>null</c>: keep as a note.</param>
    /// <param name="problems">Headers or fields that do not exist.</param>
    /// <param name="cancel">Stops the reading.</param>
    public static async Task<AnimalFile> ReadAsync(
        ReadOnlyMemory<byte> file, IReadOnlyDictionary<string, string?>? mapping, List<AskedWrongly> problems, CancellationToken cancel)
    {
        var first = await AnimalFile.ReadAsync(new MemoryStream(file.ToArray()), null, cancel);
        if (mapping is null || mapping.Count == 0)
        {
            return first;
        }

        var chosen = new Dictionary<int, AnimalField>();
        foreach (var (header, word) in mapping)
        {
            var column = first.Columns.FirstOrDefault(c => string.Equals(c.Header.Trim(), header.Trim(), StringComparison.OrdinalIgnoreCase));
            var field = Fields.FirstOrDefault(f => string.Equals(f.Word, word?.Trim() ?? "note", StringComparison.OrdinalIgnoreCase));
            if (column is null)
            {
                problems.Add(new("map", $"The file has no column \"{header}\". Its columns: {string.Join(", ", first.Columns.Select(c => c.Header))}."));
            }
            else if (field.Word is null)
            {
                problems.Add(new("map", $"\"{word}\" is no field. One of: {string.Join(", ", Fields.Select(f => f.Word))}."));
            }
            else
            {
                chosen[column.Index] = field.Field;
            }
        }

        return await AnimalFile.ReadAsync(new MemoryStream(file.ToArray()), chosen, cancel);
    }

    public static string Word(AnimalField field) => Fields.First(f => f.Field == field).Word;

    public static ImportProblem Say(RowProblem problem) =>
        new(problem.Row, problem.Column, ProblemWords.Say(problem.Problem).ToString());
}
