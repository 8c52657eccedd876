using Clutchwright.Sheets.Fonts;

namespace Clutchwright.Sheets.Texts;

/// <summary>A piece of a set line.</summary>
/// <param name="Text">The text.</param>
/// <param name="Style">How it is set.</param>
/// <param name="X">Where it begins, from the line's left end.</param>
/// <param name="Width">How wide it is.</param>
public sealed record SetPiece(string Text, TextStyle Style, double X, double Width);

/// <summary>A set line: pieces from left to right.</summary>
/// <param name="Pieces">The pieces.</param>
public sealed record SetLine(IReadOnlyList<SetPiece> Pieces)
{
    /// <summary>Gets how wide it is.</summary>
    public double Width => Pieces.Count == 0 ? 0 : Pieces[^1].X + Pieces[^1].Width;

    /// <summary>Gets the text of the line.</summary>
    public string Text => string.Concat(Pieces.Select(p => p.Text));

    internal static SetLine Of(IEnumerable<(string Text, TextStyle Style)> parts, double size)
    {
        var pieces = new List<SetPiece>();
        var x = 0.0;
        foreach (var (text, style) in parts)
        {
            var width = SheetFonts.Of(style).Width(text, size);
            if (pieces.Count > 0 && pieces[^1].Style == style)
            {
                pieces[^1] = pieces[^1] with { Text = pieces[^1].Text + text, Width = pieces[^1].Width + width };
            }
            else
            {
                pieces.Add(new(text, style, x, width));
            }

            x += width;
        }

        return new(pieces);
    }
}
