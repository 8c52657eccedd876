using System.Text;

namespace Clutchwright.Stock.Animals;

/// <summary>What text the book can hold: anything that can be written as UTF-8 and read back the same.</summary>
internal static class TextRules
{
    /// <summary>No NUL (SQL functions would end the text there) and no half of a surrogate pair (no UTF-8 for it).</summary>
    public static bool IsStorable(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                i++;
            }
            else if (text[i] == '\0' || char.IsSurrogate(text[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Storable, and without line breaks, tabs and other control characters.</summary>
    public static bool IsPlainLine(string text) =>
        IsStorable(text) && !text.Any(c => char.IsControl(c) || c is '\u2028' or '\u2029');

    /// <summary>Null for text that says nothing.</summary>
    public static string? TrimToNull(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    /// <summary>At most so many characters, cut between whole ones.</summary>
    public static string Shorten(string text, int maxLength)
    {
        if (text.Length <= maxLength)
        {
            return text;
        }

        var end = maxLength - 1;
        return text[..(char.IsHighSurrogate(text[end - 1]) ? end - 1 : end)] + "…";
    }

    /// <summary>The form in which text is compared and searched: composed and in capitals.</summary>
    public static string Fold(string text) => text.Normalize(NormalizationForm.FormC).ToUpperInvariant();
}
