using Clutchwright.Sheets.Codes;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Sheets.Labels;

/// <summary>What a label is to say, before it is known what there is room for.</summary>
/// <param name="Tag">The keeper's id of the animal, set large.</param>
/// <param name="Entries">All else, in the order of the label.</param>
public sealed record TubLabel(string Tag, IReadOnlyList<LabelEntry> Entries)
{
    /// <summary>Gets the texts that its QR code may hold, the best first: the first for which there is room is taken; none: it has no code.</summary>
    public IReadOnlyList<string> Codes { get; init; } = [];
}

/// <summary>Something that a label says.</summary>
/// <param name="Name">What it is, for telling that it was left out.</param>
/// <param name="Runs">The text.</param>
/// <param name="Importance">What is least important is left out first.</param>
public sealed record LabelEntry(string Name, IReadOnlyList<TextRun> Runs, int Importance)
{
    /// <summary>Gets the same in fewer words, for a label on which not all has room; <c>null</c>: there are none fewer.</summary>
    public IReadOnlyList<TextRun>? Shorter { get; init; }
}

/// <summary>A label with everything at its place.</summary>
/// <param name="Tag">The keeper's id of the animal.</param>
/// <param name="WidthMm">Its width in millimetres.</param>
/// <param name="HeightMm">Its height in millimetres.</param>
/// <param name="Texts">The pieces of text, in reading order.</param>
/// <param name="LeftOut">What there was no room for.</param>
public sealed record PlacedLabel(string Tag, double WidthMm, double HeightMm, IReadOnlyList<LabelPiece> Texts, IReadOnlyList<string> LeftOut)
{
    /// <summary>Gets the QR code; <c>null</c>: none.</summary>
    public QrMatrix? Code { get; init; }

    /// <summary>Gets the text of the code; <c>null</c>: there is none.</summary>
    public string? CodeText { get; init; }

    /// <summary>Gets where the dark part of the code begins, in millimetres.</summary>
    public (double X, double Y) CodeAtMm { get; init; }

    /// <summary>Gets how wide a module of the code is in millimetres.</summary>
    public double ModuleMm { get; init; }

    /// <summary>Gets the letters that the fonts lack.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];
}

/// <summary>A piece of text on a label.</summary>
/// <param name="XMm">Where it begins, in millimetres.</param>
/// <param name="BaselineMm">The line it stands on, in millimetres.</param>
/// <param name="Size">The font size in points.</param>
/// <param name="Style">How it is set.</param>
/// <param name="Words">The text.</param>
/// <param name="IsNewLine">Whether it begins a line.</param>
public sealed record LabelPiece(double XMm, double BaselineMm, double Size, TextStyle Style, string Words, bool IsNewLine);
