namespace Clutchwright.Sheets.Texts;

/// <summary>How a text is set: what is seen of an animal bold and upright, what it carries italic, all else plain.</summary>
public enum TextStyle
{
    /// <summary>Upright.</summary>
    Plain = 1,

    /// <summary>Bold and upright.</summary>
    Bold = 2,

    /// <summary>Italic.</summary>
    Italic = 3,
}

/// <summary>A piece of text in one style.</summary>
/// <param name="Text">The text.</param>
/// <param name="Style">How it is set.</param>
/// <param name="IsKeptTogether">Whether it stands on one line wherever there is room for it on one.</param>
public sealed record TextRun(string Text, TextStyle Style = TextStyle.Plain, bool IsKeptTogether = false);
