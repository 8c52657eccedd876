using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using Xunit;
using static Clutchwright.Pedigrees.Tests.Beliefs.Snakes;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>Worked cases of each kind of record. The trade's 66, 50, 33 and 25 percent: common practice, no source; the others by Bayes' rule.</summary>
public class RecordKindTests
{
    [Fact]
    public void Of_YoungOfTwoHetsNotLookedAt_IsOneInFourVisual()
    {
        var beliefs = Of(Animal("s", Sex.Male, Told("clown")), Animal("d", Sex.Female, Told("clown")), Young("y", "s", "d"));

        Assert.Equal("1/4", Pair(beliefs, "y", "clown", 1, 1));
        Assert.Equal("3/4", Carries(beliefs, "y", "clown"));
    }

    [Theory]
    [InlineData(2, 3, "1/3")]
    [InlineData(1, 2, "1/4")]
    public void Of_YoungOfAPossibleHetAndNormal_HalvesTheChance(int numerator, int denominator, string expected)
    {
        var beliefs = Of(Animal("s", Sex.Male, Chance("clown", numerator, denominator)), Animal("d", Sex.Female, Normal()), Young("y", "s", "d", Normal()));

        Assert.Equal(expected, Carries(beliefs, "y", "clown"));
    }

    [Fact]
    public void Of_NormalYoungOfAVisual_IsHet() =>
        Assert.Equal("1", Carries(Of(Animal("s", Sex.Male, Seen("clown", 1, 1)), Animal("d", Sex.Female, Normal()), Young("y", "s", "d", Normal())), "y", "clown"));

    [Fact]
    public void Of_ToldHetForCertain_OverridesTheParentsChance()
    {
        var beliefs = Of(Animal("s", Sex.Male, Told("clown")), Animal("d", Sex.Female, Normal()), Young("y", "s", "d", Normal(), Told("clown")));

        Assert.Equal("1", Carries(beliefs, "y", "clown"));
    }

    [Fact]
    public void Of_RuledOut_IsWild()
    {
        var beliefs = Of(Animal("s", Sex.Male, Told("clown")), Animal("d", Sex.Female, Told("clown")), Young("y", "s", "d", Normal(), RuledOut("clown")));

        Assert.Equal("0", Carries(beliefs, "y", "clown"));
    }

    [Fact]
    public void Of_RuledOutAtSeveralLoci_TouchesEachAlleleOnly()
    {
        var beliefs = Of(Animal("s", Sex.Male, Told("les", 1, 2)), Animal("d", Sex.Female, Normal()), Young("y", "s", "d", RuledOut("late", "moj")));

        Assert.Equal("1", Pair(beliefs, "y", "les", 0, 1));
    }

    [Fact]
    public void Of_SeenNormalWithAnAlleleThatSeldomFails_WeighsThePenetrance()
    {
        // Prior 1/2, shows in 3 of 4 carriers: (1/2 x 1/4) / (1/2 x 1/4 + 1/2) = 1/5 [computed, Bayes' rule].
        var beliefs = Of(Animal("s", Sex.Male, Told("rare")), Animal("d", Sex.Female, Normal()), Young("y", "s", "d", Normal()));

        Assert.Equal("1/5", Carries(beliefs, "y", "rare"));
    }

    [Fact]
    public void Of_SeenNormalWithAFormThatOnlyAdultsShow_TellsNothing() =>
        Assert.Equal("1/2", Carries(Of(Animal("s", Sex.Male, Told("late")), Animal("d", Sex.Female, Normal()), Young("y", "s", "d", Normal())), "y", "late"));

    [Fact]
    public void Of_SeenFormThatHidesAll_TellsNothingOfWhatLiesBeneath()
    {
        var beliefs = Of(
            Animal("s", Sex.Male, Told("pastel"), Told("ivory")), Animal("d", Sex.Female, Told("pastel"), Told("ivory")), Young("y", "s", "d", Seen("ivory", 1, 1)));

        Assert.Equal("3/4", Carries(beliefs, "y", "pastel"));
        Assert.Equal("1", Carries(beliefs, "y", "ivory"));
    }

    [Theory]
    [InlineData(0, 2.0 / 101.0)] // not found: (2/3)(0.01) / ((2/3)(0.01) + (1/3)(0.99)) = 2/101 [computed, Bayes' rule]
    [InlineData(1, 198.0 / 199.0)] // found: (2/3)(0.99) / ((2/3)(0.99) + (1/3)(0.01)) = 198/199
    public void Of_DnaTestOfAPossibleHet_FollowsBayesRule(int found, double expected)
    {
        var beliefs = Of(
            Animal("s", Sex.Male, Told("clown")), Animal("d", Sex.Female, Told("clown")), Young("y", "s", "d", Normal(), Test("clown", found, 0.99, 0.99)));

        Assert.Equal(expected, ChanceOf(beliefs, "y", "clown").Value, 1e-12);
    }

