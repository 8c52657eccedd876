using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Testing;

namespace Clutchwright.Genetics.Tests.Crosses;

/// <summary>Expected offspring under partial sex linkage, derived by hand from the model: XX females, XY males, crossing over in males between
/// the locus and the sex-determining region with fraction r. Inheritance of a sex-linked incompletely dominant allele with
/// recombination: Mallery and Carrillo 2016, Phyllomedusa 15(1): 29-42. r = 0.08 is an example, not their estimate.</summary>
public class SexLinkageTests
{
    public static readonly TheoryData<double> Fractions = [0.0, 0.08, 0.5];

    // The trade's male maker: sons show, daughters do not, but for recombinants. 1,000 hatchlings at 0.08: 460, 40, 460, 40.
    [Theory]
    [MemberData(nameof(Fractions))]
    public void SireWithTheAlleleOnY_WildDam_GivesItToSons(double r)
    {
        var species = Species(SexSystem.XY, r);

        var cross = Cross.Of(Mating.Of(Describe.Male(species, "+/banana"), Genotype.Wild(species, Sex.Female)));

        Close((1 - r) / 2, cross, Sex.Male, "+/banana");
        Close(r / 2, cross, Sex.Male, "wild");
        Close((1 - r) / 2, cross, Sex.Female, "wild");
        Close(r / 2, cross, Sex.Female, "+/banana");
        Assert.All(cross.Looks().Where(l => l.Sex == Sex.Male && l.Seen.Count > 0), l => Assert.Empty(l.Hidden)); // on Y, always
        Assert.All(SonsWithOneCopy(cross), son => Assert.Equal((0, 1), son.AllelesAt(species.Loci[0])));
    }

    [Theory]
    [MemberData(nameof(Fractions))]
    public void SireWithTheAlleleOnX_WildDam_GivesItToDaughters(double r)
    {
        var species = Species(SexSystem.XY, r);

        var cross = Cross.Of(Mating.Of(Describe.Male(species, "banana/+"), Genotype.Wild(species, Sex.Female)));

        Close(r / 2, cross, Sex.Male, "+/banana");
        Close((1 - r) / 2, cross, Sex.Male, "wild");
        Close(r / 2, cross, Sex.Female, "wild");
        Close((1 - r) / 2, cross, Sex.Female, "+/banana");
    }

    // Every mutant son of a mutant dam and a wild sire has it on the X, and so gives it to daughters.
    [Theory]
    [MemberData(nameof(Fractions))]
    public void DamWithOneCopy_WildSire_GivesAQuarterEach(double r)
    {
        var species = Species(SexSystem.XY, r);

        var cross = Cross.Of(Mating.Of(Genotype.Wild(species, Sex.Male), Describe.Female(species, "banana/+")));

        Assert.Equal(4, cross.Looks().Count());
        Assert.All(cross.Looks(), l => Assert.Equal(new Fraction(1, 4), l.Chance.Exact));
        Assert.All(SonsWithOneCopy(cross), son => Assert.Equal((1, 0), son.AllelesAt(species.Loci[0])));
    }

    [Theory]
    [MemberData(nameof(Fractions))]
    public void SireWithTwoCopies_WildDam_GivesOneCopyToAll(double r)
    {
        var species = Species(SexSystem.XY, r);

        var cross = Cross.Of(Mating.Of(Describe.Male(species, "banana/banana"), Genotype.Wild(species, Sex.Female)));

        Assert.Equal(new Dictionary<string, string> { ["banana (Male)"] = "1/2", ["banana (Female)"] = "1/2" }, Ratios.ExactLooks(cross));
    }

