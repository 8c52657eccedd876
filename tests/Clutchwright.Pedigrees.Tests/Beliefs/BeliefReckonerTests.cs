using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>Worked cases. The trade's 66, 50, 33 and 25 percent: common practice, no source; carrier risks in the
/// manner of Bridge 1997 and the textbooks' "unaffected sib of an affected: 2/3".</summary>
public class BeliefReckonerTests
{
    private static readonly Species Snake = Species.From(new(
        "made-up",
        SexSystem.XY,
        [
            new("clown", "Clown", new Placement.Autosomal(), [new("clown", "Clown", InheritanceMode.Recessive)]),
            new("pastel", "Pastel", new Placement.Autosomal(), [new("pastel", "Pastel", InheritanceMode.IncompleteDominant)]),
            new("white", "White", new Placement.Autosomal(), [new("ivory", "Ivory", InheritanceMode.Recessive)]),
            new("two", "Two", new Placement.Autosomal(), [new("les", "Les", InheritanceMode.IncompleteDominant), new("moj", "Moj", InheritanceMode.IncompleteDominant)]),
            new("late", "Late", new Placement.Autosomal(), [new("late", "Late", InheritanceMode.Dominant) { TellableFrom = AgeStage.Adult }]),
            new("rare", "Rare", new Placement.Autosomal(), [new("rare", "Rare", InheritanceMode.Dominant) { Penetrance = Probability.Ratio(3, 4) }]),
            new("banana", "Banana", new Placement.SexLinked(RecombinationFraction.From(0.08)), [new("banana", "Banana", InheritanceMode.IncompleteDominant)]),
        ])
    {
        Masks = [new(["ivory"], null)],
    });

    private static readonly Observation.Seen Normal = new([], GenotypeBelief.Wild(Snake, Sex.Female));

    [Fact]
    public void Of_NormalYoungOfTwoHets_IsTwoInThreeHet()
    {
        var belief = Of([Normal], Animal(Sex.Male, "clown", 0, 1), Animal(Sex.Female, "clown", 0, 1));

        Assert.Equal("2/3", Carries(belief, "clown"));
        Assert.Equal([BeliefSource.Parents, BeliefSource.Seen], belief.Steps.Select(s => s.Source));
    }

    [Fact]
    public void Of_YoungOfTwoHetsNotLookedAt_IsOneInFourVisual()
    {
        var belief = Of([], Animal(Sex.Male, "clown", 0, 1), Animal(Sex.Female, "clown", 0, 1));

        Assert.Equal(["1/2", "1/4", "1/4"], belief.Genotype[Group("clown")].Select(w => w.Weight.ToString()));
        Assert.Equal("3/4", Carries(belief, "clown"));
    }

    [Fact]
    public void Of_NormalYoungOfHetAndNormal_IsOneInTwo() =>
        Assert.Equal("1/2", Carries(Of([Normal], Animal(Sex.Male, "clown", 0, 1), Animal(Sex.Female, "clown", 0, 0)), "clown"));

    [Fact]
    public void Of_YoungOfAPossibleHetAndNormal_HalvesTheChance()
    {
        Assert.Equal("1/3", Carries(Of([Normal], Possible(Sex.Male, 2, 3), Animal(Sex.Female, "clown", 0, 0)), "clown"));
        Assert.Equal("1/4", Carries(Of([Normal], Possible(Sex.Male, 1, 2), Animal(Sex.Female, "clown", 0, 0)), "clown"));
    }

    [Fact]
    public void Of_NormalYoungOfAVisual_IsHet() =>
        Assert.Equal("1", Carries(Of([Normal], Animal(Sex.Male, "clown", 1, 1), Animal(Sex.Female, "clown", 0, 0)), "clown"));

    [Fact]
    public void Of_SeenVisualYoungOfTwoHets_IsVisual()
    {
        var belief = Of([Seen("clown", "clown", 1, 1)], Animal(Sex.Male, "clown", 0, 1), Animal(Sex.Female, "clown", 0, 1));

        AssertIs(new(1, 1), belief, Group("clown"));
        Assert.Empty(belief.Conflicts);
    }

    [Fact]
    public void Of_ToldPossibleHetWhoseParentsSayAsMuch_IsNotCountedTwice()
    {
        var belief = Of([Normal, Told("clown", Probability.Ratio(2, 3))], Animal(Sex.Male, "clown", 0, 1), Animal(Sex.Female, "clown", 0, 1));

        Assert.Equal("2/3", Carries(belief, "clown"));
        Assert.Equal([BeliefSource.Parents, BeliefSource.Seen, BeliefSource.SaidAndImplied], belief.Steps.Select(s => s.Source));
    }

