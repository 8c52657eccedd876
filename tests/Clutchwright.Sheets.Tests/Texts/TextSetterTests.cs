using Clutchwright.Sheets.Fonts;
using Clutchwright.Sheets.Texts;
using CsCheck;

namespace Clutchwright.Sheets.Tests.Texts;

public sealed class TextSetterTests
{
    [Fact]
    public void Set_AnyText_NoLineIsWiderAndNoLetterIsLost() =>
        Gen.Select(Gen.Char['!', 'z'].Array[0, 25].Select(c => new string(c)).Array[1, 12], Gen.Double[20, 200], Gen.Int[1, 3], Gen.Bool).Sample(
            (words, width, style, kept) =>
            {
                var lines = TextSetter.Set([new(string.Join(' ', words), (TextStyle)style, kept)], 10, width);

                Assert.All(lines, l => Assert.True(l.Width <= width + 1e-6));
                Assert.Equal(string.Concat(words), string.Concat(lines.Select(l => l.Text)).Replace(" ", "", StringComparison.Ordinal));
            },
            iter: 2000);

    [Fact]
    public void Set_KeptTogether_IsNotBrokenWhereALineHasRoom()
    {
        var width = SheetFonts.Of(TextStyle.Italic).Width("66% het Clown", 10) + 1;

        var lines = TextSetter.Set([new("one "), new("66% het Clown", TextStyle.Italic, IsKeptTogether: true), new(" (2 in 3)")], 10, width);

        Assert.Equal(["one", "66% het Clown", "(2 in 3)"], lines.Select(l => l.Text));
    }

    [Fact]
    public void Set_KeptRunsBesideOthers_KeepTheSpaceBetween()
    {
        var line = Assert.Single(TextSetter.Set([new("66% het Clown", TextStyle.Italic, true), new(" (2 in 3)", TextStyle.Plain, true), new(", "), new("Pastel", TextStyle.Bold, true)], 10, 500));

        Assert.Equal("66% het Clown (2 in 3), Pastel", line.Text);
    }

    [Fact]
    public void Set_LineFeed_EndsALine() => Assert.Equal(["a", "b", "", "c"], TextSetter.Set([new("a\nb\n\nc")], 10, 100).Select(l => l.Text));

    // Advance widths of Source Sans 3 Regular in its own units of 1/1000: H 652, x 456, space 200 (its hmtx table, as pdffonts and the W array of a page give them).
    [Fact]
    public void Width_OfKnownLetters_IsTheirAdvances() => Assert.Equal(10 * (0.652 + 0.2), SheetFonts.Of(TextStyle.Plain).Width("H ", 10), 0.001);

    [Theory]
    [InlineData("Ågnès Ǿ Ž", "Ågnès Ǿ Ž")]
    [InlineData("A\u030A", "Å")]
    [InlineData("ελ Жя", "ελ Жя")]
    [InlineData("蛇", "□")]
    [InlineData("a\u200Db\u200Ec", "abc")]
    [InlineData("a\tb", "a b")]
    [InlineData("👩‍👧", "□")]
    public void Of_Text_ShowsWhatTheFontsHaveAndABoxForTheRest(string text, string printed) => Assert.Equal(printed, PrintableText.Of(text));

    [Fact]
    public void Of_HalfASurrogatePair_IsSeen() => Assert.Single(PrintableText.Of("\uD83D"));
}
