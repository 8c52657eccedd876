using Clutchwright.Desk.Words;
using Clutchwright.Web.Words;
using Xunit;

namespace Clutchwright.Web.Tests.Words;

public sealed class ToneBandTests
{
    private static readonly ToneWords White = new("white", "#FFFFFF");
    private static readonly ToneWords Black = new("black", "#000000");

    [Fact]
    public void Of_NoColourKnown_IsNothing() =>
        Assert.Null(ToneBand.Of([new StageWords("adult", 36, null, null, null)]));

    [Fact]
    public void Of_TwoStages_GroundRunsFromOneToTheOther()
    {
        var band = ToneBand.Of([new("hatchling", 0, White, null, null), new("adult", 36, Black, null, null)])!;

        Assert.Equal([new ToneStop(0.25, "#FFFFFF"), new ToneStop(0.75, "#000000")], band.Ground);
        Assert.Empty(band.Marks);
    }

    [Fact]
    public void Of_PatternOfOneColour_EveryMarkHasIt()
    {
        var band = ToneBand.Of([new("hatchling", 0, White, Black, null), new("adult", 36, White, Black, null)])!;

        Assert.All(band.Marks, m => Assert.Equal("#000000", m.Srgb));
    }

    [Fact]
    public void Describe_NamesEachStageWithItsTones() => Assert.Equal(
        "Clown: as a hatchling white ground, black eye; as an adult black pattern",
        ToneBand.Describe("Clown", [new("hatchling", 0, White, null, Black), new("adult", 36, null, Black, null)]));

    [Theory]
    [InlineData(0.0, "#ffffff")]
    [InlineData(0.5, "#808080")]
    [InlineData(1.0, "#000000")]
    public void Between_WhiteAndBlack_IsGreyInTheMiddle(double share, string expected) =>
        Assert.Equal(expected, Hues.Between("#FFFFFF", "#000000", share));
}
