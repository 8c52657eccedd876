using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;
using Xunit;
using static Clutchwright.Pedigrees.Tests.Beliefs.Snakes;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>Worked cases of carrier risk. Formulas after Bridge 1997 and the textbooks' cases where so marked; values computed by hand from them. The case of a
/// single affected son is left out: it rests on new mutations, which the model does not have.</summary>
public class CarrierRiskTests
{
    // Daughter of an obligate X-linked carrier with n normal sons: (1/2)^n / ((1/2)^n + 1), prior 1/2 [formula after Bridge 1997].
    [Theory]
    [InlineData(0, "1/2")]
    [InlineData(1, "1/3")]
    [InlineData(2, "1/5")]
    [InlineData(3, "1/9")]
    [InlineData(4, "1/17")]
    [InlineData(5, "1/33")]
    [InlineData(6, "1/65")]
    [InlineData(7, "1/129")]
    public void Of_DaughterOfAnObligateCarrierWithNormalSons_FollowsTheFormula(int sons, string expected) =>
        Assert.Equal(expected, Carries(DaughterOfACarrier(sons), "daughter", "x"));

    // The same: the likelihood of n normal grandsons through one daughter is (2^n + 1) / 2^(n + 1).
    [Theory]
    [InlineData(1, 3.0 / 4.0)]
    [InlineData(2, 5.0 / 8.0)]
    [InlineData(3, 9.0 / 16.0)]
    public void LogLikelihood_NormalGrandsonsThroughOneDaughter_FollowsTheFormula(int sons, double expected) =>
        Assert.Equal(Math.Log(expected), DaughterOfACarrier(sons).LogLikelihood, 1e-12);

    [Fact]
    public void Of_UnaffectedSibOfAnAffected_IsTwoInThree()
    {
        var beliefs = Of(
            Animal("s", Sex.Male, Normal()), Animal("d", Sex.Female, Normal()), Young("affected", "s", "d", Seen("clown", 1, 1)), Young("sib", "s", "d", Normal()));

        Assert.Equal("2/3", Carries(beliefs, "sib", "clown"));
    }

    // Affected parent's child by a mate of a population with carriers 1/25: 1/2 x 1/25 = 0.02 [textbook case of cystic fibrosis].
    [Fact]
    public void Of_ChildOfAnAffectedAndOneOfThePopulation_IsOneInFifty()
    {
        var beliefs = Of(Animal("s", Sex.Male, Seen("clown", 1, 1)), Animal("d", Sex.Female, Normal(), Chance("clown", 1, 25)), Young("y", "s", "d"));

        Assert.Equal("1/50", Pair(beliefs, "y", "clown", 1, 1));
    }

    // A normal sib of an affected and his first cousin: 2/3 x 1/4 x 1/4 = 1/24 [common textbook case].
    [Fact]
    public void Of_ChildOfASibOfAnAffectedAndAFirstCousin_IsOneInTwentyFour()
    {
        var beliefs = Of(
            Animal("gs", Sex.Male, Normal()),
            Animal("gd", Sex.Female, Normal()),
            Young("father", "gs", "gd", Normal()),
            Young("uncle", "gs", "gd", Normal()),
            Animal("mother", Sex.Female, Normal()),
            Animal("aunt", Sex.Female, Normal()),
            Young("affected", "father", "mother", Seen("clown", 1, 1)),
            Young("he", "father", "mother", Normal()),
            Young("cousin", "uncle", "aunt", Normal()),
            Young("child", "he", "cousin"));

        Assert.Equal("1/2", Carries(beliefs, "uncle", "clown"));
        Assert.Equal("1/4", Carries(beliefs, "cousin", "clown"));
        Assert.Equal("1/24", Pair(beliefs, "child", "clown", 1, 1));
    }

