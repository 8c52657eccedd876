using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Genetics.Tests.Loci;

public class SpeciesTests
{
    private static readonly LocusDefinition Locus = Describe.Free("A", Describe.Recessive("a1"), Describe.Incomplete("a2"), Describe.Dominant("a3"));

    public static readonly TheoryData<string, string> Forms = new()
    {
        { "+/+", "A:normal" },
        { "+/a1", "A:normal" },
        { "a1/a1", "a1" },
        { "+/a2", "a2" },
        { "a2/a2", "super-a2" },
        { "+/a3", "a3" },
        { "a3/a3", "a3" },
        { "a1/a2", "a2" },
        { "a1/a3", "a3" },
        { "a2/a3", "a2/a3" },
    };

    // The rules by which pairs without a stated form take theirs: docs of the catalogue.
    [Theory]
    [MemberData(nameof(Forms))]
    public void ExpressionOf_NoStatedForm_FollowsTheModes(string pair, string expected)
    {
        var locus = Describe.Species(SexSystem.XY, Locus).Loci[0];
        var (first, second) = Pair(locus, pair);

        Assert.Equal(expected, locus.ExpressionOf(first, second).Id);
        Assert.Same(locus.ExpressionOf(first, second), locus.ExpressionOf(second, first));
    }

    [Fact]
    public void ExpressionOf_StatedForm_GoesBeforeTheModes()
    {
        var locus = Describe.Species(SexSystem.XY, Locus with { Forms = [new("white", "White", [("a2", "a3"), ("a2", "a2")])] }).Loci[0];

        Assert.Equal("white", locus.ExpressionOf(2, 3).Id);
        Assert.Same(locus.ExpressionOf(2, 2), locus.ExpressionOf(3, 2));
    }

    // Of a recessive and a dominant allele only the dominant one shows, so only its penetrance counts.
    [Fact]
    public void ExpressionsOf_RecessiveWithAnIncompletelyPenetrantDominant_ShowsByTheDominantAlone()
    {
        var locus = Describe.Species(SexSystem.XY, Describe.Free(
            "A", Describe.Recessive("a1"), Describe.Dominant("a2") with { Penetrance = Probability.Ratio(4, 5) })).Loci[0];

        Assert.Equal(Probability.Ratio(4, 5), locus.ExpressionsOf(1, 2)[0].Weight);
        Assert.Equal(Probability.Ratio(4, 5), locus.ExpressionsOf(0, 2)[0].Weight);
        Assert.Equal(Probability.Ratio(4, 5), locus.ExpressionsOf(2, 2)[0].Weight);
    }

    // Of two alleles that both show, one is enough: 1 - (1 - 4/5) (1 - 1/2).
    [Fact]
    public void ExpressionsOf_TwoShowingAlleles_ShowsIfEitherDoes()
    {
        var locus = Describe.Species(SexSystem.XY, Describe.Free(
            "A",
            Describe.Incomplete("a1") with { Penetrance = Probability.Half },
            Describe.Dominant("a2") with { Penetrance = Probability.Ratio(4, 5) })).Loci[0];

        Assert.Equal(Probability.Ratio(9, 10), locus.ExpressionsOf(1, 2)[0].Weight);
    }

