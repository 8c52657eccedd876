using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Testing;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>Worked cases of whole pedigrees.</summary>
public class PedigreeBeliefsTests
{
    private static readonly Species Snake = Species.From(new(
        "made-up",
        SexSystem.XY,
        [
            Describe.Free("clown", Describe.Recessive("clown")),
            Describe.Free("pastel", Describe.Incomplete("pastel")),
            Describe.Free("white", Describe.Recessive("ivory")),
            Describe.SexLinked("banana", 0.0, Describe.Incomplete("banana")),
        ])
    {
        Masks = [new(["ivory"], null)],
    });

    [Fact]
    public void Of_NormalYoungOfTwoHets_IsTwoInThreeHet()
    {
        var beliefs = Of(Hets("s", Sex.Male), Hets("d", Sex.Female), Young("y", "s", "d", Normal()));

        Assert.Equal("2/3", Carries(beliefs, "y", "clown"));
    }

    [Fact]
    public void Of_ToldWhatTheParentsImply_IsStillTwoInThree()
    {
        var beliefs = Of(Hets("s", Sex.Male), Hets("d", Sex.Female), Young("y", "s", "d", Normal(), Chance(2, 3)));

        Assert.Equal("2/3", Carries(beliefs, "y", "clown"));
        Assert.Equal([1], beliefs["y"].NotCounted);
    }

    [Fact]
    public void Of_ToldWhatTheParentsDoNotImply_IsTheStart()
    {
        var beliefs = Of(Founder("s", Sex.Male, Normal()), Founder("d", Sex.Female, Normal()), Young("y", "s", "d", Normal(), Chance(2, 3)));

        Assert.Equal("2/3", Carries(beliefs, "y", "clown"));
        Assert.Equal("0", Carries(beliefs, "s", "clown"));
    }

    [Fact]
    public void Of_HatchlingThatShowsARecessive_MakesBothParentsCertain()
    {
        var beliefs = Of(
            Founder("s", Sex.Male, Normal()), Founder("d", Sex.Female, Normal()), Young("y", "s", "d", Seen("clown", 1, 1)), Young("z", "s", "d", Normal()));

        Assert.Equal("1", Carries(beliefs, "s", "clown"));
        Assert.Equal("1", Carries(beliefs, "d", "clown"));
        Assert.Equal("2/3", Carries(beliefs, "z", "clown"));
    }

    [Fact]
    public void Of_VisualOfGrandparentsNobodySpokeOf_LeavesThemEqual()
    {
        var beliefs = Of(
            Founder("gs", Sex.Male, Normal()), Founder("gd", Sex.Female, Normal()), Young("s", "gs", "gd", Normal()) with { Sex = Sex.Male },
            Hets("d", Sex.Female), Young("y", "s", "d", Seen("clown", 1, 1)));

        Assert.Equal("1/2", Carries(beliefs, "gs", "clown"));
        Assert.Equal("1", Carries(beliefs, "s", "clown"));
    }

    [Fact]
    public void Of_FiveNormalsFromAVisual_IsOneInThirtyThree()
    {
        // [computed] methods.md: posterior = pi 2^-n / (pi 2^-n + 1 - pi), pi = 1/2, n = 5.
        var young = Enumerable.Range(0, 5).Select(i => Young($"y{i}", "s", "d", Normal()));
        var beliefs = Of([Founder("s", Sex.Male, Normal(), Chance(1, 2)), Founder("d", Sex.Female, Seen("clown", 1, 1)), .. young]);

        Assert.Equal("1/33", Carries(beliefs, "s", "clown"));
    }

    [Fact]
    public void Of_CountsOnly_AreAsSingleYoung()
    {
        var beliefs = Of(
            Founder("s", Sex.Male, Normal(), Chance(1, 2)), Founder("d", Sex.Female, Seen("clown", 1, 1)), Young("y", "s", "d", Normal()) with { Count = 5 });

        Assert.Equal("1/33", Carries(beliefs, "s", "clown"));
    }

    [Fact]
    public void Of_MaskedHatchling_TellsNothing()
    {
        var beliefs = Of(
            Founder("s", Sex.Male, Normal(), Chance(1, 2)), Founder("d", Sex.Female, Seen("clown", 1, 1)), Young("y", "s", "d", Seen("ivory", 1, 1)));

        Assert.Equal("1/2", Carries(beliefs, "s", "clown"));
    }

    [Fact]
    public void Of_BananaDaughterOfBananaDam_IsNoMakerAndHerSonsAreXBorne()
    {
        var beliefs = Of(
            Founder("s", Sex.Male, Normal()),
            Founder("d", Sex.Female, Seen("banana", 0, 1)),
            Young("y", "s", "d", Seen("banana", 0, 1)) with { Sex = Sex.Male });

        var sexGroup = Snake.SexGroup;
        Assert.Equal(new Diplotype(1, 0), Assert.Single(beliefs["y"].Genotype[sexGroup]).Value);
    }

