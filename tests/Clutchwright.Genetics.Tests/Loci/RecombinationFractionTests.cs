using Clutchwright.Genetics.Loci;
using CsCheck;

namespace Clutchwright.Genetics.Tests.Loci;

public class RecombinationFractionTests
{
    // r = (1 - exp(-2d)) / 2, Haldane 1919; 20 cM as in the crossing schemes of Canzar & El-Kebir 2011, the others computed apart.
    [Theory]
    [InlineData(0.0, 0.0)]
    [InlineData(1.0, 0.0099007)]
    [InlineData(10.0, 0.0906346)]
    [InlineData(20.0, 0.1648400)]
    [InlineData(50.0, 0.3160603)]
    [InlineData(100.0, 0.4323324)]
    [InlineData(5000.0, 0.5)]
    public void AtDistance_HaldanesFunction_Agrees(double centimorgans, double expected) =>
        Assert.Equal(expected, RecombinationFraction.AtDistance(centimorgans).Value, 5e-8);

    [Fact]
    public void AtDistance_FarApart_IsExactlyFree() => Assert.Equal(RecombinationFraction.Free, RecombinationFraction.AtDistance(5000.0));

    // Distances add where fractions follow Haldane: between 10 and 30 cM from one point lie 20 cM.
    [Fact]
    public void Between_TwoDistances_IsTheFractionOfTheirDifference() => Gen.Select(Gen.Double[0.0, 150.0], Gen.Double[0.0, 150.0]).Sample((near, further) =>
    {
        var between = RecombinationFraction.Between(RecombinationFraction.AtDistance(near), RecombinationFraction.AtDistance(near + further));

        Assert.Equal(RecombinationFraction.AtDistance(further).Value, between.Value, 1e-9);
    });

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.08)]
    [InlineData(0.37)]
    [InlineData(0.5)]
    public void Between_FartherPlaceFree_IsExactlyFree(double near) =>
        Assert.Equal(RecombinationFraction.Free, RecombinationFraction.Between(RecombinationFraction.From(near), RecombinationFraction.Free));

    [Fact]
    public void OutOfRange_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RecombinationFraction.From(0.51));
        Assert.Throws<ArgumentOutOfRangeException>(() => RecombinationFraction.From(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => RecombinationFraction.AtDistance(-1.0));
        Assert.Throws<ArgumentException>(() => RecombinationFraction.Between(RecombinationFraction.From(0.3), RecombinationFraction.From(0.2)));
    }
}
