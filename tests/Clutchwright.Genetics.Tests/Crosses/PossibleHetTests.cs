using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Testing;

namespace Clutchwright.Genetics.Tests.Crosses;

/// <summary>Doubt about a parent is shared by the whole clutch. Tables computed apart from this program.</summary>
public class PossibleHetTests
{
    private static readonly Species Snake = Describe.Species(
        SexSystem.XY, Describe.Free("clown", Describe.Recessive("clown")), Describe.Free("pied", Describe.Recessive("pied")));

    private static readonly Probability TwoThirds = Probability.Ratio(2, 3);

    // Normal-looking sibs of a visual carry with 2/3: freezingblue.com, textes.easybayes.org; with a wild parent 1/2; the trade's 66 % and 50 %.
    [Fact]
    public void NormalYoung_OfHetByHetAndOfHetByWild_CarryWithTwoThirdsAndHalf()
    {
        Assert.Equal(new Fraction(2, 3), HiddenHet(Male("clown/+"), Female("clown/+")));
        Assert.Equal(new Fraction(1, 2), HiddenHet(Male("clown/+"), Genotype.Wild(Snake, Sex.Female)));
        Assert.Equal(new Fraction(1), HiddenHet(Male("clown/clown"), Genotype.Wild(Snake, Sex.Female)));
    }

    // Young of a 66 % possible het and a wild mate are 33 %, of a 50 % one 25 %: the trade's bookkeeping.
    [Fact]
    public void Young_OfAPossibleHetByWild_CarryHalfAsOften()
    {
        foreach (var (chance, expected) in new[] { (TwoThirds, new Fraction(1, 3)), (Probability.Half, new Fraction(1, 4)) })
        {
            var cross = Cross.Of(Mating.Of(
                Describe.PossibleHet(Snake, Sex.Male, "clown", chance), GenotypeBelief.Wild(Snake, Sex.Female)));

            Assert.Equal(expected, Assert.Single(cross.Looks().Single().Hidden).Chance.Exact);
        }
    }

    // 1 - (1/3 + 2/3 (1/2)^5) = 0.645833, and not 1 - (2/3)^5 = 0.868313.
    [Fact]
    public void PossibleHet66_ByVisual_FiveEggs_IsTheMixture()
    {
        var cross = Cross.Of(Mating.Of(
            Describe.PossibleHet(Snake, Sex.Male, "clown", TwoThirds), GenotypeBelief.Certain(Female("clown/clown"))));
        var clown = cross.SharedChanceOf(Describe.Want(Snake, "clown/clown"));

        Assert.Equal(new Fraction(31, 48), clown.AtLeastOne(5).Exact);
        Assert.Equal(0.645833, clown.AtLeastOne(5).Value, 5e-7);
        Assert.Equal(new Fraction(1, 3), clown.PerEgg.Exact);
        Assert.Equal(new Fraction(2, 3), clown.Ceiling.Exact);
        Assert.Equal(clown.Cases, cross.Looks().Single(l => l.Seen.Count == 1).Shared().Cases);
    }

    [Fact]
    public void HetByHet_SixEggs_Is0822021()
    {
        var clown = Cross.Of(Mating.Of(Male("clown/+"), Female("clown/+"))).SharedChanceOf(Describe.Want(Snake, "clown/clown"));

        Assert.Equal(new Fraction(1, 4), clown.PerEgg.Exact);
        Assert.Equal(0.822021, clown.AtLeastOne(6).Value, 5e-7);
        Assert.Equal(11, clown.EggsFor(Probability.Ratio(95, 100)));
        Assert.Equal(17, clown.EggsFor(Probability.Ratio(99, 100)));
    }

    // Posterior of a het after n normal young: 2/3 or 1/2 before, mate a visual or a het.
    [Theory]
    [InlineData(0, 0.666667, 0.5, 0.666667, 0.5)]
    [InlineData(1, 0.5, 0.333333, 0.6, 0.428571)]
    [InlineData(2, 0.333333, 0.2, 0.529412, 0.36)]
    [InlineData(3, 0.2, 0.111111, 0.457627, 0.296703)]
    [InlineData(4, 0.111111, 0.058824, 0.387560, 0.240356)]
    [InlineData(5, 0.058824, 0.030303, 0.321854, 0.191792)]
    [InlineData(6, 0.030303, 0.015385, 0.262514, 0.151088)]
    [InlineData(8, 0.007752, 0.003891, 0.166823, 0.091002)]
    [InlineData(10, 0.001949, 0.000976, 0.101226, 0.053311)]
    [InlineData(12, 0.000488, 0.000244, 0.059578, 0.030704)]
    [InlineData(16, 0.000031, 0.000015, 0.019651, 0.009923)]
    [InlineData(20, 0.000002, 0.000001, 0.006302, 0.003161)]
    public void NormalYoung_OfAPossibleHet_LowerItsChance(int normal, double visual66, double visual50, double het66, double het50)
    {
        Assert.Equal(visual66, Posterior(TwoThirds, "clown/clown"), 6e-7);
        Assert.Equal(visual50, Posterior(Probability.Half, "clown/clown"), 6e-7);
        Assert.Equal(het66, Posterior(TwoThirds, "clown/+"), 6e-7);
        Assert.Equal(het50, Posterior(Probability.Half, "clown/+"), 6e-7);

        // By Bayes: a het's chance of none among so many, against the mixture's.
        double Posterior(Probability prior, string mate)
        {
            var mixture = None(Describe.PossibleHet(Snake, Sex.Male, "clown", prior), mate);
            var het = None(GenotypeBelief.Certain(Male("clown/+")), mate);
            return prior.Value * het.Value / mixture.Value;
        }

        Probability None(GenotypeBelief sire, string mate) => Cross
            .Of(Mating.Of(sire, GenotypeBelief.Certain(Female(mate))))
            .SharedChanceOf(Describe.Want(Snake, "clown/clown"))
            .AtLeastOne(normal).Complement;
    }