    [Fact]
    public void Of_ToldPossibleHetOfAFounder_IsTheStart()
    {
        var belief = Of([Normal, Told("clown", Probability.Ratio(2, 3))]);

        Assert.Equal("2/3", Carries(belief, "clown"));
        Assert.Equal([BeliefSource.Words], belief.Steps.Select(s => s.Source));
    }

    [Fact]
    public void Of_ToldHetForCertain_OverridesTheParentsChance() =>
        Assert.Equal("1", Carries(Of([Normal, Told("clown", Probability.Certain)], Animal(Sex.Male, "clown", 0, 1), Animal(Sex.Female, "clown", 0, 0)), "clown"));

    [Fact]
    public void Of_ProvenByBreeding_IsHet() => Assert.Equal(
        "1",
        Carries(Of([Normal, new Observation.Said(Reading("clown", 0, 1), StatementBasis.ProvenByBreeding)], Animal(Sex.Male, "clown", 0, 1), Animal(Sex.Female, "clown", 0, 0)), "clown"));

    [Fact]
    public void Of_RuledOut_IsWild() => Assert.Equal(
        "0",
        Carries(Of([Normal, new Observation.RuledOut([Snake.FindAllele("clown")!])], Animal(Sex.Male, "clown", 0, 1), Animal(Sex.Female, "clown", 0, 1)), "clown"));

    [Fact]
    public void Of_RuledOutAtSeveralLoci_TouchesEachAlleleOnly()
    {
        // Moj is the second allele of its locus, as late is the first of another.
        var belief = Of(
            [new Observation.RuledOut([Snake.FindAllele("late")!, Snake.FindAllele("moj")!])],
            Animal(Sex.Male, "two", 1, 2),
            Animal(Sex.Female, "two", 0, 0));

        AssertIs(new(0, 1), belief, Group("two"));
    }

    [Fact]
    public void Of_SeenNormal_RulesOutWhatWouldShow()
    {
        var belief = Of([Normal], Animal(Sex.Male, "pastel", 0, 1), Animal(Sex.Female, "pastel", 0, 1));

        Assert.Equal("0", Carries(belief, "pastel"));
    }

    [Fact]
    public void Of_SeenNormalWithAnAlleleThatSeldomFails_WeighsThePenetrance()
    {
        // Prior 1/2, shows in 3 of 4 carriers: (1/2 * 1/4) / (1/2 * 1/4 + 1/2) = 1/5 [computed, Bayes' rule].
        var belief = Of([Normal], Animal(Sex.Male, "rare", 0, 1), Animal(Sex.Female, "rare", 0, 0));

        Assert.Equal("1/5", Carries(belief, "rare"));
    }

    [Fact]
    public void Of_SeenNormalWithAFormThatOnlyAdultsShow_TellsNothing() =>
        Assert.Equal("1/2", Carries(Of([Normal], Animal(Sex.Male, "late", 0, 1), Animal(Sex.Female, "late", 0, 0)), "late"));

    [Fact]
    public void Of_SeenFormThatHidesAll_TellsNothingOfWhatLiesBeneath()
    {
        var sire = GenotypeBelief.Certain(Genotype.Wild(Snake, Sex.Male).With(Snake.FindLocus("pastel")!, 0, 1).With(Snake.FindLocus("white")!, 0, 1));
        var dam = GenotypeBelief.Certain(Genotype.Wild(Snake, Sex.Female).With(Snake.FindLocus("pastel")!, 0, 1).With(Snake.FindLocus("white")!, 0, 1));

        var belief = Of([Seen("white", "ivory", 1, 1)], sire, dam);

        Assert.Equal("3/4", Carries(belief, "pastel"));
        Assert.Equal("1", Carries(belief, "ivory"));
    }

    [Theory]
    [InlineData(0, 2.0 / 101.0)] // not found: (2/3)(0.01) / ((2/3)(0.01) + (1/3)(0.99)) = 2/101 [computed, Bayes' rule]
    [InlineData(1, 198.0 / 199.0)] // found: (2/3)(0.99) / ((2/3)(0.99) + (1/3)(0.01)) = 198/199
    public void Of_DnaTestOfAPossibleHet_FollowsBayesRule(int found, double expected)
    {
        var test = new Observation.DnaTest(Snake.FindAllele("clown")!, found, Probability.From(0.99), Probability.From(0.99));

        var belief = Of([Normal, test], Animal(Sex.Male, "clown", 0, 1), Animal(Sex.Female, "clown", 0, 1));

        Assert.Equal(expected, belief.Genotype.ChanceOfCarrying(Snake.FindAllele("clown")!).Value, 1e-12);
    }

    [Fact]
    public void Of_DnaTestOfAFounderOfWhichNothingElseIsKnown_TakesEvenOddsBeforeIt()
    {
        // 0.98/(0.98 + 0.01) = 98/99 [computed, Bayes' rule with a prior of 1/2].
        var belief = Of([new Observation.DnaTest(Snake.FindAllele("clown")!, 1, Probability.From(0.98), Probability.From(0.99))]);

        Assert.Equal(98.0 / 99.0, belief.Genotype.ChanceOfCarrying(Snake.FindAllele("clown")!).Value, 1e-12);
    }

