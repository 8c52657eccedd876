using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Numbers;
using CsCheck;

namespace Clutchwright.Genetics.Tests.Clutches;

public class SharedChanceTests
{
    private static readonly Probability[] Confidences =
        [Probability.Ratio(9, 10), Probability.Ratio(95, 100), Probability.Ratio(99, 100), Probability.Ratio(999, 1000)];

    /// <summary>n = ceil(log(1 - c) / log q), q the chance of a normal egg. The 3/4 line agrees with the unrounded 10.413 and 16.008 of the
    /// genetics notes of ndsu.edu; the others are the same formula, computed.</summary>
    [Theory]
    [InlineData(1, 2, 4, 5, 7, 10)] // het x visual
    [InlineData(1, 4, 9, 11, 17, 25)] // het x het
    [InlineData(1, 8, 18, 23, 35, 52)] // a mate that is a het with chance 1/2, another for every egg
    [InlineData(1, 6, 13, 17, 26, 38)] // a mate that is a het with chance 2/3, another for every egg
    [InlineData(1, 16, 36, 47, 72, 108)] // two recessives at once
    [InlineData(1, 64, 147, 191, 293, 439)] // three recessives at once
    public void EggsFor_TableOfSampleSizes_Agrees(int hits, int of, int for90, int for95, int for99, int for999)
    {
        var chance = SharedChance.Certain(Probability.Ratio(hits, of));

        Assert.Equal([for90, for95, for99, for999], Confidences.Select(c => chance.EggsFor(c)));
    }

    /// <summary>1 - (3/4)^n, 1 - (1/2)^n, 1 - (15/16)^n, computed to six places.</summary>
    [Theory]
    [InlineData(1, 4, 1, 0.25)]
    [InlineData(1, 4, 2, 0.4375)]
    [InlineData(1, 4, 3, 0.578125)]
    [InlineData(1, 4, 4, 0.683594)]
    [InlineData(1, 4, 5, 0.762695)]
    [InlineData(1, 4, 6, 0.822021)]
    [InlineData(1, 4, 7, 0.866516)]
    [InlineData(1, 4, 8, 0.899887)]
    [InlineData(1, 4, 9, 0.924915)]
    [InlineData(1, 4, 10, 0.943686)]
    [InlineData(1, 4, 11, 0.957765)]
    [InlineData(1, 4, 12, 0.968324)]
    [InlineData(1, 2, 5, 0.96875)]
    [InlineData(1, 2, 6, 0.984375)]
    [InlineData(1, 16, 8, 0.403281)]
    [InlineData(1, 16, 12, 0.539048)]
    public void AtLeastOne_TableOfChances_Agrees(int hits, int of, int eggs, double expected) =>
        Assert.Equal(expected, SharedChance.Certain(Probability.Ratio(hits, of)).AtLeastOne(eggs).Value, 5e-7);

    [Fact]
    public void EggsFor_AnyMixture_IsTheFirstNumberThatReaches() => Gen.Select(
        Gen.Int[0, 20].Select(Gen.Int[20, 40]).Array[1, 4], Gen.Int[1, 99]).Sample((cases, percent) =>
    {
        var weight = Probability.Ratio(1, cases.Length);
        var shared = new SharedChance(cases.Select(c => new Weighted<Probability>(Probability.Ratio(c.Item1, c.Item2), weight)));
        var confidence = Probability.Ratio(percent, 100);

        var eggs = shared.EggsFor(confidence);

        // Beyond 400 eggs the smallest chance, 1 in 40, is within 5e-5 of its ceiling.
        var reached = Enumerable.Range(1, 400).FirstOrDefault(n => shared.AtLeastOne(n) >= confidence);
        if (reached > 0)
        {
            Assert.Equal(reached, eggs);
        }
        else
        {
            Assert.True(eggs is null || eggs > 400);
            Assert.Equal(eggs is null, shared.Ceiling <= confidence);
        }
    }, iter: 200);

    [Fact]
    public void EggsFor_ConfidenceAtOrAboveTheCeiling_IsNone()
    {
        // A 66 % possible het: in a third of cases no number of eggs will do.
        var possibleHet = new SharedChance(
            [new(Probability.Half, Probability.Ratio(2, 3)), new(Probability.Impossible, Probability.Ratio(1, 3))]);
        var sure = new SharedChance(
            [new(Probability.Certain, Probability.Ratio(2, 3)), new(Probability.Impossible, Probability.Ratio(1, 3))]);

        Assert.Equal(new Fraction(2, 3), possibleHet.Ceiling.Exact);
        Assert.Null(possibleHet.EggsFor(Probability.Ratio(3, 4)));
        Assert.Null(possibleHet.EggsFor(Probability.Ratio(2, 3)));
        Assert.Equal(1, sure.EggsFor(Probability.Ratio(2, 3)));
        Assert.Equal(2, possibleHet.EggsFor(Probability.Half)); // 2/3 (1 - 1/4) = 1/2, reached exactly
    }

    // Twenty recessives at once, one egg in 4^20: log(20) / -log(1 - 4^-20) = 3.29e12 eggs have no meaning for a keeper;
    // ten at once, one in 1,048,576: log(0.05) / log(1 - 2^-20) = 3,141,251.47.
    [Fact]
    public void EggsFor_VeryRare_IsFoundWithoutHugePowers()
    {
        Assert.Equal(3_141_252, SharedChance.Certain(Probability.Ratio(1, 1 << 20)).EggsFor(Probability.Ratio(95, 100)));
        Assert.Null(SharedChance.Certain(Probability.Ratio(1, 1L << 40)).EggsFor(Probability.Ratio(95, 100)));
    }

    [Fact]
    public void EggsFor_ConfidenceOfZeroOrOne_Throws()
    {
        var chance = SharedChance.Certain(Probability.Half);

        Assert.Throws<ArgumentOutOfRangeException>(() => chance.EggsFor(Probability.Certain));
        Assert.Throws<ArgumentOutOfRangeException>(() => chance.EggsFor(Probability.Impossible));
    }

    // A clutch of two eggs misses with (1/2)^2; n clutches of one pair with (1/4)^n, where the pair can at all.
    [Fact]
    public void ClutchesFor_TwoEggsAClutch_CountsClutches()
    {
        var clutch = GoodEggs.Exactly(2);

        Assert.Equal(4, SharedChance.Certain(Probability.Half).ClutchesFor(Probability.Ratio(99, 100), clutch));
        Assert.Equal(new Fraction(255, 256), SharedChance.Certain(Probability.Half).AtLeastOne(clutch, 4).Exact);
    }

    [Fact]
    public void NumberIn_Mixture_IsTheMixtureOfDistributions()
    {
        var shared = new SharedChance([new(Probability.Half, Probability.Ratio(2, 3)), new(Probability.Impossible, Probability.Ratio(1, 3))]);

        var number = shared.NumberIn(GoodEggs.Exactly(2));

        Assert.Equal((1.0 / 3.0) + (2.0 / 3.0 / 4.0), number[0], 1e-15);
        Assert.Equal(2.0 / 3.0 / 2.0, number[1], 1e-15);
        Assert.Equal(2.0 / 3.0 / 4.0, number[2], 1e-15);
    }

    [Fact]
    public void Constructor_EqualChances_AreOneCase()
    {
        var shared = new SharedChance([new(Probability.Half, Probability.Half), new(Probability.Ratio(2, 4), Probability.Half)]);

        Assert.Equal(Probability.Certain, Assert.Single(shared.Cases).Weight);
        Assert.Throws<ArgumentException>(() => new SharedChance([new(Probability.Half, Probability.Half)]));
    }
}