    [Theory]
    [MemberData(nameof(Fractions))]
    public void SireWithTheAlleleOnY_DamWithOneCopy_FollowsTheTable(double r)
    {
        var species = Species(SexSystem.XY, r);
        var locus = species.Loci[0];

        var cross = Cross.Of(Mating.Of(Describe.Male(species, "+/banana"), Describe.Female(species, "banana/+")));

        Close((1 - r) / 4, cross, Sex.Male, "banana/banana");
        Close((1 - r) / 4, cross.ChanceOf(ByStrand(locus, 0, 1))); // one copy, from the sire
        Close(r / 4, cross.ChanceOf(ByStrand(locus, 1, 0))); // one copy, from the dam
        Close(r / 4, cross, Sex.Male, "wild");
        Close(r / 4, cross, Sex.Female, "banana/banana");
        Close((r / 4) + ((1 - r) / 4), cross, Sex.Female, "+/banana"); // r/4 from the sire, (1 - r)/4 from the dam: not told apart
        Close((1 - r) / 4, cross, Sex.Female, "wild");

        // What one-copy sons carry unseen is on which of the two chromosomes it lies.
        var sons = cross.Looks().Single(l => l.Sex == Sex.Male && l.Seen.Any(e => e.Id == "banana"));
        Assert.Equal(r is 0.0 ? 0 : 2, sons.Hidden.Count);
        Assert.All(sons.Hidden, h => Assert.Equal((h.First, h.Second) == (0, 1) ? 1 - r : r, h.Chance.Value, 1e-12));
    }

    [Fact]
    public void FullyLinkedOrFree_IsExact()
    {
        foreach (var r in new[] { 0.0, 0.5 })
        {
            var species = Species(SexSystem.XY, r);

            Assert.All(
                Cross.Of(Mating.Of(Describe.Male(species, "+/banana"), Describe.Female(species, "banana/+"))).Looks(),
                l => Assert.NotNull(l.Chance.Exact));
        }
    }

    // In a ZW species all this holds of dams: an allele on W goes to daughters.
    [Theory]
    [MemberData(nameof(Fractions))]
    public void DamWithTheAlleleOnW_WildSire_GivesItToDaughters(double r)
    {
        var species = Species(SexSystem.ZW, r);

        var cross = Cross.Of(Mating.Of(Genotype.Wild(species, Sex.Male), Describe.Female(species, "+/banana")));

        Close((1 - r) / 2, cross, Sex.Female, "+/banana");
        Close(r / 2, cross, Sex.Female, "wild");
        Close((1 - r) / 2, cross, Sex.Male, "wild");
        Close(r / 2, cross, Sex.Male, "+/banana");
    }

    // Common practice, no source: only males are makers. A daughter of a male maker gives it to sons and daughters alike.
    [Fact]
    public void DaughterOfAMaleMaker_GivesItToBothSexesAlike()
    {
        var species = Species(SexSystem.XY, 0.08);
        var first = Cross.Of(Mating.Of(Describe.Male(species, "+/banana"), Genotype.Wild(species, Sex.Female)));
        var daughter = first.Genotypes().Single(g => g.Sex == Sex.Female && g.Genotype.AllelesAt(species.Loci[0]) != (0, 0)).Genotype;

        var second = Cross.Of(Mating.Of(Genotype.Wild(species, Sex.Male), daughter));

        Assert.All(second.Looks(), l => Assert.Equal(new Fraction(1, 4), l.Chance.Exact));
    }

    // Loci on different arms: the sex-determining region lies between them, so a Y with both alleles gives son and alleles by two intervals.
    [Fact]
    public void TwoLoci_OnDifferentArms_CrossOverOnBothSidesOfTheRegion()
    {
        var species = Describe.Species(
            SexSystem.XY,
            new("A", "A", new Placement.SexLinked(RecombinationFraction.From(0.1)), [Describe.Dominant("a")]),
            new("B", "B", new Placement.SexLinked(RecombinationFraction.From(0.2), Arm: 2), [Describe.Dominant("b")]));

        var looks = Ratios.Looks(Cross.Of(Mating.Of(Describe.Male(species, "+/a", "+/b"), Genotype.Wild(species, Sex.Female))));

        Assert.Equal(0.9 * 0.8 / 2, looks["a b (Male)"].Value, 1e-12);
        Assert.Equal(0.9 * 0.2 / 2, looks["a (Male)"].Value, 1e-12);
        Assert.Equal(0.1 * 0.8 / 2, looks["b (Male)"].Value, 1e-12);
        Assert.Equal(0.1 * 0.2 / 2, looks["normal (Male)"].Value, 1e-12);
        Assert.Equal(0.9 * 0.8 / 2, looks["normal (Female)"].Value, 1e-12);
        Assert.Equal(0.1 * 0.2 / 2, looks["a b (Female)"].Value, 1e-12);
    }

