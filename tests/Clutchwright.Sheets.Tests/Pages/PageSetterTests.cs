using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Papers;
using Clutchwright.Sheets.Tests.Testing;
using Clutchwright.Sheets.Texts;
using CsCheck;
using UglyToad.PdfPig;

namespace Clutchwright.Sheets.Tests.Pages;

public sealed class PageSetterTests
{
    private static readonly Gen<string> Text = Gen.Char[' ', '~'].Array[0, 300].Select(c => new string(c));

    private static readonly Gen<SheetBlock> Block = Gen.OneOf<SheetBlock>(
        Text.Select(t => (SheetBlock)new SheetBlock.Heading("H" + t[..Math.Min(40, t.Length)])),
        Text.Select(t => (SheetBlock)new SheetBlock.Paragraph([new(t, TextStyle.Italic)])),
        Text.Array[1, 5].Select(t => (SheetBlock)new SheetBlock.Points([.. t.Select(x => (IReadOnlyList<TextRun>)[new(x)])])),
        Text.Select(t => (SheetBlock)new SheetBlock.Note("Note", [new(t)])),
        Text.Array[1, 6].Select(t => (SheetBlock)new SheetBlock.Facts([.. t.Select((x, i) => new SheetFact($"Fact {i}", i == 3 ? null : [new(x)]))])),
        Gen.Select(Text, Gen.Int[1, 60], (t, n) => (SheetBlock)new SheetBlock.Table([new("a", 1), new("b", 2)], [.. Enumerable.Range(0, n).Select(i => (IReadOnlyList<IReadOnlyList<TextRun>>)[[new($"{i}")], [new(t)]])])),
        Gen.Int[0, 60].Select(n => (SheetBlock)new SheetBlock.Eggs(n / 3, n, [new("eggs")])),
        Gen.Const((SheetBlock)new SheetBlock.Signatures(["one", "two"])));

    [Fact]
    public void Set_AnyBlocks_EverythingLiesWithinTheMarginsAndIsThere() =>
        Block.Array[0, 12].Sample(
            blocks =>
            {
                var document = Samples.Document([.. blocks]);

                using var pdf = PdfDocument.Open(Samples.Pdf(document));

                var (left, right, bottom, top) = (17 * PaperSize.PointsPerMm, 193 * PaperSize.PointsPerMm, 6 * PaperSize.PointsPerMm, 284 * PaperSize.PointsPerMm);
                Assert.All(pdf.GetPages().SelectMany(p => p.Letters).Where(l => !string.IsNullOrWhiteSpace(l.Value)), l => Assert.True(
                    l.BoundingBox.Left >= left && l.BoundingBox.Right <= right && l.BoundingBox.Bottom >= bottom && l.BoundingBox.Top <= top, $"{l.Value} {l.BoundingBox}"));
                Assert.All(pdf.GetPages(), p => Assert.Contains($"page {p.Number} of {pdf.NumberOfPages}", p.Text, StringComparison.Ordinal));
                var rows = document.Blocks.OfType<SheetBlock.Table>().Sum(t => t.Rows.Count);
                Assert.True(rows < 50 || pdf.NumberOfPages > 1);
            },
            iter: 60);

    [Fact]
    public void Set_LongTable_RepeatsItsHeadOnEveryPage()
    {
        var table = new SheetBlock.Table([new("When", 1), new("What", 3)], [.. Enumerable.Range(0, 120).Select(i => (IReadOnlyList<IReadOnlyList<TextRun>>)[[new($"day{i:000}")], [new("fed")]])]);

        using var pdf = PdfDocument.Open(Samples.Pdf(Samples.Document(table)));

        Assert.True(pdf.NumberOfPages >= 3);
        Assert.All(pdf.GetPages(), p => Assert.Contains("When", p.GetWords().Select(w => w.Text)));
        Assert.Equal(Enumerable.Range(0, 120).Select(i => $"day{i:000}"), pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text).Where(w => w.StartsWith("day", StringComparison.Ordinal)));
    }

    [Fact]
    public void Set_HeadingAtTheEndOfAPage_StandsWithWhatFollows()
    {
        for (var lines = 40; lines < 60; lines++)
        {
            var document = Samples.Document(
                new SheetBlock.Paragraph([new(string.Join('\n', Enumerable.Repeat("x", lines)))]), new SheetBlock.Heading("Heading"), new SheetBlock.Paragraph([new("follows")]));

            using var pdf = PdfDocument.Open(Samples.Pdf(document));

            Assert.All(pdf.GetPages(), p =>
            {
                var words = p.GetWords().Select(w => w.Text).ToArray();
                Assert.Equal(words.Contains("Heading"), words.Contains("follows"));
            });
        }
    }

    [Fact]
    public void Set_LettersThatTheFontsLack_AreToldAtTheEnd()
    {
        using var pdf = PdfDocument.Open(Samples.Pdf(Samples.Document(new SheetBlock.Paragraph([new("蛇")]))));

        Assert.Contains("U+86C7", pdf.GetPage(1).Text, StringComparison.Ordinal);
    }
}
