using System.Globalization;

namespace Clutchwright.Desk.Words;

/// <summary>Reads a number as a keeper writes it.</summary>
internal static class DecimalText
{
    /// <summary>The number; <c>null</c>: it is none. 62,5 is a decimal as 62.5 is, but 1,450 is meant as thousands by some and as a little over one by others, and is refused.</summary>
    public static double? Read(string text)
    {
        var number = text.Trim().TrimEnd('g', 'G').Trim();
        var isOpen = number.LastIndexOf(',') is >= 0 and var comma && number.Length - comma == 4;
        return !isOpen && double.TryParse(number.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
    }
}