    [Fact]
    public void Of_DnaTestOfAFounderOfWhichNothingElseIsKnown_TakesEvenOddsBeforeIt()
    {
        // 0.98/(0.98 + 0.01) = 98/99 [computed, Bayes' rule with a prior of 1/2].
        var beliefs = Of(Animal("f", Sex.Female, Test("clown", 1, 0.98, 0.99)));

        Assert.Equal(98.0 / 99.0, ChanceOf(beliefs, "f", "clown").Value, 1e-12);
    }

    [Fact]
    public void Of_DnaTestOfAFounderWhoseKinHasAMystery_TakesEvenOddsStill()
    {
        // Two normal animals nobody spoke of have a visual young: that founders may carry does not unsay the test.
        var beliefs = Of(
            Animal("f", Sex.Female, Test("clown", 1, 0.98, 0.99)),
            Animal("m", Sex.Male, Normal()),
            Animal("n", Sex.Female, Normal()),
            Young("y", "m", "n", Seen("clown", 1, 1)),
            Young("z", "m", "f"));

        Assert.Equal(98.0 / 99.0, ChanceOf(beliefs, "f", "clown").Value, 1e-12);
        Assert.Equal("1", Carries(beliefs, "m", "clown"));
    }

    [Fact]
    public void Of_InfallibleTestAgainstWhatWasTold_IsBelievedAndToldAsAClash()
    {
        var beliefs = Of(Animal("f", Sex.Female, Told("clown"), Test("clown", 0, 1.0, 1.0)));

        Assert.Equal("0", Carries(beliefs, "f", "clown"));
        Assert.Equal([new("f", 0), new("f", 1)], Assert.Single(beliefs.Clashes).Records);
    }

    [Fact]
    public void Of_VisualYoungWhereOneParentIsRuledOut_IsAClash()
    {
        var beliefs = Of(Animal("s", Sex.Male, Told("clown")), Animal("d", Sex.Female, RuledOut("clown")), Young("y", "s", "d", Seen("clown", 1, 1)));

        Assert.Equal([new("d", 0), new("y", 0)], Assert.Single(beliefs.Clashes).Records);
    }

    [Fact]
    public void Of_VisualYoungWithOneParentRecorded_IsNoClash()
    {
        var beliefs = Of(Animal("d", Sex.Female, Told("clown")), Young("y", null, "d", Seen("clown", 1, 1)));

        Assert.Empty(beliefs.Clashes);
        Assert.Equal("1", Pair(beliefs, "y", "clown", 1, 1));
    }

    [Fact]
    public void Of_ToldPossibleHetOfARecordedVisualDam_IsHet()
    {
        var beliefs = Of(Animal("d", Sex.Female, Seen("clown", 1, 1)), Young("y", null, "d", Normal(), Chance("clown", 2, 3)));

        Assert.Equal("1", Carries(beliefs, "y", "clown"));
    }

    [Fact]
    public void Of_ToldPossibleHetOfOneRecordedParent_IsTheStart()
    {
        var beliefs = Of(Animal("d", Sex.Female, Told("clown")), Young("y", null, "d", Normal(), Chance("clown", 2, 3)));

        Assert.Equal("2/3", Carries(beliefs, "y", "clown"));
        Assert.Empty(beliefs["y"].NotCounted);
    }

    [Fact]
    public void Of_PossibleHetOfAPossibleHet_HearsTheParentsLabelFirst()
    {
        // Nothing implies the dam's label, so it is her start; that implies her young's, which is not counted again.
        var beliefs = Of(
            Animal("gs", Sex.Male, Normal()), Animal("gd", Sex.Female, Normal()), Animal("s", Sex.Male, Normal()),
            Young("d", "gs", "gd", Normal(), Chance("clown", 2, 3)), Young("y", "s", "d", Normal(), Chance("clown", 1, 2)));

        Assert.Equal("1/3", Carries(beliefs, "y", "clown"));
        Assert.Equal([1], beliefs["y"].NotCounted);
        Assert.Empty(beliefs["d"].NotCounted);
    }

    [Fact]
    public void Of_YoungThatTheOneRecordedParentCannotHave_IsAClash()
    {
        // A dam with two copies gives one to every young.
        var beliefs = Of(Animal("d", Sex.Female, Told("moj", 2, 2)), Young("y", null, "d", Seen("les")));

        Assert.Equal([new("d", 0), new("y", 0)], Assert.Single(beliefs.Clashes).Records);
    }

