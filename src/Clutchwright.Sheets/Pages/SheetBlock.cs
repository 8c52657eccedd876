using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Sheets.Pages;

/// <summary>A part of a sheet that runs over as many pages as it needs.</summary>
public abstract record SheetBlock
{
    private SheetBlock()
    {
    }

    /// <summary>A heading.</summary>
    /// <param name="Text">The heading.</param>
    public sealed record Heading(string Text) : SheetBlock;

    /// <summary>A paragraph.</summary>
    /// <param name="Runs">Its text.</param>
    /// <param name="IsSmall">Whether it is set smaller.</param>
    /// <param name="IsLead">Whether it is set larger, as the first thing to read.</param>
    public sealed record Paragraph(IReadOnlyList<TextRun> Runs, bool IsSmall = false, bool IsLead = false) : SheetBlock;

    /// <summary>Facts with their names.</summary>
    /// <param name="Lines">One below the other.</param>
    public sealed record Facts(IReadOnlyList<SheetFact> Lines) : SheetBlock;

    /// <summary>A table.</summary>
    /// <param name="Columns">Their heads and shares of the width.</param>
    /// <param name="Rows">Row by row, as many cells as there are columns.</param>
    public sealed record Table(IReadOnlyList<SheetColumn> Columns, IReadOnlyList<IReadOnlyList<IReadOnlyList<TextRun>>> Rows) : SheetBlock;

    /// <summary>Points, one below the other.</summary>
    /// <param name="Items">The points.</param>
    public sealed record Points(IReadOnlyList<IReadOnlyList<TextRun>> Items) : SheetBlock;

    /// <summary>Something that must not be overlooked.</summary>
    /// <param name="Title">In a word or two.</param>
    /// <param name="Runs">Its text.</param>
    public sealed record Note(string Title, IReadOnlyList<TextRun> Runs) : SheetBlock;

    /// <summary>A photo.</summary>
    /// <param name="Picture">The photo.</param>
    public sealed record Photo(SheetPhoto Picture) : SheetBlock;

    /// <summary>Lines to sign on.</summary>
    /// <param name="Names">What stands below each.</param>
    public sealed record Signatures(IReadOnlyList<string> Names) : SheetBlock;

    /// <summary>A row of eggs, some of them filled.</summary>
    /// <param name="Filled">How many are filled.</param>
    /// <param name="Count">How many there are.</param>
    /// <param name="Words">What they say.</param>
    public sealed record Eggs(int Filled, int Count, IReadOnlyList<TextRun> Words) : SheetBlock;

    /// <summary>A drawing.</summary>
    /// <param name="Picture">The drawing.</param>
    public sealed record Drawing(SheetDrawing Picture) : SheetBlock;
}

/// <summary>A fact of a sheet.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Runs">The fact; <c>null</c>: a line to write on.</param>
public sealed record SheetFact(string Name, IReadOnlyList<TextRun>? Runs);

/// <summary>A column of a table.</summary>
/// <param name="Head">Its head.</param>
/// <param name="Share">Its share of the width, against the others'.</param>
public sealed record SheetColumn(string Head, double Share);

/// <summary>A drawing made of lines and text.</summary>
/// <param name="Width">Its width in points.</param>
/// <param name="Height">Its height in points.</param>
/// <param name="Marks">What is drawn.</param>
/// <param name="Words">What it shows, in a sentence.</param>
public sealed record SheetDrawing(double Width, double Height, IReadOnlyList<Mark> Marks, string Words);

/// <summary>A photo of a sheet.</summary>
/// <param name="Name">By what name the picture can be asked for.</param>
/// <param name="Width">Its width in pixels.</param>
/// <param name="Height">Its height in pixels.</param>
/// <param name="Jpeg">The picture, as a JPEG file.</param>
/// <param name="Words">What it shows, in a sentence.</param>
public sealed record SheetPhoto(string Name, int Width, int Height, ReadOnlyMemory<byte> Jpeg, string Words);

/// <summary>A sheet of text.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Blocks">Its parts, in order.</param>
public sealed record SheetDocument(string Title, IReadOnlyList<SheetBlock> Blocks)
{
    /// <summary>Gets its language.</summary>
    public string Language { get; init; } = "en";

    /// <summary>Gets what stands small beside the title.</summary>
    public string Subtitle { get; init; } = string.Empty;

    /// <summary>Gets what stands at the foot of every page.</summary>
    public string Foot { get; init; } = string.Empty;

    /// <summary>Gets the text of a QR code beside the title; <c>null</c>: none.</summary>
    public string? Code { get; init; }
}
