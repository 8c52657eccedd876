namespace Clutchwright.Stock.Export;

/// <summary>Keeps a spreadsheet from taking text for a formula: an apostrophe goes before it, and comes off when it is read
/// again. Text that looks as if it had one already gets another, so that reading gives what was written.</summary>
internal static class SpreadsheetCell
{
    private const char Guard = '\'';

    /// <summary>What spreadsheets start a formula with, also in full width.</summary>
    private const string Starts = "=+-@\t\r\n＝＋－＠";

    public static string Protect(string text) => LooksLikeFormula(text, 0) ? Guard + text : text;

    public static string Unprotect(string cell) => LooksLikeFormula(cell, 1) ? cell[1..] : cell;

    /// <summary>Whether, after at least so many apostrophes, there stands the start of a formula.</summary>
    private static bool LooksLikeFormula(string text, int leastGuards)
    {
        var guards = 0;
        while (guards < text.Length && text[guards] == Guard)
        {
            guards++;
        }

        return guards >= leastGuards && guards < text.Length && Starts.Contains(text[guards], StringComparison.Ordinal);
    }
}
