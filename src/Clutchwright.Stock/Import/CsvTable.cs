using Clutchwright.Stock.Export;

namespace Clutchwright.Stock.Import;

/// <summary>A CSV file that is no pedigree, row by row: UTF-8 with a header, parted by commas, semicolons or tabs.</summary>
public sealed class CsvTable
{
    private CsvTable(IReadOnlyList<string> header, IReadOnlyList<CsvRow> rows)
    {
        Header = header;
        Rows = rows;
    }

    /// <summary>The cells of the header.</summary>
    public IReadOnlyList<string> Header { get; }

    /// <summary>The rows below it that are not blank; each has as many cells as the header.</summary>
    public IReadOnlyList<CsvRow> Rows { get; }

    /// <summary>Reads a file.</summary>
    /// <returns>The table, or <see cref="ImportProblem.Refused"/> with everything that is wrong with its form.</returns>
    public static Outcome<CsvTable> Read(ReadOnlySpan<byte> content)
    {
        if (!CsvText.Decode(content, out var text, out var badLine))
        {
            return Refused(badLine, new ImportProblem.NotUtf8());
        }

        if (string.IsNullOrWhiteSpace(text))
        {
            return Refused(1, new ImportProblem.Empty { Names = [] });
        }

        var records = CsvRecords.Read(text, CsvRecords.Sniff(text, _ => false));
        var width = records[0].Cells.Count;
        var problems = records
            .Select(r => (Record: r, Problem: r.Problem ?? (r.Cells.Count == width ? null : new ImportProblem.CellCount(r.Cells.Count, width))))
            .Where(r => r.Problem is not null)
            .Select(r => new RowProblem(r.Record.Row, r.Record.Line, null, null, r.Problem!))
            .ToArray();
        return problems.Length > 0
            ? new ImportProblem.Refused(problems)
            : new CsvTable(Cells(records[0]), [.. records.Skip(1).Select(r => new CsvRow(r.Line, Cells(r)))]);

        static string[] Cells(CsvRecord record) => [.. record.Cells.Select(cell => SpreadsheetCell.Unprotect(cell.Trim()).Trim())];
    }

    private static ImportProblem.Refused Refused(int line, ImportProblem problem) => new([new RowProblem(0, line, null, null, problem)]);
}

/// <summary>A row.</summary>
/// <param name="Line">As a text editor counts, from 1.</param>
/// <param name="Cells">Its cells.</param>
public sealed record CsvRow(int Line, IReadOnlyList<string> Cells);
