using Clutchwright.Sheets.Papers;

namespace Clutchwright.Sheets.Drawings;

/// <summary>What a part of a page is, for readers that do not see it.</summary>
public enum PartKind
{
    /// <summary>The title of the sheet.</summary>
    Title = 1,

    /// <summary>A heading.</summary>
    Heading = 2,

    /// <summary>A paragraph.</summary>
    Paragraph = 3,

    /// <summary>A picture; its words stand for it.</summary>
    Figure = 4,

    /// <summary>A table, of rows.</summary>
    Table = 5,

    /// <summary>A row of a table, of cells.</summary>
    Row = 6,

    /// <summary>A cell that heads a column or a row.</summary>
    HeaderCell = 7,

    /// <summary>A cell.</summary>
    Cell = 8,

    /// <summary>What says nothing: rules, page numbers.</summary>
    Ornament = 9,
}

/// <summary>A part of a page.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Marks">What is drawn.</param>
public record PlacedPart(PartKind Kind, IReadOnlyList<Mark> Marks)
{
    /// <summary>Gets the parts within it, drawn after its marks.</summary>
    public IReadOnlyList<PlacedPart> Parts { get; init; } = [];

    /// <summary>Gets the words that stand for a figure.</summary>
    public string Words { get; init; } = string.Empty;

    internal PlacedPart Moved(double right, double down) => this with
    {
        Marks = [.. Marks.Select(m => m.Moved(right, down))],
        Parts = [.. Parts.Select(p => p.Moved(right, down))],
    };
}

/// <summary>A page with all that is drawn on it.</summary>
/// <param name="Paper">Its size.</param>
/// <param name="Parts">In reading order.</param>
public sealed record PlacedPage(PaperSize Paper, IReadOnlyList<PlacedPart> Parts);