    [Fact]
    public void Of_InfallibleTestAgainstWhatWasSaid_IsBelievedAndToldAsAConflict()
    {
        var belief = Of([Told("clown", Probability.Certain), new Observation.DnaTest(Snake.FindAllele("clown")!, 0, Probability.Certain, Probability.Certain)]);

        Assert.Equal("0", Carries(belief, "clown"));
        Assert.Equal([(BeliefSource.DnaTest, 1)], belief.Conflicts.Select(c => (c.Source, c.Observation)));
    }

    [Fact]
    public void Of_RuledOutAgainstWhatWasSeen_TakesAwayThatAlleleOnly()
    {
        var belief = Of([Seen("two", "les/moj", 1, 2), new Observation.RuledOut([Snake.FindAllele("les")!])]);

        AssertIs(new(0, 2), belief, Group("two"));
        Assert.Equal([(BeliefSource.RuledOut, 1)], belief.Conflicts.Select(c => (c.Source, c.Observation)));
    }

    [Fact]
    public void Of_VisualYoungOfAVisualAndAnimalThatCannot_IsAConflictAndSeenIsBelieved()
    {
        var belief = Of([Seen("clown", "clown", 1, 1)], Animal(Sex.Male, "clown", 0, 1), Animal(Sex.Female, "clown", 0, 0));

        Assert.Equal([(BeliefSource.Seen, 0)], belief.Conflicts.Select(c => (c.Source, c.Observation)));
        AssertIs(new(1, 1), belief, Group("clown"));
    }

    [Fact]
    public void Of_VisualYoungWithOneParentRecorded_IsNoConflict()
    {
        var belief = Of([Seen("clown", "clown", 1, 1)], null, Animal(Sex.Female, "clown", 0, 1));

        Assert.Empty(belief.Conflicts);
        AssertIs(new(1, 1), belief, Group("clown"));
    }

    [Fact]
    public void Of_ToldPossibleHetOfARecordedVisualDam_IsHet()
    {
        var belief = Of([Told("clown", Probability.Ratio(2, 3))], null, Animal(Sex.Female, "clown", 1, 1));

        Assert.Equal("1", Carries(belief, "clown"));
        Assert.Empty(belief.Conflicts);
    }

    [Fact]
    public void Of_YoungThatTheOneRecordedParentCannotHave_IsAConflict()
    {
        // A dam with two copies gives one to every young.
        var belief = Of([Seen("two", "les", 0, 1)], null, Animal(Sex.Female, "two", 2, 2));

        Assert.Equal([(BeliefSource.Parents, 0)], belief.Conflicts.Select(c => (c.Source, c.Observation)));
    }

    [Fact]
    public void Of_SonOfASireWithItOnHisY_HasItOnHisY()
    {
        // Mutant son of a Y-type sire and a wild dam: on the Y for every r [derived from the model of partial sex linkage].
        var sire = GenotypeBelief.Certain(Genotype.Wild(Snake, Sex.Male).With(Snake.FindLocus("banana")!, 0, 1));

        var belief = Of([Seen("banana", "banana", 0, 1, Sex.Male)], sire, GenotypeBelief.Wild(Snake, Sex.Female), Sex.Male);

        AssertIs(new(0, 1), belief, Snake.SexGroup);
    }

    [Fact]
    public void Of_SonOfACarrierDam_HasItOnHisX()
    {
        var belief = Of([Seen("banana", "banana", 0, 1, Sex.Male)], GenotypeBelief.Wild(Snake, Sex.Male), Animal(Sex.Female, "banana", 0, 1), Sex.Male);

        AssertIs(new(1, 0), belief, Snake.SexGroup);
    }

    [Fact]
    public void Of_SonOfTwoCarriers_WeighsBothChromosomes()
    {
        // From sire (1-r)/4, from dam r/4 of all young, and two copies (1-r)/4 [derived]: of sons with one copy 0.92 have it on the Y.
        var sire = GenotypeBelief.Certain(Genotype.Wild(Snake, Sex.Male).With(Snake.FindLocus("banana")!, 0, 1));

        var belief = Of([Seen("banana", "banana", 0, 1, Sex.Male)], sire, Animal(Sex.Female, "banana", 0, 1), Sex.Male);

        var group = belief.Genotype[Snake.SexGroup].ToDictionary(w => w.Value, w => w.Weight.Value);
        Assert.Equal(0.92, group[new(0, 1)], 1e-12);
        Assert.Equal(0.08, group[new(1, 0)], 1e-12);
    }

