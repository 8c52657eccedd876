using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Import;

/// <summary>Reads the text of a pedigree file row by row.</summary>
internal static class AnimalFileReader
{
    public static AnimalFile Read(string text, IReadOnlyDictionary<int, AnimalField> chosen)
    {
        var table = MappedTable<AnimalField>.Read(text, Headers.Animals, chosen);
        var problems = table.Problems.ToList();
        var rows = new List<AnimalRow>();
        var unread = new List<string>();
        var firstRowOf = new Dictionary<string, int>(StringComparer.Ordinal);
        var spelling = Spelling(table);
        foreach (var record in table.Records)
        {
            var reader = new AnimalRowReader(new(record, table), spelling);
            var row = reader.Read();
            problems.AddRange(reader.Problems);
            if (reader.Tag is { } tag && !firstRowOf.TryAdd(Tags.Key(tag), record.Row))
            {
                problems.Add(reader.At(AnimalField.Tag, new ImportProblem.IdTwice(tag, firstRowOf[Tags.Key(tag)])));
                row = null;
            }

            if (row is not null)
            {
                rows.Add(row);
            }
            else if (reader.Tag is not null)
            {
                unread.Add(reader.Tag);
            }
        }

        return new AnimalFile(table, rows, problems) { UnreadTags = unread };
    }

    /// <summary>How each id is written in its own row; a parent may be written in another case.</summary>
    private static Dictionary<string, string> Spelling(MappedTable<AnimalField> table)
    {
        var spelling = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var record in table.Records)
        {
            var tag = new RowCells<AnimalField>(record, table).Cell(AnimalField.Tag);
            spelling.TryAdd(Tags.Key(tag), tag);
        }

        return spelling;
    }
}
