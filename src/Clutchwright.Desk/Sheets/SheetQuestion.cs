using Clutchwright.Sheets.Labels;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Drawings;

namespace Clutchwright.Desk.Sheets;

/// <summary>What a QR code on a sheet holds.</summary>
public enum CodeUse
{
    /// <summary>No code.</summary>
    None = 1,

    /// <summary>The words of the label alone, to be read without any server.</summary>
    Text = 2,

    /// <summary>The address of the animal's page on the keeper's own server.</summary>
    Link = 3,
}

/// <summary>Which labels to print.</summary>
/// <param name="Tags">The animals, in the order of the labels.</param>
public sealed record LabelsQuestion(IReadOnlyList<string> Tags)
{
    /// <summary>Gets how the labels lie, as the keeper writes it.</summary>
    public LabelLayout Layout { get; init; } = new();

    /// <summary>Gets the address of the keeper's server, <c>http://192.168.1.20:5417</c>; <c>null</c>: the code holds the text alone.</summary>
    public string? Link { get; init; }

    /// <summary>Gets whether there is a code at all.</summary>
    public bool WithCode { get; init; } = true;

    /// <summary>Gets whether fine lines show where to cut.</summary>
    public bool WithOutlines { get; init; }
}

/// <summary>How labels lie, as a keeper writes it; what is <c>null</c> is found out.</summary>
public sealed record LabelLayout
{
    /// <summary>Gets the page: <c>a4</c>, <c>letter</c>, <c>roll</c>.</summary>
    public string Page { get; init; } = "a4";

    /// <summary>Gets the size of a label, <c>62x36</c> or <c>2.5x1.5in</c>.</summary>
    public string? Size { get; init; }

    /// <summary>Gets the room left of and above the first label, <c>8x10</c>; <c>null</c>: the labels lie in the middle.</summary>
    public string? Margins { get; init; }

    /// <summary>Gets the gaps across and down, <c>2x2</c>.</summary>
    public string? Gaps { get; init; }

    /// <summary>Gets columns and rows, <c>3x7</c>; <c>null</c>: as many as the page has room for.</summary>
    public string? Grid { get; init; }

    /// <summary>Gets the place of the first label on a part-used sheet, from 1.</summary>
    public string? Start { get; init; }
}

/// <summary>Printed labels.</summary>
/// <param name="Pdf">The file.</param>
/// <param name="Grid">How they lie.</param>
/// <param name="Start">The place of the first, from 1.</param>
/// <param name="Labels">The labels.</param>
/// <param name="Pages">The pages.</param>
/// <param name="Notes">What had no room and what the fonts lack, in sentences.</param>
public sealed record PrintedLabels(
    byte[] Pdf, LabelGrid Grid, int Start, IReadOnlyList<PrintedLabel> Labels, IReadOnlyList<PlacedPage> Pages, IReadOnlyList<string> Notes);

/// <summary>One of them.</summary>
/// <param name="Tag">The animal.</param>
/// <param name="Words">What it says of the genotype.</param>
/// <param name="LeftOut">What had no room.</param>
/// <param name="Code">What the QR code holds.</param>
/// <param name="CodeText">The text of the code; <c>null</c>: there is none.</param>
public sealed record PrintedLabel(string Tag, LabelWords Words, IReadOnlyList<string> LeftOut, CodeUse Code, string? CodeText);

/// <summary>A sheet about one animal.</summary>
public enum SheetKind
{
    /// <summary>All that is recorded of it.</summary>
    Record = 1,

    /// <summary>Its ancestors as a drawing.</summary>
    Lineage = 2,

    /// <summary>What goes with it when it is sold.</summary>
    Sale = 3,
}

/// <summary>Which sheets to print.</summary>
/// <param name="Kind">What each sheet is.</param>
/// <param name="Tags">The animals.</param>
public sealed record SheetQuestion(SheetKind Kind, IReadOnlyList<string> Tags)
{
    /// <summary>Gets the page: <c>a4</c> or <c>letter</c>.</summary>
    public string Page { get; init; } = "a4";

    /// <summary>Gets the address of the keeper's server, for a QR code; <c>null</c>: none.</summary>
    public string? Link { get; init; }

    /// <summary>Gets how many generations of ancestors a lineage chart has.</summary>
    public int Generations { get; init; } = 3;

    /// <summary>Gets what is filled in on a sale sheet.</summary>
    public SaleForm Sale { get; init; } = new();
}

/// <summary>What a keeper fills in on a sale sheet; what is <c>null</c> is a line to write on.</summary>
public sealed record SaleForm
{
    /// <summary>Gets the CITES source codes that a keeper can choose from, with their meaning.</summary>
    public static IReadOnlyList<(string Code, string Words)> Sources { get; } =
    [
        ("C", "bred in captivity"),
        ("F", "born in captivity, not of the second generation"),
        ("R", "ranched: taken as an egg or young and reared"),
        ("W", "taken from the wild"),
        ("U", "source not known"),
    ];

    /// <summary>Gets the full name of who sells.</summary>
    public string? Supplier { get; init; }

    /// <summary>Gets the full name of who buys.</summary>
    public string? Buyer { get; init; }

    /// <summary>Gets the day of the sale, as the keeper writes it.</summary>
    public string? Sold { get; init; }

    /// <summary>Gets the CITES source code.</summary>
    public string? Source { get; init; }
}

/// <summary>A printed sheet.</summary>
/// <param name="Pdf">The file.</param>
/// <param name="Documents">What it says, sheet by sheet, for the screen.</param>
/// <param name="Pages">The pages.</param>
public sealed record PrintedSheet(byte[] Pdf, IReadOnlyList<SheetDocument> Documents, IReadOnlyList<PlacedPage> Pages)
{
    /// <summary>Gets what the fonts lack, in sentences.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Gets the title of the file.</summary>
    public string Title { get; init; } = string.Empty;
}