    // n normals from a het and a mate that is a het with chance q: (1 - q) + q (3/4)^n, not (1 - q/4)^n.
    [Fact]
    public void HetByPossibleHet_SharesTheMatesState()
    {
        var clown = Cross
            .Of(Mating.Of(GenotypeBelief.Certain(Male("clown/+")), Describe.PossibleHet(Snake, Sex.Female, "clown", TwoThirds)))
            .SharedChanceOf(Describe.Want(Snake, "clown/clown"));

        Assert.Equal(Fraction.One - (new Fraction(1, 3) + (new Fraction(2, 3) * new Fraction(3, 4).Power(8))), clown.AtLeastOne(8).Exact);
    }

    // Two possible hets of two genes in one animal: doubts of different loci are independent, and each is shared by the clutch.
    // One clown pied in n eggs from a 66 % het clown 50 % het pied by a clown pied: 1/3 of cases give 1/4 an egg.
    [Fact]
    public void TwoDoubts_BothAreShared()
    {
        var sire = Describe.PossibleHet(Snake, Sex.Male, "clown", TwoThirds)
            .With(Snake.Groups[1], [new(new(0, 1), Probability.Half), new(new(0, 0), Probability.Half)]);

        var shared = Cross
            .Of(Mating.Of(sire, GenotypeBelief.Certain(Female("clown/clown", "pied/pied"))))
            .SharedChanceOf(Describe.Want(Snake, "clown/clown", "pied/pied"));

        Assert.Equal(
            [new(Probability.Ratio(1, 4), Probability.Ratio(1, 3)), new(Probability.Impossible, TwoThirds)], shared.Cases);
    }

    // Two sibs of one doubtful pair are both hets or both not, more often than chance: taken jointly the clutch knows.
    // Parents 66 % het x wild: a son and a daughter are each het with 1/3; both with 2/3 * 1/4 = 1/6, not 1/9.
    [Fact]
    public void Siblings_OfADoubtfulPair_ShareTheirParentsDoubt()
    {
        var parents = Mating.Of(Describe.PossibleHet(Snake, Sex.Male, "clown", TwoThirds), GenotypeBelief.Wild(Snake, Sex.Female));

        var shared = Cross.Of(Mating.OfSiblings(parents)).SharedChanceOf(Describe.Want(Snake, "clown/clown"));

        Assert.Equal(
            [new(Probability.Ratio(1, 4), Probability.Ratio(1, 6)), new(Probability.Impossible, Probability.Ratio(5, 6))], shared.Cases);
    }

    // The clutch varies in size: 4 or 8 eggs with 1/2 each. A het pair misses with (3/4)^4 and (3/4)^8.
    [Fact]
    public void HetByHet_ClutchOfUnknownSize_IsTheMixtureOverSizes()
    {
        double[] eggs = [0, 0, 0, 0, 0.5, 0, 0, 0, 0.5];
        var clutch = GoodEggs.Of(eggs, Probability.Certain, ClutchRate.Fixed(1.0), ClutchRate.Fixed(1.0));
        var clown = Cross.Of(Mating.Of(Male("clown/+"), Female("clown/+"))).SharedChanceOf(Describe.Want(Snake, "clown/clown"));

        Assert.Equal(1.0 - ((81.0 / 256.0) + (6561.0 / 65536.0)) / 2.0, clown.AtLeastOne(clutch).Value, 1e-12);
    }

    private static Genotype Male(params string[] pairs) => Describe.Male(Snake, pairs);

    private static Genotype Female(params string[] pairs) => Describe.Female(Snake, pairs);

    private static Fraction? HiddenHet(Genotype sire, Genotype dam) =>
        Assert.Single(Cross.Of(Mating.Of(sire, dam)).Looks().Single(l => l.Seen.Count == 0).Hidden).Chance.Exact;
}
