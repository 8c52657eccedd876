using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Xunit;

namespace Clutchwright.Catalogue.Tests.TradeTexts;

public sealed class TradeTextWriteTests
{
    [Theory]
    [InlineData("male het pied pastel CLOWN", "1.0 Clown Pastel, het Pied")]
    [InlineData("0.1 66% het clown het pied", "0.1 66% het Clown het Pied")]
    [InlineData("0.1 normal", "0.1 Normal")]
    [InlineData("1.0 bumblebee 50% poss het albino", "1.0 Pastel Spider, 50% het Albino")]
    [InlineData("1.0 mojave/lesser", "1.0 Lesser/Mojave")]
    [InlineData("1.0 mystic mojave", "1.0 Mystic Potion")]
    [InlineData("1.0 clown/cryptic", "1.0 Cryptic, het Clown")]
    [InlineData("1.0 albino candy", "1.0 Albino/Candy")]
    [InlineData("0.1 super spider super pastel", "0.1 Super Pastel Super Spider")]
    [InlineData("0.1 Left Right/+ ", "0.1 Left Right")]
    [InlineData("0.1 (Left +/+ Right)", "0.1 Right, het Left (left +/+ Right)")]
    [InlineData("0.1 Left + / + Right", "0.1 Right, het Left (left +/+ Right)")]
    [InlineData("0.1 het Left Right", "0.1 Right, het Left")]
    [InlineData("0.1 70% (Left Right/+ +) 30% (Left +/+ Right)", "0.1 70% (left Right/+ +) 30% (left +/+ Right)")]
    [InlineData("0.1 Pastel 33% possible Super Pastel", "0.1 Pastel, 33% possible Super Pastel")]
    [InlineData("0.1 25% possible visual clown 50% het clown", "0.1 50% het Clown 25% possible visual Clown")]
    public void Write_WhatWasRead_IsCanonical(string text, string expected)
    {
        var animal = SampleSpecies.Trade.Read(text).Value!;

        Assert.Equal(expected, SampleSpecies.Trade.Write(animal.ToBelief(animal.Sex!.Value).Value!));
    }

    [Fact]
    public void Words_OfAPossibleHet_KeepTheExactChanceBesideTheRoundedOne()
    {
        var belief = SampleSpecies.Trade.Read("0.1 Pastel 66% het Clown").Value!.ToBelief(Sex.Female).Value!;

        var words = SampleSpecies.Trade.Words(belief);

        Assert.Equal([TradeWordKind.Sex, TradeWordKind.Seen, TradeWordKind.Carried], words.Select(w => w.Kind));
        Assert.True(words[1].IsSeen);
        Assert.True(words[2].IsCarried);
        Assert.Equal("66", words[2].Percent);
        Assert.Equal(Probability.Ratio(2, 3), words[2].Chance);
    }

    // 66 and 67 mean 2/3, 33 means 1/3: so no other chance may be written with them.
    [Theory]
    [InlineData(2, 3, "66")]
    [InlineData(1, 3, "33")]
    [InlineData(1, 2, "50")]
    [InlineData(33, 50, "66.0")]
    [InlineData(4, 7, "57")]
    [InlineData(1, 1000, "0.1")]
    [InlineData(999, 1000, "99.9")]
    public void Percent_Chance_IsRoundedTheTradesWay(long numerator, long denominator, string expected) =>
        Assert.Equal(expected, Percentages.Write(Probability.Ratio(numerator, denominator)));

    [Fact]
    public void WriteLook_Forms_AreNamedInTheCataloguesOrder()
    {
        var species = SampleSpecies.Species;

        var text = SampleSpecies.Trade.WriteLook(
            [species.FindExpression("super-pastel")!, species.FindExpression("clown")!, species.FindExpression("blue-eyed-white")!]);

        Assert.Equal("Blue-eyed White Clown Super Pastel", text);
        Assert.Equal("Normal", SampleSpecies.Trade.WriteLook([]));
    }

    [Fact]
    public void Write_NeighboursThatReadAsAnotherName_AreKeptApartByAComma()
    {
        var trade = TradeText.For(Species.From(new("names", SexSystem.XY,
        [
            new("a", "A", new Placement.Autosomal(), [new("red", "Red", InheritanceMode.Recessive)]),
            new("b", "B", new Placement.Autosomal(), [new("stripe", "Stripe", InheritanceMode.Dominant)]),
            new("c", "C", new Placement.Autosomal(), [new("red-stripe", "Red Stripe", InheritanceMode.Dominant)]),
        ])));

        var belief = trade.Read("0.1 Red, Stripe").Value!.ToBelief(Sex.Female).Value!;

        Assert.Equal("0.1 Red, Stripe", trade.Write(belief));
    }
}