    [Fact]
    public void Of_PossibleSires_AreAMixtureSharedByTheClutch()
    {
        var beliefs = Of(
            Founder("a", Sex.Male, Seen("pastel", 0, 1)),
            Founder("b", Sex.Male, Normal()),
            Hets("d", Sex.Female),
            new RecordedAnimal("y", null, [Normal()]) { PossibleSires = ["a", "b"], Dam = "d", Clutch = "1" },
            new RecordedAnimal("z", null, [Seen("pastel", 0, 1)]) { PossibleSires = ["a", "b"], Dam = "d", Clutch = "1" });

        Assert.Equal("1", Carries(beliefs, "z", "pastel"));
        Assert.Empty(beliefs.Clashes);
    }

    /// <summary>One of two males is Pastel and the sire with 7/10, half of his young are; a normal young makes him the sire with 7/13 [computed].</summary>
    [Fact]
    public void Of_PossibleSiresWithWeights_AreWeighed()
    {
        RecordedAnimal[] animals =
        [
            Founder("a", Sex.Male, Seen("pastel", 0, 1)),
            Founder("b", Sex.Male, Normal()),
            Founder("d", Sex.Female, Normal()),
            new RecordedAnimal("y", null, [Normal()])
            {
                PossibleSires = ["a", "b"], SireWeights = [Probability.Ratio(7, 10), Probability.Ratio(3, 10)], Dam = "d", Clutch = "1",
            },
            new RecordedAnimal("z", null, [])
            {
                PossibleSires = ["b", "a"], SireWeights = [Probability.Ratio(3, 10), Probability.Ratio(7, 10)], Dam = "d", Clutch = "1",
            },
        ];

        Assert.Equal(7.0 / 26.0, Of(animals)["z"].Genotype.ChanceOfCarrying(Snake.FindAllele("pastel")!).Value, 1e-12);
        Assert.Throws<ArgumentException>(() => Of([.. animals.SkipLast(1), animals[4] with { SireWeights = [Probability.Half] }]));
    }

    [Fact]
    public void Of_ImpossibleHatchling_IsFound()
    {
        var beliefs = Of(
            Founder("s", Sex.Male, Normal()), Founder("d", Sex.Female, Normal()), Young("y", "s", "d", Normal()), Young("z", "s", "d", Seen("pastel", 0, 1)));

        var clash = Assert.Single(beliefs.Clashes);
        Assert.Equal([new("s", 0), new("d", 0), new("z", 0)], clash.Records);
    }

    [Fact]
    public void Together_FullSibs_SharesTheirDoubt()
    {
        var beliefs = Of(
            Founder("s", Sex.Male, Normal(), Chance(1, 2)),
            Founder("d", Sex.Female, Normal()),
            Young("y", "s", "d", Normal()) with { Sex = Sex.Male },
            Young("z", "s", "d", Normal()) with { Sex = Sex.Female });

        var together = beliefs.Together(Snake.FindLocus("clown")!.Group, "y", "z", TestContext.Current.CancellationToken);

        // Both carry with 1/2 x 1/4, not with (1/4)^2.
        Assert.Equal("1/8", together.Single(w => !w.Value.First.IsWild && !w.Value.Second.IsWild).Weight.ToString());
        Assert.True(beliefs.AreTied("y", "z"));
    }

    private static PedigreeBeliefs Of(params RecordedAnimal[] animals) => PedigreeBeliefs.Of(Snake, animals);

    private static string Carries(PedigreeBeliefs beliefs, string key, string allele) =>
        beliefs[key].Genotype.ChanceOfCarrying(Snake.FindAllele(allele)!).ToString();

    private static Observation.Seen Normal() => new([], GenotypeBelief.Wild(Snake, Sex.Female));

    private static Observation.Seen Seen(string allele, int first, int second)
    {
        var locus = Snake.FindAllele(allele)!.Locus;
        return new([locus.ExpressionOf(first, second)], GenotypeBelief.Certain(Genotype.Wild(Snake, Sex.Female).With(locus, first, second)));
    }

    private static Observation.Said Chance(int numerator, int denominator) => new(
        Describe.PossibleHet(Snake, Sex.Female, "clown", Probability.Ratio(numerator, denominator)), StatementBasis.Told);

    private static RecordedAnimal Founder(string key, Sex sex, params Observation[] observations) => new(key, sex, observations);

    private static RecordedAnimal Hets(string key, Sex sex) => new(
        key, sex, [new Observation.Said(GenotypeBelief.Certain(Describe.Animal(Snake, Sex.Female, "clown/+")), StatementBasis.Told)]);

    private static RecordedAnimal Young(string key, string sire, string dam, params Observation[] observations) =>
        new(key, null, observations) { Sire = sire, Dam = dam };
}
