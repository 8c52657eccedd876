using System.Globalization;
using System.Text;
using Clutchwright.Catalogue.TradeTexts;

namespace Clutchwright.Stock.Animals;

/// <summary>The keeper's own ids.</summary>
internal static class Tags
{
    public const int MaxLength = 60;

    /// <summary>Parts the tags of several possible sires in a file.</summary>
    public const char Separator = '|';

    private const int DigitsInOrder = 12;

    public static bool IsValid(string tag) =>
        tag.Length is > 0 and <= MaxLength && TextRules.IsPlainLine(tag) && !tag.Contains(Separator, StringComparison.Ordinal)
        && tag.Trim().Length == tag.Length;

    /// <summary>Two tags are the same if their keys are.</summary>
    public static string Key(string tag) => TextRules.IsStorable(tag) ? TextRules.Fold(tag.Trim()) : tag;

    /// <summary>Sorts B2 before B10: runs of digits are padded with zeros.</summary>
    public static string Order(string tag)
    {
        var order = new StringBuilder();
        var digits = new StringBuilder();
        foreach (var c in Key(tag))
        {
            if (char.IsAsciiDigit(c))
            {
                digits.Append(c);
                continue;
            }

            Flush();
            order.Append(c);
        }

        Flush();
        return order.ToString();

        void Flush()
        {
            if (digits.Length > 0)
            {
                order.Append(digits.ToString().PadLeft(DigitsInOrder, '0'));
                digits.Clear();
            }
        }
    }

    /// <summary>The tag that was probably meant: one with at most two letters wrong, left out, added or swapped.</summary>
    public static string? Nearest(string tag, IEnumerable<string> tags)
    {
        var wanted = Key(tag);
        var most = wanted.Length <= 2 ? 1 : 2;
        return tags
            .Select(other => (Tag: other, Distance: Spelling.Distance(wanted, Key(other), most)))
            .Where(other => other.Distance <= most)
            .OrderBy(other => other.Distance)
            .ThenBy(other => other.Tag, StringComparer.Ordinal)
            .Select(other => other.Tag)
            .FirstOrDefault();
    }

    public static string List(IEnumerable<string> tags)
    {
        const int Shown = 5;
        var all = tags.ToList();
        return all.Count <= Shown
            ? string.Join(", ", all)
            : string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", all.Take(Shown))} and {all.Count - Shown} more");
    }
}
