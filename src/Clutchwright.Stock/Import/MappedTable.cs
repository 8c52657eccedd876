using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Export;

namespace Clutchwright.Stock.Import;

/// <summary>A CSV text with what each of its columns is taken for.</summary>
/// <typeparam name="TField">The fields of the kind of record.</typeparam>
internal sealed class MappedTable<TField>
    where TField : struct, Enum
{
    private const int MostColumns = 1_000;
    private const int MostShown = 200;

    private readonly Dictionary<TField, int> _at;

    private MappedTable(TableFields<TField> fields, char delimiter, IReadOnlyList<ColumnMapping<TField>> columns, List<CsvRecord> records, IReadOnlyList<RowProblem> problems)
    {
        (Fields, Delimiter, Columns, Problems) = (fields, delimiter, columns, problems);
        _at = columns.Where(column => fields.IsOwn(column.Field)).GroupBy(column => column.Field).ToDictionary(same => same.Key, same => same.First().Index);
        Kept = [.. columns.Where(column => EqualityComparer<TField>.Default.Equals(column.Field, fields.KeptAsNote))];
        Samples = [.. columns.Select(column => records
            .Skip(1)
            .Where(record => column.Index < record.Cells.Count && !string.IsNullOrWhiteSpace(record.Cells[column.Index]))
            .Select(record => TextRules.Shorten(SpreadsheetCell.Unprotect(record.Cells[column.Index]).Trim(), MostShown))
            .FirstOrDefault())];
        Records = problems.Count > 0 ? [] : [.. records.Skip(1)];
    }

    public TableFields<TField> Fields { get; }

    public char Delimiter { get; }

    public IReadOnlyList<ColumnMapping<TField>> Columns { get; }

    /// <summary>The columns that are kept as notes.</summary>
    public IReadOnlyList<ColumnMapping<TField>> Kept { get; }

    public IReadOnlyList<string?> Samples { get; }

    /// <summary>The records below the header; none where there are <see cref="Problems"/>.</summary>
    public IReadOnlyList<CsvRecord> Records { get; }

    /// <summary>What is wrong with the file as a whole or its header.</summary>
    public IReadOnlyList<RowProblem> Problems { get; }

    public static MappedTable<TField> Unreadable(TableFields<TField> fields, RowProblem problem) => new(fields, ',', [], [], [problem]);

    /// <summary>Finds the delimiter and what each column is.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="fields">What a column can be.</param>
    /// <param name="chosen">What the keeper says that columns are, by their index from 0; the others go by their header.</param>
    public static MappedTable<TField> Read(string text, TableFields<TField> fields, IReadOnlyDictionary<int, TField> chosen)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return Unreadable(fields, new RowProblem(0, 1, null, null, new ImportProblem.Empty { Names = Names(fields) }));
        }

        var delimiter = CsvRecords.Sniff(text, cell => fields.IsOwn(fields.FieldOf(cell)));
        var records = CsvRecords.Read(text, delimiter, fields.MostRows == int.MaxValue ? int.MaxValue : fields.MostRows + 2);
        var header = records[0];
        if (header.Cells.Count > MostColumns)
        {
            return Unreadable(fields, new RowProblem(header.Row, header.Line, null, null, new ImportProblem.TooManyColumns(header.Cells.Count, MostColumns)));
        }

        if (records.Count - 1 > fields.MostRows)
        {
            return Unreadable(fields, new RowProblem(0, header.Line, null, null, new ImportProblem.TooManyRows(fields.MostRows)));
        }

        var labels = Labels(header.Cells);
        ColumnMapping<TField>[] columns = [.. header.Cells.Select((cell, index) => chosen.TryGetValue(index, out var field)
            ? new ColumnMapping<TField>(index, labels[index], field, IsChosen: true)
            : new ColumnMapping<TField>(index, labels[index], fields.FieldOf(SpreadsheetCell.Unprotect(cell)), IsChosen: false))];
        var problems = WhyNot(columns, fields, chosen).Select(found => new RowProblem(header.Row, header.Line, found.Header, found.Header, found.Problem))
            .Concat(header.Problem is null ? [] : [new RowProblem(header.Row, header.Line, null, null, header.Problem)])
            .ToList();
        return new(fields, delimiter, columns, records, problems);
    }

    /// <summary>Where a field stands; null: no column is taken for it.</summary>
    public int? IndexOf(TField field) => _at.TryGetValue(field, out var index) ? index : null;

    private static IReadOnlyList<string> Names(TableFields<TField> fields) => [.. fields.Written.Select(column => column.Name)];

    // Each column can be named: the second of a text bears a number, one without a text its place.
    private static string[] Labels(IReadOnlyList<string> header)
    {
        var labels = new string[header.Count];
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        for (var i = 0; i < labels.Length; i++)
        {
            var text = TextRules.Shorten(header[i].Trim(), MostShown);
            var label = text.Length == 0 ? FormattableString.Invariant($"column {i + 1}") : text;
            for (var again = 2; !taken.Add(label); again++)
            {
                label = FormattableString.Invariant($"{text} ({again})");
            }

            labels[i] = label;
        }

        return labels;
    }

    private static IEnumerable<(string? Header, ImportProblem Problem)> WhyNot(
        ColumnMapping<TField>[] columns, TableFields<TField> fields, IReadOnlyDictionary<int, TField> chosen)
    {
        foreach (var index in chosen.Keys.Where(index => index < 0 || index >= columns.Length).Order())
        {
            yield return (null, new ImportProblem.NoSuchColumn(index));
        }

        foreach (var needed in fields.Needed.Where(field => !Array.Exists(columns, column => EqualityComparer<TField>.Default.Equals(column.Field, field))))
        {
            yield return (null, new ImportProblem.NoColumn(fields.NameOf(needed)) { Headers = [.. columns.Select(column => column.Header)] });
        }

        foreach (var same in columns.Where(column => fields.IsOwn(column.Field)).GroupBy(column => column.Field))
        {
            foreach (var again in same.Skip(1))
            {
                yield return (again.Header, new ImportProblem.ColumnTwice(fields.NameOf(same.Key), again.Header, same.First().Header));
            }
        }
    }
}
