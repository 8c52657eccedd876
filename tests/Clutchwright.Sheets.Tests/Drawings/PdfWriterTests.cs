using Clutchwright.Sheets.Labels;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Tests.Testing;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Sheets.Tests.Drawings;

public sealed class PdfWriterTests
{
    private static readonly SheetDocument Document = Samples.Document(
        new SheetBlock.Heading("Heading"),
        new SheetBlock.Paragraph([new("Pastel", TextStyle.Bold), new(" and "), new("66% het Pied", TextStyle.Italic), new(" Ågnès ελ Жя")]),
        new SheetBlock.Table([new("When", 1)], [[[new("today")]]]),
        new SheetBlock.Eggs(1, 4, [new("one in four")]));

    [Fact]
    public void Write_SameAtTheSameTime_IsTheSameToTheByte() => Assert.Equal(Samples.Pdf(Document), Samples.Pdf(Document));

    [Fact]
    public void Write_OtherText_HasAnotherId()
    {
        var (one, other) = (Id(Samples.Pdf(Document)), Id(Samples.Pdf(Document with { Subtitle = "other" })));

        Assert.NotEqual(one, other);

        static string Id(byte[] pdf)
        {
            var text = System.Text.Encoding.Latin1.GetString(pdf);
            var at = text.LastIndexOf("/ID", StringComparison.Ordinal);
            return text[at..(at + 40)];
        }
    }

    [Fact]
    public void Write_Photo_IsTheSameFileInsideAndHasItsWords()
    {
        // 8 x 6 grey pixels.
        var jpeg = Convert.FromBase64String("/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAA0JCgsKCA0LCgsODg0PEyAVExISEyccHhcgLikxMC4pLSwzOko+MzZGNywtQFdBRkxOUlNSMj5aYVpQYEpRUk//wAALCAAGAAgBAREA/8QAFAABAAAAAAAAAAAAAAAAAAAABf/EABkQAAEFAAAAAAAAAAAAAAAAAAADBBdRkf/aAAgBAQAAPwAuSX9Kaf/Z");
        var pdf = Samples.Pdf(Samples.Document(new SheetBlock.Photo(new("name", 8, 6, jpeg, "Photo of A, taken 2026-03-01"))));

        Assert.Matches(@"1\s+0 image\s+8\s+6\s+\w+\s+\d\s+8\s+jpeg", Poppler.Say("pdfimages", pdf, "-list"));
        Assert.Contains(Convert.ToHexString(jpeg), Convert.ToHexString(pdf), StringComparison.Ordinal);
        Assert.Contains("Photo of A, taken 2026-03-01", Poppler.Say("pdftotext", pdf), StringComparison.Ordinal);
        Assert.Contains("Figure", Poppler.Say("pdfinfo", pdf, "-struct"), StringComparison.Ordinal);
        Assert.Equal(pdf, Samples.Pdf(Samples.Document(new SheetBlock.Photo(new("name", 8, 6, jpeg, "Photo of A, taken 2026-03-01")))));
    }

    [Fact]
    public void Write_Fonts_AreEmbeddedSubsetsWithUnicode()
    {
        var fonts = Poppler.Say("pdffonts", Samples.Pdf(Document)).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2).ToArray();

        Assert.Equal(3, fonts.Length);
        Assert.All(fonts, f => Assert.Matches(@"^SHEET[A-C]\+Source Sans 3.*yes yes yes", f));
    }

    [Fact]
    public void Write_Text_IsReadBackByOthers()
    {
        var text = Poppler.Say("pdftotext", Samples.Pdf(Document), "-layout");

        Assert.Contains("Title of it", text, StringComparison.Ordinal);
        Assert.Contains("Pastel and 66% het Pied Ågnès ελ Жя", text, StringComparison.Ordinal);
        Assert.Contains("page 1 of 1", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_File_IsTaggedWithTitleAndLanguage()
    {
        var pdf = Samples.Pdf(Document);

        Assert.Contains("Title:           Title of it", Poppler.Say("pdfinfo", pdf), StringComparison.Ordinal);
        Assert.Matches(@"Tagged:\s+yes", Poppler.Say("pdfinfo", pdf));
        var structure = Poppler.Say("pdfinfo", pdf, "-struct");
        Assert.All(["H1", "H2", "P (block)", "Table", "TR", "TH", "TD"], s => Assert.Contains(s, structure, StringComparison.Ordinal));
        Assert.Contains("/PrintScaling/None", System.Text.Encoding.Latin1.GetString(pdf), StringComparison.Ordinal);
        Assert.Contains("/Lang(en)", System.Text.Encoding.Latin1.GetString(pdf), StringComparison.Ordinal);
    }

    [Fact]
    public void Write_FromManyThreads_GivesTheSame()
    {
        var one = Samples.Roll(LabelFitter.Fit(Samples.Label("T-1", "code"), 62, 36));

        Assert.All(Enumerable.Range(0, 16).AsParallel().Select(_ => Samples.Roll(LabelFitter.Fit(Samples.Label("T-1", "code"), 62, 36))).ToArray(), p => Assert.Equal(one, p));
    }
}
