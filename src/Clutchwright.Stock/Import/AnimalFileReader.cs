using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Export;
using CsvHelper;
using CsvHelper.Configuration;

namespace Clutchwright.Stock.Import;

/// <summary>Reads the text of a pedigree file: finds the delimiter, maps the columns, reads the rows.</summary>
internal static class AnimalFileReader
{
    private static readonly char[] Delimiters = [',', ';', '\t'];

    public static AnimalFile Read(string text, IReadOnlyDictionary<int, AnimalField> chosen)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return AnimalFile.Unreadable(1, new ImportProblem.Empty());
        }

        var delimiter = Sniff(text);
        var records = Records(text, delimiter);
        var header = records[0];
        var columns = Map(header.Cells, chosen);
        var problems = WhyNot(columns, chosen).Select(found => new RowProblem(header.Row, header.Line, found.Header, found.Header, found.Problem))
            .Concat(header.Problem is null ? [] : [new RowProblem(header.Row, header.Line, null, null, header.Problem)])
            .ToList();
        if (problems.Count > 0)
        {
            return new AnimalFile(delimiter, columns, [], problems) { Samples = SamplesOf(records, columns.Count) };
        }

        var rows = new List<AnimalRow>();
        var unread = new List<string>();
        var firstRowOf = new Dictionary<string, int>(StringComparer.Ordinal);
        var spelling = Spelling(records, columns);
        foreach (var record in records.Skip(1))
        {
            var reader = new AnimalRowReader(record, columns, spelling);
            var row = reader.Read();
            if (reader.Tag is { } tag && !firstRowOf.TryAdd(Tags.Key(tag), record.Row))
            {
                problems.Add(reader.At(AnimalField.Tag, new ImportProblem.IdTwice(tag, firstRowOf[Tags.Key(tag)])));
                row = null;
            }

            problems.AddRange(reader.Problems);
            if (row is not null)
            {
                rows.Add(row);
            }
            else if (reader.Tag is not null)
            {
                unread.Add(reader.Tag);
            }
        }

        return new AnimalFile(delimiter, columns, rows, problems) { UnreadTags = unread, Samples = SamplesOf(records, columns.Count) };
    }

    private static string?[] SamplesOf(List<CsvRecord> records, int columns) =>
        [.. Enumerable.Range(0, columns).Select(column => records
            .Skip(1)
            .Where(record => column < record.Cells.Count && !string.IsNullOrWhiteSpace(record.Cells[column]))
            .Select(record => SpreadsheetCell.Unprotect(record.Cells[column]).Trim())
            .FirstOrDefault())];

    /// <summary>How each id is written in its own row; a parent may be written in another case.</summary>
    private static Dictionary<string, string> Spelling(List<CsvRecord> records, List<ColumnMapping> columns)
    {
        var spelling = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var record in records.Skip(1))
        {
            var tag = new AnimalRowReader(record, columns, spelling).Cell(AnimalField.Tag);
            spelling.TryAdd(Tags.Key(tag), tag);
        }

        return spelling;
    }

    /// <summary>The delimiter that gives the most columns we know, or else the most columns.</summary>
    public static char Sniff(string text) => Delimiters
        .Select(delimiter => (Delimiter: delimiter, Header: FirstRecord(text, delimiter)))
        .OrderByDescending(d => d.Header.Count(cell => Headers.FieldOf(cell) != AnimalField.KeptAsNote))
        .ThenByDescending(d => d.Header.Length)
        .First().Delimiter;

    private static string[] FirstRecord(string text, char delimiter)
    {
        using var reader = new StringReader(text);
        using var parser = new CsvParser(reader, Configuration(delimiter, _ => { }));
        while (parser.Read())
        {
            if (!IsBlank(parser.Record!))
            {
                return parser.Record!;
            }
        }

        return [];
    }

    public static List<CsvRecord> Records(string text, char delimiter)
    {
        var records = new List<CsvRecord>();
        string? bad = null;
        using var reader = new StringReader(text);
        using var parser = new CsvParser(reader, Configuration(delimiter, found => bad ??= found.Field));
        var line = 1;
        while (parser.Read())
        {
            var cells = parser.Record!;
            if (!IsBlank(cells))
            {
                // The parser finds a broken cell only when it is asked for, which it just was.
                records.Add(new CsvRecord(parser.Row, line, cells, bad is null ? null : new ImportProblem.QuotesBroken(bad)));
            }

            bad = null;
            line = parser.RawRow + 1;
        }

        return records;
    }

    private static CsvConfiguration Configuration(char delimiter, Action<BadDataFoundArgs> badData) =>
        new(CultureInfo.InvariantCulture)
        {
            Delimiter = delimiter.ToString(),
            Mode = CsvMode.RFC4180,
            IgnoreBlankLines = false,
            BadDataFound = found => badData(found),
        };

    private static bool IsBlank(string[] cells) => Array.TrueForAll(cells, string.IsNullOrWhiteSpace);

    private static List<ColumnMapping> Map(IReadOnlyList<string> headers, IReadOnlyDictionary<int, AnimalField> chosen) =>
        [.. headers.Select((header, index) => chosen.TryGetValue(index, out var field)
            ? new ColumnMapping(index, header.Trim(), field, IsChosen: true)
            : new ColumnMapping(index, header.Trim(), Headers.FieldOf(SpreadsheetCell.Unprotect(header)), IsChosen: false))];

    private static IEnumerable<(string? Header, ImportProblem Problem)> WhyNot(
        List<ColumnMapping> columns, IReadOnlyDictionary<int, AnimalField> chosen)
    {
        foreach (var index in chosen.Keys.Where(index => index < 0 || index >= columns.Count).Order())
        {
            yield return (null, new ImportProblem.NoSuchColumn(index));
        }

        if (!columns.Exists(column => column.Field == AnimalField.Tag))
        {
            yield return (null, new ImportProblem.NoIdColumn { Headers = [.. columns.Select(column => column.Header)] });
        }

        foreach (var same in columns.Where(column => column.Field is not (AnimalField.KeptAsNote or AnimalField.LeftOut)).GroupBy(column => column.Field))
        {
            foreach (var again in same.Skip(1))
            {
                yield return (again.Header, new ImportProblem.ColumnTwice(same.Key, again.Header, same.First().Header));
            }
        }
    }
}

/// <summary>One record of a file, with where it stands and, if it is broken, how.</summary>
internal sealed record CsvRecord(int Row, int Line, IReadOnlyList<string> Cells, ImportProblem? Problem);
