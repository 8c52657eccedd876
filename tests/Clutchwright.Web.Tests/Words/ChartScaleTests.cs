using System.Globalization;
using Clutchwright.Web.Words;
using Xunit;

namespace Clutchwright.Web.Tests.Words;

public sealed class ChartScaleTests
{
    [Theory]
    [InlineData(820, 1040, 4, "800 900 1000 1100")]
    [InlineData(30.1, 32.9, 4, "30 31 32 33")]
    [InlineData(86, 94, 4, "86 88 90 92 94")]
    public void Round_AnyRange_IsRoundFiguresAroundIt(double least, double most, int about, string figures) =>
        Assert.Equal(figures, string.Join(' ', ChartScale.Round(least, most, about).Select(f => Math.Round(f, 6).ToString(CultureInfo.InvariantCulture))));

    [Theory]
    [InlineData(0.4)]
    [InlineData(2)]
    [InlineData(14)]
    [InlineData(70)]
    [InlineData(365)]
    [InlineData(460)]
    [InlineData(4000)]
    public void Times_AnySpan_AreAFewInsideIt(double days)
    {
        var from = new DateTime(2026, 3, 17, 5, 0, 0, DateTimeKind.Unspecified);
        var to = from.AddDays(days);

        var ticks = ChartScale.Times(from, to);

        Assert.InRange(ticks.Count, 1, 7);
        Assert.All(ticks, t => Assert.InRange(t.At, from, to));
        Assert.True(days < 3 || ticks.Count == ticks.Select(t => t.Words).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void At_TheEnds_IsTheEnds()
    {
        var scale = new ChartScale(10, 20, 100, 0);

        Assert.Equal((100.0, 50.0, 0.0), (scale.At(10), scale.At(15), scale.At(20)));
    }
}
