using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Testing;

namespace Clutchwright.Genetics.Tests.Crosses;

public class AllelicSeriesTests
{
    // Rabbit C locus, C > dark chinchilla > Himalayan > albino: colorgenetics.info; dichromerabbitry.com after Fontanesi 2021.
    private static readonly Species Rabbit = Describe.Species(
        SexSystem.XY,
        Describe.Free("C", Describe.Recessive("chd"), Describe.Recessive("ch"), Describe.Recessive("c")) with
        {
            Forms =
            [
                new("chinchilla", "Chinchilla", [("chd", "chd"), ("chd", "ch"), ("chd", "c")]),
                new("himalayan", "Himalayan", [("ch", "ch"), ("ch", "c")]),
                new("albino", "Albino", [("c", "c")]),
            ],
        });

    // Genes R and P of the sweet pea, both needed for colour; B turns red into purple. Bateson W, Mendel's Principles of Heredity, ch. IX.
    private static readonly Species SweetPea = Describe.Species(
        SexSystem.XY,
        Describe.Free("R", Describe.Dominant("R1")),
        Describe.Free("P", Describe.Dominant("P1")),
        Describe.Free("B", Describe.Dominant("B1")));

    // Crosses worked out by hand from the order of the series [derived].
    [Theory]
    [InlineData("c/+", "ch/c", "normal 1/2, himalayan 1/4, albino 1/4")]
    [InlineData("chd/c", "ch/c", "chinchilla 1/2, himalayan 1/4, albino 1/4")]
    [InlineData("ch/+", "chd/c", "normal 1/2, chinchilla 1/4, himalayan 1/4")]
    public void Rabbit_CheckCrosses_SegregateByTheOrderOfTheSeries(string sire, string dam, string expected)
    {
        var looks = Ratios.ExactLooks(Cross.Of(Mating.Of(Describe.Male(Rabbit, sire), Describe.Female(Rabbit, dam))));

        Assert.Equal(expected.Split(", ").Order(StringComparer.Ordinal), looks.Select(l => $"{l.Key} {l.Value}").Order(StringComparer.Ordinal));
    }

    // A 725, B 258, AB 72, O 1073: CRAN VGAM, after Lange 2002. Maximum-likelihood frequencies and expected counts computed.
    [Fact]
    public void BloodGroups_RandomMating_GivesTheExpectedCounts()
    {
        var species = Describe.Species(SexSystem.XY, Describe.Free("ABO", Describe.Dominant("A"), Describe.Dominant("B")));
        const double A = 0.2091307, B = 0.0808010, O = 1.0 - A - B;
        Weighted<Diplotype>[] people =
        [
            new(new(0, 0), Probability.From(O * O)),
            new(new(0, 1), Probability.From(2 * O * A)),
            new(new(1, 1), Probability.From(A * A)),
            new(new(0, 2), Probability.From(2 * O * B)),
            new(new(2, 2), Probability.From(B * B)),
            new(new(1, 2), Probability.From(2 * A * B)),
        ];

        var looks = Ratios.Looks(Cross.Of(Mating.Of(Anyone(Sex.Male), Anyone(Sex.Female))));

        Assert.Equal(725.07, 2128 * looks["A"].Value, 5e-3);
        Assert.Equal(258.08, 2128 * looks["B"].Value, 5e-3);
        Assert.Equal(71.92, 2128 * looks["A/B"].Value, 5e-3);
        Assert.Equal(1072.93, 2128 * looks["normal"].Value, 5e-3);

        GenotypeBelief Anyone(Sex sex) => GenotypeBelief.Wild(species, sex).With(species.Groups[0], people);
    }

    // Punnett RC, Mendelism: blue x blue gives 1 black, 2 blue, 1 splashed white; black x splashed gives all blue.
    [Fact]
    public void AndalusianFowl_BlueByBlue_Is1To2To1()
    {
        var fowl = Describe.Species(SexSystem.ZW, Describe.Free("blue", Describe.Incomplete("blue")));

        Assert.Equal(
            new Dictionary<string, string> { ["blue"] = "1/2", ["normal"] = "1/4", ["super-blue"] = "1/4" },
            Ratios.ExactLooks(Cross.Of(Mating.Of(Describe.Male(fowl, "blue/+"), Describe.Female(fowl, "blue/+")))));
        Assert.Equal(
            new Dictionary<string, string> { ["blue"] = "1" },
            Ratios.ExactLooks(Cross.Of(Mating.Of(Genotype.Wild(fowl, Sex.Male), Describe.Female(fowl, "blue/blue")))));
    }

