using Clutchwright.Desk.Proofs;
using Clutchwright.Desk.Words;
using Clutchwright.Proofs.Modes;
using Xunit;

namespace Clutchwright.Desk.Tests.Proofs;

public sealed class ChanceReaderTests
{
    [Theory]
    [InlineData("2/3", "2/3")]
    [InlineData("66%", "2/3")]
    [InlineData(" 67 % ", "2/3")]
    [InlineData("33%", "1/3")]
    [InlineData("50%", "1/2")]
    [InlineData("0.5", "1/2")]
    [InlineData("0.66", "33/50")]
    [InlineData(".25", "1/4")]
    [InlineData("0%", "0")]
    [InlineData("100%", "1")]
    [InlineData("1", "1")]
    [InlineData("4/6", "2/3")]
    public void Read_AsAKeeperWritesIt_IsTheExactRatio(string text, string ratio) => Assert.Equal(ratio, ChanceReader.Read(text)?.ToString());

    [Theory]
    [InlineData("")]
    [InlineData("66")]
    [InlineData("1.5")]
    [InlineData("-0.5")]
    [InlineData("3/2")]
    [InlineData("1/0")]
    [InlineData("0.5.5")]
    [InlineData("half")]
    [InlineData("120%")]
    public void Read_WhatIsNoChance_IsNothing(string text) => Assert.Null(ChanceReader.Read(text));

    [Fact]
    public void ReadRatio_WithDecimalsAndFractions_KeepsThem()
    {
        var problems = new List<AskedWrongly>();

        Assert.Equal(["9", "3/2", "1/3"], ChanceReader.ReadRatio("expected", "9 : 1.5 : 1/3", problems)!.Select(r => r.ToString()));
        Assert.Empty(problems);
        Assert.Null(ChanceReader.ReadRatio("expected", "1:0", problems));
        Assert.Null(ChanceReader.ReadRatio("expected", "1", problems));
        Assert.Equal(2, problems.Count);
    }

    [Fact]
    public void TraitClutch_AsAKeeperWritesIt_IsRead()
    {
        var problems = new List<AskedWrongly>();

        var clutch = TraitClutchReader.Read("clutch", "Big Rex shows x Ada normal: sons 5 shows 4 normal, daughters 3 shows 1 super, unsexed 2 normal", 1, problems);

        Assert.Empty(problems);
        Assert.Equal(new("Big Rex", TraitLook.Shows, "Ada", TraitLook.Normal, new(4, 5), new(0, 3, 1), new(2, 0)), clutch);
    }

    [Theory]
    [InlineData("Rex shows: sons 1 shows")]
    [InlineData("Rex x Ada normal: sons 1 shows")]
    [InlineData("Rex shows x Ada normal: sons one shows")]
    [InlineData("Rex shows x Ada normal: sons 1 shows, sons 2 normal")]
    [InlineData("Rex shows x Ada normal: eggs 1 shows")]
    [InlineData("Rex shows x Ada normal: sons 1 shows 2 shows")]
    public void TraitClutch_WrittenOtherwise_IsRefused(string text)
    {
        var problems = new List<AskedWrongly>();

        Assert.Null(TraitClutchReader.Read("clutch", text, 1, problems));
        Assert.Single(problems);
    }
}
