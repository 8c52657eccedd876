using Clutchwright.Sheets.Fonts;
using Clutchwright.Sheets.Labels;
using Clutchwright.Sheets.Papers;
using Clutchwright.Sheets.Tests.Testing;
using Clutchwright.Sheets.Texts;
using CsCheck;
using UglyToad.PdfPig;

namespace Clutchwright.Sheets.Tests.Labels;

public sealed class LabelFitterTests
{
    private static readonly Gen<string> Word = Gen.OneOf(
        Gen.Char[' ', 'ž'].Array[1, 30].Select(c => new string(c)),
        Of("Super Pastel", "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW", "66% het Clown", "Ǻ Ậ Ḝ gjpqy", "蛇の名", "أفعى", "נחש", "🐍🥚", "a\u0301e\u0308", "\u202Eabc"));

    private static readonly Gen<TubLabel> Labels = Gen.Select(
        Word,
        Gen.Select(Word, Word, Gen.Int[1, 100], Gen.Int[1, 3], (a, b, importance, style) =>
            new LabelEntry($"{importance}", [new(a, (TextStyle)style, IsKeptTogether: importance % 2 == 0), new(" "), new(b, (TextStyle)style)], importance)).Array[0, 8],
        Of("", "http://192.168.1.20:5417/stock/animal/A-1"),
        (tag, entries, code) => new TubLabel(tag.Trim().Length == 0 ? "A" : tag.Trim(), entries) { Codes = code.Length == 0 ? [] : [code] });

    private static Gen<string> Of(params string[] all) => Gen.Int[0, all.Length - 1].Select(i => all[i]);

    [Fact]
    public void Fit_AnyText_EveryGlyphLiesWithinTheLabel() =>
        Gen.Select(Labels, Gen.Double[LabelFitter.LeastSideMm, 110], Gen.Double[LabelFitter.LeastSideMm, 80]).Sample(
            (label, width, height) =>
            {
                var placed = LabelFitter.Fit(label, width, height);

                using var pdf = PdfDocument.Open(Samples.Roll(placed));
                var page = pdf.GetPage(1);
                Assert.All(page.Letters, l =>
                {
                    var box = l.BoundingBox;
                    Assert.True(
                        box.Left >= -0.01 && box.Bottom >= -0.01 && box.Right <= (width * PaperSize.PointsPerMm) + 0.01 && box.Top <= (height * PaperSize.PointsPerMm) + 0.01,
                        $"'{l.Value}' at {box} on {width} x {height} mm");
                });
            },
            iter: 300,
            seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Fit_AnyText_IsSetOrToldAsLeftOut() =>
        Gen.Select(Labels, Gen.Double[LabelFitter.LeastSideMm, 110], Gen.Double[LabelFitter.LeastSideMm, 80]).Sample(
            (label, width, height) =>
            {
                var placed = LabelFitter.Fit(label, width, height);

                var set = string.Concat(placed.Texts.Select(t => t.Words)).Replace(" ", "", StringComparison.Ordinal);
                var missing = label.Entries
                    .Where(e => e.Runs.Any(r => !string.IsNullOrWhiteSpace(r.Text)))
                    .Where(e => !set.Contains(string.Concat(e.Runs.Select(r => PrintableText.Of(r.Text))).Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal))
                    .Select(e => e.Name)
                    .ToArray();
                Assert.Empty(missing.Except(placed.LeftOut));
                Assert.Equal(label.Codes.Count > 0 && placed.Code is null, placed.LeftOut.Contains("QR code"));
            },
            iter: 1000,
            seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Fit_AllHasRoom_TagIsLargestAndOrderIsKept()
    {
        var placed = LabelFitter.Fit(Samples.Label("T-1"), 62, 36);

        Assert.Empty(placed.LeftOut);
        Assert.Equal("T-1", placed.Texts[0].Words);
        Assert.True(placed.Texts.Skip(1).All(t => t.Size < placed.Texts[0].Size));
        Assert.StartsWith("T-1|Ågnès|Pastel Clown|66% het Pied", string.Concat(placed.Texts.Select((t, i) => (t.IsNewLine && i > 0 ? "|" : "") + t.Words)), StringComparison.Ordinal);
        Assert.Equal(TextStyle.Bold, placed.Texts.Single(t => t.Words == "Clown").Style);
        Assert.Equal(TextStyle.Italic, placed.Texts.Single(t => t.Words == "66% het Pied").Style);
    }

    [Fact]
    public void Fit_LessRoom_SaysItInFewerWordsBeforeAnythingGoes()
    {
        var placed = LabelFitter.Fit(Samples.Label(), 32, 20);

        Assert.Contains(placed.Texts, t => t.Words.Contains("(2/3)", StringComparison.Ordinal));
    }

    [Fact]
    public void Fit_HardlyAnyRoom_LeavesOutTheLeastImportantFirstAndSaysSo()
    {
        var placed = LabelFitter.Fit(Samples.Label(), 16, 12);

        Assert.Equal(["name", "parents"], placed.LeftOut.Take(2));
        Assert.DoesNotContain("look", placed.LeftOut);
        Assert.EndsWith("…", placed.Texts[^1].Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_TagTooLongForAnyLine_IsBroken()
    {
        var placed = LabelFitter.Fit(new("ABCDEFGHIJKLMNOPQRSTUVWXYZ", []), 12, 12);

        Assert.True(placed.Texts.Count > 1);
        Assert.Equal("ABCDEFGHIJKLMNOPQRSTUVWXYZ", string.Concat(placed.Texts.Select(t => t.Words)));
        Assert.All(placed.Texts, t => Assert.True(t.XMm + (SheetFonts.Of(t.Style).Width(t.Words, t.Size) / PaperSize.PointsPerMm) <= 12));
    }

    [Fact]
    public void Fit_LettersThatTheFontsLack_AreBoxesAndTold()
    {
        var placed = LabelFitter.Fit(new("A", [new("name", [new("蛇 נחש")], 1)]), 60, 30);

        Assert.Equal("□ □□□", placed.Texts[1].Words);
        Assert.Equal("□ stands for letters that the sheet's font does not have: U+86C7, U+05E0, U+05D7, U+05E9.", PrintableText.Note(placed.Missing));
    }

    [Theory]
    [InlineData(9.9, 20)]
    [InlineData(20, 9.9)]
    public void Fit_TooSmall_Throws(double width, double height) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LabelFitter.Fit(Samples.Label(), width, height));
}
