using Clutchwright.Stock.Animals;
using Xunit;

namespace Clutchwright.Stock.Tests.Animals;

public sealed class TagTests
{
    [Fact]
    public void Order_Numbers_SortByTheirValue()
    {
        string[] tags = ["B10", "b2", "A-100", "A-20", "B1a"];

        Assert.Equal(["A-20", "A-100", "B1a", "b2", "B10"], tags.OrderBy(Tags.Order, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("A1", "a1")]
    [InlineData("é", "e\u0301")]
    [InlineData(" x ", "X")]
    public void Key_SameButForCaseOrComposition_IsEqual(string one, string other) => Assert.Equal(Tags.Key(one), Tags.Key(other));

    [Theory]
    [InlineData("Bela", "Bella")]
    [InlineData("bellla", "Bella")]
    [InlineData("A2", "A1")]
    [InlineData("Zorro", null)]
    public void Nearest_Misspelt_FindsTheOneMeant(string typed, string? meant) =>
        Assert.Equal(meant, Tags.Nearest(typed, ["Bella", "A1", "Carlos"]));

    [Theory]
    [InlineData("")]
    [InlineData("a|b")]
    [InlineData("a\nb")]
    [InlineData("a\0b")]
    [InlineData("1234567890123456789012345678901234567890123456789012345678901")]
    public void IsValid_WhatAFileCouldNotKeep_IsFalse(string tag) => Assert.False(Tags.IsValid(tag));

    [Fact]
    public void IsValid_HalfASurrogatePair_IsFalse()
    {
        Assert.False(Tags.IsValid("a\ud83d"));
        Assert.False(Tags.IsValid("\udc0da"));
        Assert.True(Tags.IsValid("\ud83d\udc0d"));
    }
}