    // n normal-looking young of a possible het: prior 2^-n / (prior 2^-n + 1 - prior) with a visual mate, (3/4)^n with a het [computed].
    [Theory]
    [InlineData(0, 2, 3, true, 0.666667)]
    [InlineData(1, 2, 3, true, 0.5)]
    [InlineData(2, 2, 3, true, 0.333333)]
    [InlineData(3, 2, 3, true, 0.2)]
    [InlineData(5, 2, 3, true, 0.058824)]
    [InlineData(8, 2, 3, true, 0.007752)]
    [InlineData(12, 2, 3, true, 0.000488)]
    [InlineData(20, 2, 3, true, 0.000002)]
    [InlineData(1, 1, 2, true, 0.333333)]
    [InlineData(4, 1, 2, true, 0.058824)]
    [InlineData(10, 1, 2, true, 0.000976)]
    [InlineData(16, 1, 2, true, 0.000015)]
    [InlineData(1, 2, 3, false, 0.6)]
    [InlineData(2, 2, 3, false, 0.529412)]
    [InlineData(3, 2, 3, false, 0.457627)]
    [InlineData(4, 2, 3, false, 0.387560)]
    [InlineData(5, 2, 3, false, 0.321854)]
    [InlineData(10, 2, 3, false, 0.101226)]
    [InlineData(20, 2, 3, false, 0.006302)]
    [InlineData(1, 1, 2, false, 0.428571)]
    [InlineData(2, 1, 2, false, 0.36)]
    [InlineData(3, 1, 2, false, 0.296703)]
    [InlineData(6, 1, 2, false, 0.151088)]
    [InlineData(12, 1, 2, false, 0.030704)]
    public void Of_NormalYoungOfAPossibleHet_FollowsTheTable(int young, int numerator, int denominator, bool isMateVisual, double expected)
    {
        var beliefs = Of(
        [
            Animal("s", Sex.Male, Normal(), Chance("clown", numerator, denominator)),
            Animal("d", Sex.Female, isMateVisual ? Seen("clown", 1, 1) : Told("clown")),
            .. Enumerable.Range(0, young).Select(i => Young($"y{i}", "s", "d", Normal())),
        ]);

        Assert.Equal(expected, ChanceOf(beliefs, "s", "clown").Value, 5e-7);
    }

    // With denominators small enough the table's values are fractions.
    [Fact]
    public void Of_FourNormalYoungOfAPossibleHetAndAHet_IsAFraction()
    {
        var beliefs = Of(
            Animal("s", Sex.Male, Normal(), Chance("clown", 2, 3)), Animal("d", Sex.Female, Told("clown")), Young("y", "s", "d", Normal()) with { Count = 4 });

        Assert.Equal("81/209", Carries(beliefs, "s", "clown"));
    }

    // A mate that is itself a possible het with chance q is one animal: n normals of a het have (1 - q) + q (3/4)^n, not (1 - q/4)^n.
    // With q = 1/2, n = 2: 1/2 + 1/2 x 9/16 = 25/32; posterior 1/2 x 25/32 / (1/2 x 25/32 + 1/2) = 25/57 [computed].
    [Fact]
    public void Of_NormalYoungOfTwoPossibleHets_KeepsTheMateOneAnimal()
    {
        var beliefs = Of(
            Animal("s", Sex.Male, Normal(), Chance("clown", 1, 2)), Animal("d", Sex.Female, Normal(), Chance("clown", 1, 2)), Young("y", "s", "d", Normal()) with { Count = 2 });

        Assert.Equal("25/57", Carries(beliefs, "s", "clown"));
    }

    // Own daughters: each carries with 1/2, so a clutch of n normals by their sire has (1 + (3/4)^n)/2, not (7/8)^n.
    // n = 2: (1 + 9/16)/2 = 25/32; sire of prior 1/2: 25/57 as well [derived].
    [Fact]
    public void Of_DaughterBackToHerSire_KeepsTheClutchTogether()
    {
        var beliefs = Of(
            Animal("s", Sex.Male, Normal(), Chance("clown", 1, 2)),
            Animal("d", Sex.Female, Normal()),
            Young("daughter", "s", "d", Normal()),
            Young("y", "s", "daughter", Normal()) with { Count = 2 });

        Assert.Equal("25/57", Carries(beliefs, "s", "clown"));
    }

    private static PedigreeBeliefs DaughterOfACarrier(int sons) => PedigreeBeliefs.Of(
        Linked,
        [
            Animal("carrier", Sex.Female, Told("x", species: Linked)),
            Animal("sire", Sex.Male, Normal(Linked)),
            Young("daughter", "sire", "carrier") with { Sex = Sex.Female },
            Animal("mate", Sex.Male, Normal(Linked)),
            .. Enumerable.Range(0, sons).Select(i => Young($"son{i}", "mate", "daughter", Normal(Linked)) with { Sex = Sex.Male }),
        ]);
}