    // Yellow x yellow gives 2 yellow to 1 not yellow, a quarter dying unborn; yellow x not yellow gives 1 to 1. Counts 800 to 435, Castle & Little
    // 1910 [recalled]; their chi-square computed.
    [Fact]
    public void YellowMouse_TwoCopiesDie_Is2To1()
    {
        var mouse = Genetics.Loci.Species.From(
            new SpeciesDefinition("mouse", SexSystem.XY, [Describe.Free("agouti", Describe.Dominant("yellow"))])
            {
                Dangers = [Describe.TwoCopies("yellow", Probability.Impossible)],
            });

        var inter = Cross.Of(Mating.Of(Describe.Male(mouse, "yellow/+"), Describe.Female(mouse, "yellow/+")));
        var looks = inter.Looks().ToDictionary(Ratios.Text);

        Assert.Equal(new Fraction(3, 4), inter.Survival.Exact);
        Assert.Equal(new Fraction(1, 4), inter.ChanceOf(mouse.Dangers[0]).Exact);
        Assert.Equal(new Fraction(1, 2), looks["yellow"].Chance.Exact);
        Assert.Equal(new Fraction(2, 3), looks["yellow"].ChanceOfHatchling.Exact);
        Assert.Equal(new Fraction(1, 3), looks["normal"].ChanceOfHatchling.Exact);
        Assert.Equal(1.98381, Ratios.ChiSquare([800, 435], [looks["yellow"].ChanceOfHatchling, looks["normal"].ChanceOfHatchling]), 5e-6);
        Assert.Empty(looks["yellow"].Hidden); // whoever lives has one copy

        var back = Cross.Of(Mating.Of(Describe.Male(mouse, "yellow/+"), Genotype.Wild(mouse, Sex.Female)));
        Assert.Equal(Probability.Certain, back.Survival);
        Assert.Equal(new Dictionary<string, string> { ["yellow"] = "1/2", ["normal"] = "1/2" }, Ratios.ExactLooks(back));
    }

    // Complementary genes: 9 coloured to 7 white. White is wanted as a union that overlaps: no R, or no P.
    [Fact]
    public void ComplementaryGenes_AsWants_Are9To7()
    {
        var cross = Hybrids("R1/+", "P1/+");
        var either = new Want([Describe.Alternative(SweetPea, null, "+/R1", "R1/R1"), Describe.Alternative(SweetPea, null, "+/P1", "P1/P1")]);
        var coloured = Describe.Want(SweetPea, "+/R1", "R1/R1", "+/P1", "P1/P1");
        var white = new Want([Lacking("R1"), Lacking("P1")]);

        Assert.Equal(new Fraction(9, 16), cross.ChanceOf(coloured).Exact);
        Assert.Equal(new Fraction(7, 16), cross.ChanceOf(white).Exact);
        Assert.Equal(new Fraction(15, 16), cross.ChanceOf(either).Exact); // R or P: all but the double recessive
    }

    // 27 purple, 9 red, 28 white of 64: the early sweet pea F2, Bateson ch. IX.
    [Fact]
    public void SweetPea_ThreeGenes_Is27To9To28()
    {
        var cross = Hybrids("R1/+", "P1/+", "B1/+");

        Assert.Equal(new Fraction(27, 64), cross.ChanceOf(Describe.Want(SweetPea, "+/R1", "R1/R1", "+/P1", "P1/P1", "+/B1", "B1/B1")).Exact);
        Assert.Equal(new Fraction(36, 64), cross.ChanceOf(Describe.Want(SweetPea, "+/R1", "R1/R1", "+/P1", "P1/P1")).Exact);
        Assert.Equal(new Fraction(28, 64), cross.ChanceOf(new Want([Lacking("R1"), Lacking("P1")])).Exact);
    }

    private static WantedGenotype Lacking(string allele) =>
        new(null, [WantedPairs.Of(Describe.Mutant(SweetPea, allele).Locus, [(0, 0)])]);

    private static Cross Hybrids(params string[] pairs) =>
        Cross.Of(Mating.Of(Describe.Male(SweetPea, pairs), Describe.Female(SweetPea, pairs)));
}