    [Fact]
    public void From_ContradictoryDescriptions_Throws()
    {
        var a = Describe.Free("A", Describe.Recessive("a"));
        Refused("locus id 'A'", a, Describe.Free("A", Describe.Recessive("b")));
        Refused("allele id 'a'", a, Describe.Free("B", Describe.Recessive("a")));
        Refused("two forms", a with { Forms = [new("f", "F", [("a", "a")]), new("g", "G", [("a", "a")])] });
        Refused("no allele 'b'", a with { Forms = [new("f", "F", [("a", "b")])] });
        Refused("two wild alleles", a with { Forms = [new("f", "F", [("+", "+")])] });
        Refused("'+' is the wild allele", Describe.Free("A", Describe.Recessive("+")));
        Refused("no mutant allele", Describe.Free("A"));

        static void Refused(string reason, params LocusDefinition[] loci) =>
            Assert.Contains(reason, Assert.Throws<SpeciesException>(() => Describe.Species(SexSystem.XY, loci)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void From_ContradictoryMasksAndDangers_Throws()
    {
        var definition = new SpeciesDefinition("s", SexSystem.XY, [Describe.Free("A", Describe.Recessive("a")), Describe.Free("B", Describe.Recessive("b"))]);
        RefusedMask("unknown form 'x'", new MaskDefinition(["x"], null));
        RefusedMask("neither an allele nor a locus", new MaskDefinition(["a"], ["x"]));
        RefusedMask("under two masks", new MaskDefinition(["a"], null), new MaskDefinition(["a"], null));
        RefusedDanger("unknown allele 'x'", new GenotypeCondition.Carries("x"));
        RefusedDanger("alleles of two loci", new GenotypeCondition.IsPair("a", "b"));
        RefusedDanger("names the locus A twice", new GenotypeCondition.Carries("a"), new GenotypeCondition.IsPair("a", "a"));
        RefusedDanger("has no condition");

        void RefusedMask(string reason, params MaskDefinition[] masks) => Assert.Contains(
            reason, Assert.Throws<SpeciesException>(() => Species.From(definition with { Masks = masks })).Message, StringComparison.Ordinal);

        void RefusedDanger(string reason, params GenotypeCondition[] when) => Assert.Contains(
            reason,
            Assert.Throws<SpeciesException>(() => Species.From(definition with
            {
                Dangers = [new("d", when, Severity.Watch, "Harms.", Evidence.CommonPractice)],
            })).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Groups_AnySpecies_HoldEveryLocusOnceAndTheSexChromosomesLast() => SpeciesGen.Any.Sample(
        sample =>
        {
            var species = sample.Species;

            Assert.Equal(species.Loci, species.Groups.SelectMany(g => g.Loci).OrderBy(l => l.Index));
            Assert.Same(species.SexGroup, species.Groups[^1]);
            Assert.All(species.Groups, g => Assert.Equal(g == species.SexGroup, g.IsSex));
            Assert.All(species.Loci, l => Assert.Same(l, l.Group.Loci[l.IndexInGroup]));
        },
        iter: 300);

    [Fact]
    public void Haplotypes_AnyGroup_AreReadAsTheyWereWritten() => SpeciesGen.Any.Sample(
        sample =>
        {
            foreach (var group in sample.Species.Groups)
            {
                for (var haplotype = 0; haplotype < group.HaplotypeCount; haplotype++)
                {
                    var again = Enumerable.Range(0, group.Loci.Count).Aggregate(0, (code, i) => group.With(code, i, group.AlleleAt(haplotype, i)));
                    Assert.Equal(haplotype, again);
                }
            }
        },
        iter: 300);

    [Fact]
    public void WithRecombination_SexLinkedLocus_ChangesItsFractionOnly()
    {
        var species = Describe.Species(SexSystem.XY, Describe.SexLinked("A", 0.08, Describe.Dominant("a")), Describe.Free("B", Describe.Recessive("b")));

        var other = species.WithRecombination("A", RecombinationFraction.From(0.02));

        Assert.Equal(0.02, Assert.IsType<Placement.SexLinked>(other.Loci[0].Placement).Recombination.Value);
        Assert.Throws<ArgumentException>(() => species.WithRecombination("B", RecombinationFraction.Free));
        Assert.Throws<ArgumentException>(() => species.WithRecombination("C", RecombinationFraction.Free));
    }

    private static (int First, int Second) Pair(Locus locus, string pair)
    {
        var ids = pair.Split('/');
        return (Index(ids[0]), Index(ids[1]));

        int Index(string id) => locus.Alleles.Single(a => a.Id == id).Index;
    }
}
