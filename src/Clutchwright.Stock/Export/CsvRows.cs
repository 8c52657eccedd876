using System.Buffers;
using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Clutchwright.Stock.Export;

/// <summary>Writes CSV by RFC 4180: commas, lines ended by CR LF, and cells that a spreadsheet could take for a formula with an apostrophe
/// before them.</summary>
internal static class CsvRows
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
    /// <param name="rows">The cells as they are, before they are protected.</param>
    /// <param name="cancellation">Stops between rows.</param>
    public static async Task WriteAsync(TextWriter writer, IEnumerable<string> header, IEnumerable<IReadOnlyList<string>> rows, CancellationToken cancellation)
    {
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
        }

        await csv.FlushAsync();
    }
}
