using Clutchwright.Desk.Clutches;

namespace Clutchwright.Desk.Tests.Clutches;

public sealed class IdSchemeTests
{
    private static readonly DateOnly Day = new(2026, 6, 3);

    [Theory]
    [InlineData("{clutch}-{n}", "26-04-3")]
    [InlineData("{yy}{clutch}{letter}", "2626-04c")]
    [InlineData("{year}/{dam}x{sire}/{nn}", "2026/F1xM1/03")]
    public void Next_TwoTaken_IsTheThird(string text, string expected)
    {
        var scheme = IdScheme.Read(text, isOfClutches: false, out _)!;
        var taken = new HashSet<string>(StringComparer.Ordinal);

        for (var i = 0; i < 2; i++)
        {
            taken.Add(scheme.Next(Day, "26-04", "F1", "M1", taken.Contains));
        }

        Assert.Equal(expected, scheme.Next(Day, "26-04", "F1", "M1", taken.Contains));
    }

    [Fact]
    public void Next_Letters_GoOnAfterZ()
    {
        var scheme = IdScheme.Read("{letter}", isOfClutches: true, out _)!;
        var taken = new List<string>();

        for (var i = 0; i < 28; i++)
        {
            taken.Add(scheme.Next(Day, string.Empty, "F", null, taken.Contains));
        }

        Assert.Equal(["a", "z", "aa", "ab"], [taken[0], taken[25], taken[26], taken[27]]);
    }

    [Theory]
    [InlineData("", true, "1 to 40 characters")]
    [InlineData("{yy}", false, "A number is missing")]
    [InlineData("{number}", false, "{number} is no place")]
    [InlineData("{clutch}-{n}", true, "after itself")]
    [InlineData("{n", false, "not closed")]
    [InlineData("a|{n}", false, "without |")]
    public void Read_WhatCannotBe_SaysWhy(string text, bool isOfClutches, string why)
    {
        Assert.Null(IdScheme.Read(text, isOfClutches, out var problem));
        Assert.Contains(why, problem, StringComparison.Ordinal);
    }
}
