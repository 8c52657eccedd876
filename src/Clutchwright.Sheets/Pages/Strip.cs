using Clutchwright.Sheets.Drawings;

namespace Clutchwright.Sheets.Pages;

/// <summary>A piece of a sheet that stands on one page.</summary>
/// <param name="Kind">What it is a part of.</param>
/// <param name="Group">Strips of one group on one page are one part of it.</param>
/// <param name="Height">Its height in points.</param>
/// <param name="Marks">What is drawn, from its upper left corner.</param>
internal sealed record Strip(PartKind Kind, object Group, double Height, IReadOnlyList<Mark> Marks)
{
    /// <summary>Gets the parts within it.</summary>
    public IReadOnlyList<PlacedPart> Parts { get; init; } = [];

    /// <summary>Gets what is drawn beside, and says nothing.</summary>
    public IReadOnlyList<Mark> Ornaments { get; init; } = [];

    /// <summary>Gets the room above it, none at the top of a page.</summary>
    public double Above { get; init; }

    /// <summary>Gets whether the next strip stands on the same page.</summary>
    public bool IsWithNext { get; init; }

    /// <summary>Gets the words that stand for a figure.</summary>
    public string Words { get; init; } = string.Empty;

    /// <summary>Gets the strip that is set again where the group goes on, on the next page.</summary>
    public Strip? Again { get; init; }
}
