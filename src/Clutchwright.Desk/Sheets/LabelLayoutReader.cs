using System.Globalization;
using Clutchwright.Desk.Words;
using Clutchwright.Sheets.Labels;
using Clutchwright.Sheets.Papers;

namespace Clutchwright.Desk.Sheets;

/// <summary>Reads sizes as a keeper writes them, and lays the labels out.</summary>
internal static class LabelLayoutReader
{
    private const double MmPerInch = 25.4;
    private const double MostSideMm = 400;
    private const double EdgeMm = 8;
    private const int MostAlong = 60;

    /// <summary>The paper of a name.</summary>
    public static PaperSize? Paper(string page, List<AskedWrongly> problems, bool withRoll)
    {
        switch (page.Trim().ToUpperInvariant())
        {
            case "A4":
                return PaperSize.A4;
            case "LETTER":
                return PaperSize.Letter;
            case "ROLL" when withRoll:
                return null;
            default:
                string[] good = withRoll ? ["a4", "letter", "roll"] : ["a4", "letter"];
                problems.Add(new("page", $"\"{page}\" is no page. One of: {string.Join(", ", good)}.", DidYouMean: NearWords.Of(page, good)));
                return null;
        }
    }

    /// <summary>The grid; <c>null</c> where something cannot be.</summary>
    public static (LabelGrid Grid, int Start)? Read(LabelLayout layout, List<AskedWrongly> problems)
    {
        var before = problems.Count;
        var paper = Paper(layout.Page, problems, withRoll: true);
        var size = Pair("size", layout.Size, "62x36 (millimetres) or 2.5x1.5in", LabelFitter.LeastSideMm, MostSideMm, problems) ?? (62, 36);
        var margins = Pair("margins", layout.Margins, "8x10: the room left of and above the first label", 0, MostSideMm, problems);
        var gaps = Pair("gaps", layout.Gaps, "2x2: across and down", 0, MostSideMm, problems);
        var counts = Counts(layout.Grid, problems);
        if (problems.Count > before)
        {
            return null;
        }

        LabelGrid grid;
        if (paper is not { } page)
        {
            grid = LabelGrid.Roll(size.Across, size.Down);
            if (margins is not null || gaps is not null || counts is not null)
            {
                problems.Add(new("page", "On a roll each label is a page of its own: there are no margins, gaps or rows and columns to set."));
                return null;
            }
        }
        else
        {
            var (across, down) = gaps ?? (2, 2);
            var (left, top) = margins ?? (EdgeMm, EdgeMm);
            var (columns, rows) = counts ?? (
                Along(page.WidthMm - left - (margins is null ? EdgeMm : 0), size.Across, across),
                Along(page.HeightMm - top - (margins is null ? EdgeMm : 0), size.Down, down));
            grid = new(page, size.Across, size.Down, columns, rows) { AcrossMm = across, DownMm = down, LeftMm = left, TopMm = top };
            if (margins is null)
            {
                grid = grid with
                {
                    LeftMm = Math.Max(0, (page.WidthMm - (columns * size.Across) - ((columns - 1) * across)) / 2),
                    TopMm = Math.Max(0, (page.HeightMm - (rows * size.Down) - ((rows - 1) * down)) / 2),
                };
            }

            if (!grid.Fits)
            {
                problems.Add(new("size", $"{columns} x {rows} labels of {Mm(size.Across)} x {Mm(size.Down)} mm with gaps of {Mm(across)} x {Mm(down)} mm from {Mm(grid.LeftMm)} x {Mm(grid.TopMm)} mm do not fit on a page of {Mm(page.WidthMm)} x {Mm(page.HeightMm)} mm."));
                return null;
            }
        }

        var start = 1;
        if (!string.IsNullOrWhiteSpace(layout.Start)
            && (!int.TryParse(layout.Start, NumberStyles.None, CultureInfo.InvariantCulture, out start) || start < 1 || start > grid.Count))
        {
            problems.Add(new("start", $"\"{layout.Start}\" is no place on this sheet. Write a whole number from 1 to {grid.Count}."));
            return null;
        }

        return (grid, start);
    }

    /// <summary>A length in millimetres as it is written.</summary>
    public static string Mm(double length) => length.ToString("0.##", CultureInfo.CurrentCulture);

    private static int Along(double room, double size, double gap) => Math.Max(1, (int)Math.Floor((room + gap + 1e-6) / (size + gap)));

    private static (int Columns, int Rows)? Counts(string? text, List<AskedWrongly> problems)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        var parts = Split(text);
        if (parts.Length == 2
            && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var columns) && columns is >= 1 and <= MostAlong
            && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var rows) && rows is >= 1 and <= MostAlong)
        {
            return (columns, rows);
        }

        problems.Add(new("grid", $"\"{text}\" is no number of columns and rows. Write it as 3x7, each from 1 to {MostAlong}."));
        return null;
    }

    // Two lengths with an x between, in millimetres or, with in or a double prime, in inches; a comma is a decimal point.
    private static (double Across, double Down)? Pair(string where, string? text, string example, double least, double most, List<AskedWrongly> problems)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        var parts = Split(text);
        var unit = 1.0;
        if (parts.Length == 2)
        {
            var isInches = parts[1].EndsWith("in", StringComparison.OrdinalIgnoreCase) || parts[1].EndsWith('"') || parts[1].EndsWith('″');
            unit = isInches ? MmPerInch : 1.0;
            parts = [.. parts.Select(p => p.TrimEnd('i', 'n', 'I', 'N', 'm', 'M', '"', '″', ' ').Replace(',', '.'))];
        }

        if (parts.Length == 2
            && double.TryParse(parts[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var across)
            && double.TryParse(parts[1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var down)
            && across * unit >= least && across * unit <= most && down * unit >= least && down * unit <= most)
        {
            return (across * unit, down * unit);
        }

        problems.Add(new(where, $"\"{text}\" cannot be taken. Write it as {example}; each from {Mm(least)} to {Mm(most)} mm."));
        return null;
    }

    private static string[] Split(string text) => text.Split(['x', 'X', '×', '*'], StringSplitOptions.TrimEntries);
}
