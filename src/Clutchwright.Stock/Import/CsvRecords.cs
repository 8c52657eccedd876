using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Clutchwright.Stock.Import;

/// <summary>The records of a CSV text, and what parts their cells.</summary>
internal static class CsvRecords
{
    private static readonly char[] Delimiters = [',', ';', '\t'];

    /// <summary>The delimiter that gives the most columns we know, or else the most columns.</summary>
    public static char Sniff(string text, Func<string, bool> isKnown) => Delimiters
        .Select(delimiter => (Delimiter: delimiter, Header: FirstRecord(text, delimiter)))
        .OrderByDescending(d => d.Header.Count(isKnown))
        .ThenByDescending(d => d.Header.Length)
        .First().Delimiter;

    /// <summary>Every record that is not blank, but no more than so many.</summary>
    public static List<CsvRecord> Read(string text, char delimiter, int most = int.MaxValue)
    {
        var records = new List<CsvRecord>();
        string? bad = null;
        using var reader = new StringReader(text);
        using var parser = new CsvParser(reader, Configuration(delimiter, found => bad ??= found.Field));
        var line = 1;
        while (records.Count < most && parser.Read())
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

    private static CsvConfiguration Configuration(char delimiter, Action<BadDataFoundArgs> badData) =>
        new(CultureInfo.InvariantCulture)
        {
            Delimiter = delimiter.ToString(),
            Mode = CsvMode.RFC4180,
            IgnoreBlankLines = false,
            BadDataFound = found => badData(found),
        };

    private static bool IsBlank(string[] cells) => Array.TrueForAll(cells, string.IsNullOrWhiteSpace);
}

/// <summary>One record of a file, with where it stands and, if it is broken, how.</summary>
internal sealed record CsvRecord(int Row, int Line, IReadOnlyList<string> Cells, ImportProblem? Problem);