    [Fact]
    public void Of_SonOfASireWithItOnHisY_HasItOnHisY()
    {
        // Mutant son of a Y-type sire and a wild dam: on the Y for every r [derived from the model of partial sex linkage].
        var beliefs = Of(
            Animal("s", Sex.Male, Told("banana", 0, 1, Sex.Male)), Animal("d", Sex.Female, Normal()), Young("y", "s", "d", Seen("banana")) with { Sex = Sex.Male });

        Assert.Equal(new Diplotype(0, 1), Assert.Single(beliefs["y"].Genotype[Snake.SexGroup]).Value);
    }

    [Fact]
    public void Of_SonOfTwoCarriers_WeighsBothChromosomes()
    {
        // From sire (1-r)/4, from dam r/4 of all young, and two copies (1-r)/4 [derived]: of sons with one copy 0.92 have it on the Y.
        var beliefs = Of(
            Animal("s", Sex.Male, Told("banana", 0, 1, Sex.Male)), Animal("d", Sex.Female, Told("banana")), Young("y", "s", "d", Seen("banana")) with { Sex = Sex.Male });

        var own = beliefs["y"].Genotype[Snake.SexGroup].ToDictionary(w => w.Value, w => w.Weight.Value);
        Assert.Equal(0.92, own[new(0, 1)], 1e-12);
        Assert.Equal(0.08, own[new(1, 0)], 1e-12);
    }

    [Fact]
    public void Of_UnsexedYoungOfAMaker_HasItWithChanceOneHalf()
    {
        var beliefs = Of(Animal("s", Sex.Male, Told("banana", 0, 1, Sex.Male)), Animal("d", Sex.Female, Normal()), Young("y", "s", "d"));

        Assert.Equal(0.5, ChanceOf(beliefs, "y", "banana").Value, 1e-12);
    }

    [Fact]
    public void Of_TwoPossibleSires_IsTheMixture()
    {
        var beliefs = Of(
            Animal("a", Sex.Male, Told("clown")), Animal("b", Sex.Male, Normal()), Animal("d", Sex.Female, Seen("clown", 1, 1)),
            new RecordedAnimal("y", Sex.Female, []) { PossibleSires = ["a", "b"], Dam = "d" });

        Assert.Equal("1/4", Pair(beliefs, "y", "clown", 1, 1));
        Assert.Equal("3/4", Pair(beliefs, "y", "clown", 0, 1));
    }

    [Fact]
    public void Of_RuledOutByOneWhoIsNotSure_WeighsTheDoubt()
    {
        // Prior 1/2; nine in ten sure: (1/2)(0.1) / ((1/2)(0.1) + (1/2)(0.9)) = 1/10 [computed, Bayes' rule].
        var beliefs = Of(
            Animal("s", Sex.Male, Told("clown")), Animal("d", Sex.Female, Normal()), Young("y", "s", "d", RuledOut("clown") with { Confidence = Probability.Ratio(9, 10) }));

        Assert.Equal("1/10", Carries(beliefs, "y", "clown"));
    }

    [Fact]
    public void Of_ToldHetByOneWhoIsNotSure_IsAsSureAsThePerson() =>
        Assert.Equal("3/4", Carries(Of(Animal("f", Sex.Male, Told("clown") with { Confidence = Probability.Ratio(3, 4) })), "f", "clown"));

    [Fact]
    public void Of_NothingRecorded_IsWild()
    {
        var beliefs = Of(Animal("f", null));

        Assert.All(Snake.Groups, g => Assert.Equal([new(default, Probability.Certain)], beliefs["f"].Genotype[g]));
        Assert.Empty(beliefs["f"].Spoken);
    }

    [Fact]
    public void Of_ManyYoungOfAKindThatIsTakenNotToLive_IsStillABelief()
    {
        // A wrong rate in the species data must not leave the whole book without beliefs.
        var deadly = Species.From(new("made-up", SexSystem.XY, [Testing.Describe.Free("bold", Testing.Describe.Dominant("bold"))])
        {
            Dangers = [Testing.Describe.TwoCopies("bold", Probability.Impossible)],
        });
        RecordedAnimal[] animals =
        [
            Animal("s", Sex.Male, Told("bold", species: deadly)), Animal("d", Sex.Female, Told("bold", species: deadly)),
            .. Enumerable.Range(0, 12).Select(i => Young($"y{i}", "s", "d", Told("bold", 1, 1, species: deadly), Seen("bold", 1, 1, deadly))),
        ];

        var beliefs = PedigreeBeliefs.Of(deadly, animals, cancel: TestContext.Current.CancellationToken);

        Assert.Equal(1.0, beliefs["y3"].Genotype[deadly.FindLocus("bold")!.Group].Sum(w => w.Weight.Value), 1e-9);
        Assert.NotEmpty(beliefs.Clashes);
    }
}
