using Clutchwright.Genetics.Numbers;
using Clutchwright.Web.Words;
using CsCheck;
using Xunit;

namespace Clutchwright.Web.Tests.Words;

/// <summary>A chance drawn as eggs. That natural frequencies are read best: Gigerenzer G, Hoffrage U (1995). How to improve
/// Bayesian reasoning without instruction: frequency formats. Psychological Review 102: 684–704 [recalled].</summary>
public sealed class EggFrequencyTests
{
    // Mendel's ratios as they stand in any textbook, drawn egg for egg.
    [Theory]
    [InlineData(1, 2, 1, 2)]
    [InlineData(3, 16, 3, 16)]
    [InlineData(9, 16, 9, 16)]
    [InlineData(27, 64, 27, 64)]
    [InlineData(1, 3, 1, 3)]
    public void From_SmallExactRatio_IsDrawnAsItIs(int numerator, int denominator, int wanted, int of)
    {
        var eggs = EggFrequency.From(Probability.Ratio(numerator, denominator));

        Assert.Equal((wanted, of, false), (eggs.Wanted, eggs.Of, eggs.IsRounded));
    }

    [Theory]
    [InlineData(0.46, 46, 100)]
    [InlineData(0.645833, 65, 100)]
    [InlineData(0.004, 4, 1000)]
    [InlineData(0.9999 - 0.0009, 999, 1000)]
    public void From_Inexact_IsCountedOfAHundredOrAThousand(double chance, int wanted, int of)
    {
        var eggs = EggFrequency.From(Probability.From(chance));

        Assert.Equal((wanted, of, true), (eggs.Wanted, eggs.Of, eggs.IsRounded));
        Assert.StartsWith("about ", eggs.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_RarerThanOneInAThousand_SaysFewer() =>
        Assert.Equal("fewer than 1 of 1,000 eggs", EggFrequency.From(Probability.Ratio(1, 4096)).Words);

    [Fact]
    public void Words_AllButCertain_DoesNotSayEvery() =>
        Assert.Equal("all but fewer than 1 of 1,000 eggs", EggFrequency.From(Probability.Ratio(4095, 4096)).Words);

    [Fact]
    public void From_AnyChance_IsNeverNoneUnlessImpossibleNorAllUnlessCertain() =>
        Gen.Select(Gen.Long[0, 100_000], Gen.Long[1, 100_000], Gen.Bool).Where((a, b, _) => a <= b).Sample((a, b, exact) =>
        {
            var chance = exact ? Probability.Ratio(a, b) : Probability.From((double)a / b);
            var eggs = EggFrequency.From(chance);
            if (!eggs.CanBeDrawn)
            {
                return !chance.IsImpossible && !chance.IsCertain;
            }

            var near = Math.Abs(((double)eggs.Wanted / eggs.Of) - chance.Value) <= 0.5 / eggs.Of + 1e-9;
            return near && eggs.Wanted == 0 == chance.IsImpossible && eggs.Wanted == eggs.Of == chance.IsCertain;
        });
}