    // On one arm the farther locus crosses over with the region by r13 = r12 + r23 - 2 r12 r23.
    [Fact]
    public void TwoLoci_OnOneArm_ShareTheInnerInterval()
    {
        var species = Describe.Species(
            SexSystem.XY, Describe.SexLinked("A", 0.1, Describe.Dominant("a")), Describe.SexLinked("B", 0.26, Describe.Dominant("b")));

        var looks = Ratios.Looks(Cross.Of(Mating.Of(Describe.Male(species, "+/a", "+/b"), Genotype.Wild(species, Sex.Female))));

        // 0.26 = 0.1 + 0.2 - 2 * 0.1 * 0.2
        Assert.Equal(0.9 * 0.8 / 2, looks["a b (Male)"].Value, 1e-12);
        Assert.Equal(0.9 * 0.2 / 2, looks["a (Male)"].Value, 1e-12);
        Assert.Equal(0.1 * 0.2 / 2, looks["b (Male)"].Value, 1e-12);
        Assert.Equal(0.1 * 0.8 / 2, looks["normal (Male)"].Value, 1e-12);
    }

    // The other sex has its own fraction: a dam of an XY species with both alleles on one X, r = 0.25 between them in females, 0 in males.
    [Fact]
    public void OtherSex_HasItsOwnFraction()
    {
        var species = Describe.Species(
            SexSystem.XY,
            new("A", "A", new Placement.SexLinked(RecombinationFraction.Complete), [Describe.Dominant("a")]),
            new("B", "B", new Placement.SexLinked(RecombinationFraction.Complete, RecombinationFraction.From(0.25)), [Describe.Dominant("b")]));

        var fromDam = Ratios.Looks(Cross.Of(Mating.Of(Genotype.Wild(species, Sex.Male), Describe.Female(species, "a/+", "b/+"))));
        var fromSire = Ratios.Looks(Cross.Of(Mating.Of(Describe.Male(species, "a/+", "b/+"), Genotype.Wild(species, Sex.Female))));

        Assert.Equal(0.75 / 4, fromDam["a b (Male)"].Value, 1e-12);
        Assert.Equal(0.25 / 4, fromDam["a (Male)"].Value, 1e-12);
        Assert.Equal(["1/2", "1/2"], fromSire.Values.Select(p => p.ToString()));
    }

    private static Species Species(SexSystem system, double r) => Describe.Species(system, Describe.SexLinked("banana", r, Describe.Incomplete("banana")));

    private static Want ByStrand(Locus locus, int onX, int onY) => new([new(null, [WantedPairs.ByStrand(locus, onX, onY)])]);

    private static IEnumerable<Genotype> SonsWithOneCopy(Cross cross) => cross.Genotypes()
        .Where(g => g.Sex == Sex.Male && g.Genotype.AllelesAt(cross.Mating.Species.Loci[0]) is (0, 1) or (1, 0))
        .Select(g => g.Genotype);

    private static void Close(double expected, Cross cross, Sex sex, string pair) => Close(expected, cross.ChanceOf(pair == "wild"
        ? new Want([new(sex, [WantedPairs.Of(cross.Mating.Species.Loci[0], [(0, 0)])])])
        : Describe.Want(cross.Mating.Species, sex, pair)));

    private static void Close(double expected, Probability actual) => Assert.Equal(expected, actual.Value, 1e-12);
}
