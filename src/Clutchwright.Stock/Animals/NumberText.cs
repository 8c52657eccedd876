using System.Globalization;

namespace Clutchwright.Stock.Animals;

/// <summary>Reads a number as a keeper writes it.</summary>
public static class NumberText
{
    /// <summary>The number; null: it is none. 62,5 is a decimal as 62.5 is, but 1,450 is meant as thousands by some and as a little over one by others, and is refused.</summary>
    public static double? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var number = text.Trim().TrimEnd('g', 'G').Trim();
        var isOpen = number.LastIndexOf(',') is >= 0 and var comma && number.Length - comma == 4;
        return !isOpen && double.TryParse(number.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
    }
}
