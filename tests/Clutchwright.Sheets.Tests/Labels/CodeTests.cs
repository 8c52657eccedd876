using Clutchwright.Sheets.Codes;
using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Labels;
using Clutchwright.Sheets.Papers;
using Clutchwright.Sheets.Tests.Testing;
using ZXing;
using ZXing.Common;

namespace Clutchwright.Sheets.Tests.Labels;

/// <summary>QR codes are read back from rendered pages by a reader of others (ZXing.Net).</summary>
public sealed class CodeTests
{
    private const string Address = "http://192.168.1.20:5417/stock/animal/T-308";

    [Theory]
    [InlineData(62, 36)]
    [InlineData(30, 50)]
    [InlineData(100, 60)]
    public void Code_OfALabel_IsReadBack(double width, double height) => Assert.Equal(Address, Read(Samples.Roll(LabelFitter.Fit(Samples.Label("T-308", Address), width, height))));

    [Fact]
    public void Code_OfTheSmallestLabelThatHasOne_IsReadBack()
    {
        // The smallest square label, then the lowest broad one, on which there is room for a code.
        for (var side = LabelFitter.LeastSideMm; ; side += 0.5)
        {
            var placed = LabelFitter.Fit(new("T-308", []) { Codes = [Address] }, side * 1.9, side);
            if (placed.Code is null)
            {
                continue;
            }

            Assert.True(placed.ModuleMm >= LabelFitter.LeastModuleMm - 1e-9);
            Assert.InRange(side, LabelFitter.LeastSideMm, 20);
            Assert.Equal(Address, Read(Samples.Roll(placed)));
            return;
        }
    }

    [Fact]
    public void Code_WordsWithAccents_AreReadBack()
    {
        const string Words = "T-308 Ågnès; female; Pastel Clown, 66% het Pied (2 in 3, computed)";

        Assert.Equal(Words, Read(Samples.Roll(LabelFitter.Fit(Samples.Label("T-308", Words), 80, 50))));
    }

    [Fact]
    public void Code_FirstTextTooLong_TakesTheNext()
    {
        var placed = LabelFitter.Fit(Samples.Label("T-308", new string('x', 700), "short"), 62, 36);

        Assert.Equal("short", placed.CodeText);
        Assert.Equal("short", Read(Samples.Roll(placed)));
    }

    [Fact]
    public void Of_TextTooLongForAnyCode_IsNull() => Assert.Null(QrMatrix.Of(new string('x', 5_000), isSmallest: true));

    [Fact]
    public void Codes_OfAWholeSheet_AreAllReadBack()
    {
        var labels = Enumerable.Range(1, 21).Select(i => LabelFitter.Fit(Samples.Label($"T-{i}", $"{Address}{i}"), 62, 36)).ToArray();
        var grid = new LabelGrid(PaperSize.A4, 62, 36, 3, 7) { LeftMm = 10, TopMm = 16.5, AcrossMm = 2, DownMm = 2 };
        var (grey, width, height) = Poppler.Render(PdfWriter.Write("Labels", "en", Samples.Made, grid.Lay(labels)), 200);

        var read = labels.Select((_, i) =>
        {
            var (x, y) = grid.At(i);
            var crop = Crop(grey, width, height, x, y, 62, 36, 200);
            return Decode(crop.Grey, crop.Width, crop.Height);
        });

        Assert.Equal(labels.Select(l => l.CodeText), read);
    }

    private static string? Read(byte[] pdf)
    {
        var (grey, width, height) = Poppler.Render(pdf, 300);
        return Decode(grey, width, height);
    }

    private static string? Decode(byte[] grey, int width, int height)
    {
        var source = new RGBLuminanceSource(grey, width, height, RGBLuminanceSource.BitmapFormat.Gray8);
        var hints = new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true };
        return new ZXing.QrCode.QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source)), hints)?.Text;
    }

    private static (byte[] Grey, int Width, int Height) Crop(byte[] grey, int width, int height, double x, double y, double w, double h, int dpi)
    {
        int P(double mm) => (int)(mm / 25.4 * dpi);
        var (left, top, across, down) = (P(x), P(y), Math.Min(P(w), width - P(x)), Math.Min(P(h), height - P(y)));
        var cut = new byte[across * down];
        for (var row = 0; row < down; row++)
        {
            Array.Copy(grey, ((top + row) * width) + left, cut, row * across, across);
        }

        return (cut, across, down);
    }
}
