using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Labels;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Papers;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Sheets.Tests.Testing;

/// <summary>Labels and sheets with invented words.</summary>
internal static class Samples
{
    public static readonly DateTimeOffset Made = new(2026, 5, 1, 12, 0, 0, TimeSpan.Zero);

    public static TubLabel Label(string tag = "A-1", params string[] codes) => new(tag,
    [
        new("name", [new("Ågnès")], 30),
        new("look", [new("Pastel", TextStyle.Bold, true), new(" "), new("Clown", TextStyle.Bold, true)], 100),
        new("what it carries", [new("66% het Pied", TextStyle.Italic, true), new(" (2 in 3, computed)")], 95) { Shorter = [new("66% het Pied", TextStyle.Italic, true), new(" (2/3)")] },
        new("sex and hatch date", [new("0.1 female, hatched 2024-07-03")], 90),
        new("parents", [new("B-1 × C-1")], 50),
    ])
    {
        Codes = codes,
    };

    public static byte[] Roll(PlacedLabel label) => PdfWriter.Write("Label", "en", Made, LabelGrid.Roll(label.WidthMm, label.HeightMm).Lay([label]));

    public static SheetDocument Document(params SheetBlock[] blocks) => new("Title of it", blocks) { Subtitle = "below", Foot = "at the foot" };

    public static byte[] Pdf(SheetDocument document, PaperSize? paper = null) => PdfWriter.Write(document.Title, document.Language, Made, PageSetter.Set(document, paper ?? PaperSize.A4));
}
