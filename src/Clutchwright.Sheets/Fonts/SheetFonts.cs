using Clutchwright.Sheets.Texts;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Clutchwright.Sheets.Fonts;

/// <summary>The typefaces of the sheets.</summary>
public static class SheetFonts
{
    private const string Family = "Source Sans 3";

    private static readonly Dictionary<TextStyle, (string File, Typeface Face)> Faces = new()
    {
        [TextStyle.Plain] = Read("SourceSans3-Regular.ttf"),
        [TextStyle.Bold] = Read("SourceSans3-Bold.ttf"),
        [TextStyle.Italic] = Read("SourceSans3-Italic.ttf"),
    };

    static SheetFonts() => GlobalFontSettings.FontResolver = new Resolver();

    /// <summary>The typeface of a style.</summary>
    public static Typeface Of(TextStyle style) => Faces[style].Face;

    /// <summary>The font that a page is drawn with; <paramref name="size"/> in points.</summary>
    internal static XFont Font(TextStyle style, double size) => new(
        Family,
        size,
        style switch { TextStyle.Bold => XFontStyleEx.Bold, TextStyle.Italic => XFontStyleEx.Italic, _ => XFontStyleEx.Regular },
        new XPdfFontOptions(PdfFontEncoding.Unicode));

    private static (string File, Typeface Face) Read(string name)
    {
        using var stream = typeof(SheetFonts).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font {name} is missing from the assembly.");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return (name, new(copy.ToArray()));
    }

    private sealed class Resolver : IFontResolver
    {
        public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) =>
            new(Faces[bold ? TextStyle.Bold : italic ? TextStyle.Italic : TextStyle.Plain].File);

        public byte[]? GetFont(string faceName) => Faces.Values.First(f => f.File == faceName).Face.File;
    }
}
