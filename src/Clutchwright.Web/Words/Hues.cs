using System.Globalization;

namespace Clutchwright.Web.Words;

/// <summary>Colours between two colours.</summary>
internal static class Hues
{
    /// <summary>The colour a share of the way from one sRGB colour to another.</summary>
    /// <param name="from">As <c>#RRGGBB</c>.</param>
    /// <param name="to">As <c>#RRGGBB</c>.</param>
    /// <param name="share">0: the first, 1: the second.</param>
    public static string Between(string from, string to, double share) =>
        string.Concat("#", Channel(from, to, 1, share), Channel(from, to, 3, share), Channel(from, to, 5, share));

    private static string Channel(string from, string to, int start, double share)
    {
        var first = int.Parse(from.AsSpan(start, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        var second = int.Parse(to.AsSpan(start, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        return ((int)Math.Round(first + ((second - first) * share), MidpointRounding.AwayFromZero)).ToString("x2", CultureInfo.InvariantCulture);
    }
}
