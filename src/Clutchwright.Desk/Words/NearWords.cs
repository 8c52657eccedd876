using Clutchwright.Catalogue.TradeTexts;

namespace Clutchwright.Desk.Words;

/// <summary>Finds which of some good words a wrong one was probably meant to be, for the faces' own words.</summary>
public static class NearWords
{
    /// <summary>Up to three of the good words, nearest first; none if all are far. Case, spaces and hyphens do not count.</summary>
    public static IReadOnlyList<string> Of(string wrong, IEnumerable<string> good) => Spelling.Nearest(wrong, good);
}
