using System.Buffers;
using System.Globalization;
using Clutchwright.Stock.Export;
using CsvHelper;
using CsvHelper.Configuration;

namespace Clutchwright.Stock.Import;

/// <summary>Writes the rows of a file that is read back to the same: cells that a spreadsheet could take for a formula with an apostrophe before them, lines
/// ended by CR LF.</summary>
internal static class CsvOutput
{
    private static readonly SearchValues<char> ToQuote = SearchValues.Create(",;\t\"\r\n");

    /// <summary>Told its line ending, the library would quote for that one only; a reader takes any.</summary>
    private static readonly CsvConfiguration Configuration = new(CultureInfo.InvariantCulture)
    {
        Delimiter = ",",
        NewLine = "\r\n",
        ShouldQuote = cell => cell.Field is { Length: > 0 } text
            && (text.AsSpan().ContainsAny(ToQuote) || char.IsWhiteSpace(text[0]) || char.IsWhiteSpace(text[^1])),
    };

    /// <param name="writer">Takes the text; it should write UTF-8 and is left open.</param>
    /// <param name="header">The names of the columns.</param>
    /// <param name="rows">The cells of each row, before they are protected.</param>
    /// <param name="cancellation">Stops between rows.</param>
    /// <returns>How many rows were written.</returns>
    public static async Task<int> WriteAsync(TextWriter writer, IEnumerable<string> header, IEnumerable<IReadOnlyList<string>> rows, CancellationToken cancellation)
    {
        var count = 0;
        await using var csv = new CsvWriter(writer, Configuration, leaveOpen: true);
        foreach (var name in header)
        {
            csv.WriteField(name);
        }

        await csv.NextRecordAsync();
        foreach (var row in rows)
        {
            cancellation.ThrowIfCancellationRequested();
            foreach (var cell in row)
            {
                csv.WriteField(SpreadsheetCell.Protect(cell));
            }

            await csv.NextRecordAsync();
            count++;
        }

        await csv.FlushAsync();
        return count;
    }
}
