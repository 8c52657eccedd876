using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Desk.Sheets;
using Clutchwright.Genetics.Numbers;
using CsCheck;

namespace Clutchwright.Desk.Tests.Sheets;

public sealed class TradeFigureTests
{
    // 66, 50, 33 and 25 are the trade's figures for 2/3, 1/2, 1/3 and 1/4 (common practice, no source).
    [Theory]
    [InlineData(1, 1, 100)]
    [InlineData(2, 3, 66)]
    [InlineData(1, 2, 50)]
    [InlineData(1, 3, 33)]
    [InlineData(1, 4, 25)]
    [InlineData(999, 1000, 66)]
    [InlineData(66, 100, 50)]
    [InlineData(665, 1000, 50)]
    [InlineData(49, 100, 33)]
    [InlineData(1, 8, 12)]
    [InlineData(1, 5, 20)]
    [InlineData(1, 100, 1)]
    [InlineData(1, 101, null)]
    public void Of_Chance_IsTheTradesFigureThatMeansNoMore(long one, long of, int? figure) => Assert.Equal(figure, TradeFigure.Of(Probability.Ratio(one, of)));

    [Fact]
    public void Of_AnyChance_MeansNoMoreThanIsBelievedAndIsHundredOnlyWhereCertain() =>
        Gen.OneOf(Gen.Double[0, 1], Gen.Select(Gen.Int[0, 60], Gen.Int[1, 60], (a, b) => Math.Min(1.0, a / (double)b))).Sample(
            value =>
            {
                var chance = Probability.From(value);

                var figure = TradeFigure.Of(chance);

                Assert.Equal(chance.IsCertain, figure == 100);
                if (figure is { } written && written < 100)
                {
                    Assert.True(Percentages.Read($"{written}")!.Value.Value <= value + Probability.RoundingTolerance);
                }
            },
            iter: 20_000);

    // The rounding is no looser than it need be: the next figure of the trade would claim more.
    [Fact]
    public void Of_AnyChance_IsTheHighestSuchFigure() =>
        Gen.Double[0.01, 0.9999].Sample(
            value =>
            {
                int[] all = [.. Enumerable.Range(1, 24), 25, 33, 50, 66];

                var highest = all.Where(f => Percentages.Read($"{f}")!.Value.Value <= value).Max();

                Assert.Equal(highest, TradeFigure.Of(Probability.From(value)));
            },
            iter: 20_000);
}
