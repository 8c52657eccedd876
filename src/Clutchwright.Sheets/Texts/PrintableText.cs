using System.Globalization;
using System.Text;
using Clutchwright.Sheets.Fonts;

namespace Clutchwright.Sheets.Texts;

/// <summary>Makes a text fit for a sheet: what the fonts cannot show becomes a visible box, and is told.</summary>
/// <remarks>Nothing is dropped silently but what has no shape of its own: control characters, marks of direction and joiners.</remarks>
public static class PrintableText
{
    /// <summary>Stands for a letter that the fonts lack.</summary>
    public const char Missing = '\u25A1';

    /// <summary>The text as it is printed.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="missing">Takes the letters that the fonts lack, each once.</param>
    public static string Of(string text, ICollection<string>? missing = null)
    {
        var printed = new StringBuilder(text.Length);
        var letters = StringInfo.GetTextElementEnumerator(Composed(text));
        while (letters.MoveNext())
        {
            var letter = letters.GetTextElement();
            if (letter.EnumerateRunes().All(IsSpace))
            {
                printed.Append(letter.Contains('\u00A0', StringComparison.Ordinal) ? '\u00A0' : ' ');
                continue;
            }

            var shown = letter.EnumerateRunes().Where(r => !IsShapeless(r)).ToArray();
            if (shown.All(HasAll))
            {
                foreach (var rune in shown)
                {
                    printed.Append(rune);
                }
            }
            else
            {
                printed.Append(Missing);
                if (missing is not null && !missing.Contains(letter))
                {
                    missing.Add(letter);
                }
            }
        }

        return printed.ToString();
    }

    /// <summary>Tells which letters stand as boxes; <c>null</c>: none.</summary>
    public static string? Note(IReadOnlyCollection<string> missing)
    {
        const int Most = 12;
        if (missing.Count == 0)
        {
            return null;
        }

        var named = missing.Take(Most).Select(m => string.Join('+', m.EnumerateRunes().Where(r => !IsShapeless(r)).Select(r => $"U+{r.Value:X4}")));
        var more = missing.Count > Most ? $" and {missing.Count - Most} more" : string.Empty;
        return $"{Missing} stands for letters that the sheet's font does not have: {string.Join(", ", named)}{more}.";
    }

    private static string Composed(string text)
    {
        try
        {
            return text.Normalize(NormalizationForm.FormC);
        }
        catch (ArgumentException)
        {
            // Half a surrogate pair: shown as a box.
            return text;
        }
    }

    private static bool HasAll(Rune rune) =>
        SheetFonts.Of(TextStyle.Plain).Has(rune) && SheetFonts.Of(TextStyle.Bold).Has(rune) && SheetFonts.Of(TextStyle.Italic).Has(rune);

    private static bool IsSpace(Rune rune) => Rune.IsWhiteSpace(rune);

    private static bool IsShapeless(Rune rune) => Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format
        || rune.Value is (>= 0xFE00 and <= 0xFE0F) or (>= 0xE0100 and <= 0xE01EF);
}