    [Fact]
    public void Of_UnsexedYoungOfAMaker_HasItWithChanceOneHalf()
    {
        var sire = GenotypeBelief.Certain(Genotype.Wild(Snake, Sex.Male).With(Snake.FindLocus("banana")!, 0, 1));

        var belief = BeliefReckoner.Of(Snake, null, [], [new(Mating.Of(sire, GenotypeBelief.Wild(Snake, Sex.Female)), Probability.Certain)]);

        Assert.Equal(0.5, belief.Genotype.ChanceOfCarrying(Snake.FindAllele("banana")!).Value, 1e-12);
        Assert.Equal(Sex.Female, belief.Genotype.Sex);
    }

    [Fact]
    public void Of_TwoPossibleSires_IsTheMixture()
    {
        var dam = Animal(Sex.Female, "clown", 1, 1);
        Weighted<Mating>[] matings =
        [
            new(Mating.Of(Animal(Sex.Male, "clown", 0, 1), dam), Probability.Half),
            new(Mating.Of(Animal(Sex.Male, "clown", 0, 0), dam), Probability.Half),
        ];

        var belief = BeliefReckoner.Of(Snake, Sex.Female, [], matings);

        Assert.Equal(["3/4", "1/4"], belief.Genotype[Group("clown")].Select(w => w.Weight.ToString()));
    }

    [Fact]
    public void Of_RuledOutByOneWhoIsNotSure_WeighsTheDoubt()
    {
        // Prior 1/2; nine in ten sure: (1/2)(0.1) / ((1/2)(0.1) + (1/2)(0.9)) = 1/10 [computed, Bayes' rule].
        var belief = Of(
            [new Observation.RuledOut([Snake.FindAllele("clown")!]) { Confidence = Probability.Ratio(9, 10) }],
            Animal(Sex.Male, "clown", 0, 1),
            Animal(Sex.Female, "clown", 0, 0));

        Assert.Equal("1/10", Carries(belief, "clown"));
    }

    [Fact]
    public void Of_ToldHetByOneWhoIsNotSure_IsAsSureAsThePerson() =>
        Assert.Equal("3/4", Carries(Of([Told("clown", Probability.Certain) with { Confidence = Probability.Ratio(3, 4) }]), "clown"));

    [Fact]
    public void Of_NothingRecorded_IsWildWithoutSteps()
    {
        var belief = Of([]);

        Assert.All(Snake.Groups, g => Assert.Equal([new(default, Probability.Certain)], belief.Genotype[g]));
        Assert.Empty(belief.Steps);
    }

    private static void AssertIs(Diplotype expected, AnimalBelief belief, LinkageGroup group)
    {
        var only = Assert.Single(belief.Genotype[group]);
        Assert.Equal(expected, only.Value);
        Assert.Equal(1.0, only.Weight.Value, 1e-12);
    }

    private static AnimalBelief Of(IReadOnlyList<Observation> records) => BeliefReckoner.Of(Snake, Sex.Female, records, []);

    private static AnimalBelief Of(IReadOnlyList<Observation> records, GenotypeBelief? sire, GenotypeBelief dam, Sex sex = Sex.Female) =>
        BeliefReckoner.Of(Snake, sex, records, [new(Mating.Of(sire ?? GenotypeBelief.Wild(Snake, Sex.Male), dam), Probability.Certain)], sire is not null);

    private static LinkageGroup Group(string locus) => Snake.FindLocus(locus)!.Group;

    private static string Carries(AnimalBelief belief, string allele) => belief.Genotype.ChanceOfCarrying(Snake.FindAllele(allele)!).ToString();

    private static GenotypeBelief Animal(Sex sex, string locus, int first, int second) =>
        GenotypeBelief.Certain(Genotype.Wild(Snake, sex).With(Snake.FindLocus(locus)!, first, second));

    private static GenotypeBelief Possible(Sex sex, int of, int among) => GenotypeBelief.Wild(Snake, sex).With(
        Group("clown"), [new(new(0, 1), Probability.Ratio(of, among)), new(default, Probability.Ratio(of, among).Complement)]);

    private static GenotypeBelief Reading(string locus, int first, int second, Sex sex = Sex.Female) => Animal(sex, locus, first, second);

    private static Observation.Said Told(string locus, Probability chance) => new(
        GenotypeBelief.Wild(Snake, Sex.Female).With(Group(locus), [new(new(0, 1), chance), new(default, chance.Complement)]), StatementBasis.Told);

    private static Observation.Seen Seen(string locus, string form, int first, int second, Sex sex = Sex.Female)
    {
        Expression shown = Snake.FindExpression(form)!;
        var reading = sex == Sex.Male && Group(locus).IsSex
            ? GenotypeBelief.Wild(Snake, sex).With(Group(locus), [new(new(first, second), Probability.Half), new(new(second, first), Probability.Half)])
            : Reading(locus, first, second, sex);
        return new([shown], reading);
    }
}
