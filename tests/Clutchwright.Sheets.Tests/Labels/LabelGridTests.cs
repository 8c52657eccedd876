using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Labels;
using Clutchwright.Sheets.Papers;
using Clutchwright.Sheets.Tests.Testing;
using UglyToad.PdfPig;

namespace Clutchwright.Sheets.Tests.Labels;

public sealed class LabelGridTests
{
    private static readonly LabelGrid Grid = new(PaperSize.A4, 62, 36, 3, 7) { LeftMm = 10, TopMm = 16.5, AcrossMm = 2, DownMm = 2 };

    [Theory]
    [InlineData(0, 10, 16.5)]
    [InlineData(2, 138, 16.5)]
    [InlineData(3, 10, 54.5)]
    [InlineData(20, 138, 244.5)]
    public void At_Place_IsRowByRow(int place, double x, double y) => Assert.Equal((x, y), Grid.At(place));

    [Fact]
    public void Fits_OneMillimetreTooMuch_IsFalse()
    {
        Assert.True(Grid.Fits);
        Assert.False((Grid with { LeftMm = 21 }).Fits);
        Assert.False((Grid with { TopMm = 34 }).Fits);
    }

    [Fact]
    public void Lay_FromPlaceFive_BeginsThereAndGoesOnOnTheNextPage()
    {
        var labels = Enumerable.Range(1, 20).Select(i => LabelFitter.Fit(new($"N{i:00}", []), 62, 36)).ToArray();

        using var pdf = PdfDocument.Open(PdfWriter.Write("Labels", "en", Samples.Made, Grid.Lay(labels, first: 4)));

        Assert.Equal(2, pdf.NumberOfPages);
        var first = pdf.GetPage(1).GetWords().First();
        var (left, top) = (74 * PaperSize.PointsPerMm, (297 - 54.5) * PaperSize.PointsPerMm);
        Assert.Equal("N01", first.Text);
        Assert.InRange(first.BoundingBox.Left, left, left + (62 * PaperSize.PointsPerMm));
        Assert.InRange(first.BoundingBox.Top, top - (36 * PaperSize.PointsPerMm), top);
        Assert.Equal(["N18", "N19", "N20"], pdf.GetPage(2).GetWords().Select(w => w.Text));
    }

    // ISO 216: A4 is 210 x 297 mm. Letter is 8.5 x 11 in, 215.9 x 279.4 mm.
    [Theory]
    [InlineData(210, 297, 595.276, 841.890)]
    [InlineData(215.9, 279.4, 612, 792)]
    [InlineData(25.4, 12.7, 72, 36)]
    public void Lay_Page_HasItsSizeInPoints(double widthMm, double heightMm, double width, double height)
    {
        var grid = new LabelGrid(new(widthMm, heightMm), 20, 12, 1, 1);

        using var pdf = PdfDocument.Open(PdfWriter.Write("Label", "en", Samples.Made, grid.Lay([LabelFitter.Fit(new("A", []), 20, 12)])));

        Assert.Equal(width, pdf.GetPage(1).Width, 0.01);
        Assert.Equal(height, pdf.GetPage(1).Height, 0.01);
    }
}
