using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Testing;

namespace Clutchwright.Genetics.Tests.Crosses;

/// <summary>What the trade takes as known of ball pythons. All of it is common practice, no source.</summary>
public class TradeFactTests
{
    private static readonly Species Bel = Describe.Species(
        SexSystem.XY,
        Describe.Free("bel", Describe.Incomplete("lesser"), Describe.Incomplete("mojave"), Describe.Incomplete("phantom")) with
        {
            Forms =
            [
                new("white", "Blue-eyed White", [("lesser", "lesser"), ("mojave", "mojave"), ("lesser", "mojave"), ("lesser", "phantom")]),
                new("mauve", "Mauve", [("phantom", "phantom"), ("mojave", "phantom")]),
            ],
        });

    private static readonly Species Ivory = Genetics.Loci.Species.From(
        new SpeciesDefinition(
            "ivory",
            SexSystem.XY,
            [
                Describe.Free("yb", Describe.Incomplete("yellow-belly")) with
                {
                    Forms = [new("ivory", "Ivory", [("yellow-belly", "yellow-belly")])],
                },
                Describe.Free("leopard", Describe.Dominant("leopard")),
                Describe.Free("enchi", Describe.Incomplete("enchi")),
                Describe.Free("clown", Describe.Recessive("clown")),
            ])
        {
            Masks = [new(["ivory"], null) { Through = ["leopard"], Faintly = ["enchi"] }],
        });

    [Fact]
    public void LesserByMojave_IsAQuarterEach()
    {
        var looks = Ratios.ExactLooks(Cross.Of(Mating.Of(Describe.Male(Bel, "lesser/+"), Describe.Female(Bel, "mojave/+"))));

        Assert.Equal(
            new Dictionary<string, string> { ["normal"] = "1/4", ["lesser"] = "1/4", ["mojave"] = "1/4", ["white"] = "1/4" },
            looks.OrderBy(l => l.Key.Length == 5 ? 1 : 0).ToDictionary());
    }

    [Fact]
    public void TwoCopiesOfLesser_ByAnything_NeverGivesAChickWithoutLesser()
    {
        var lesser = Describe.Mutant(Bel, "lesser");
        foreach (var dam in from a in Bel.Loci[0].Alleles
                            from b in Bel.Loci[0].Alleles
                            select Genotype.Wild(Bel, Sex.Female).With(Bel.Loci[0], a.Index, b.Index))
        {
            var cross = Cross.Of(Mating.Of(Describe.Male(Bel, "lesser/lesser"), dam));

            Assert.All(cross.Genotypes(), g => Assert.Contains(lesser.Index, Pair(g.Genotype)));
            Assert.Equal(Probability.Certain, cross.ChanceOf(Describe.Want(Bel, "lesser/+", "lesser/lesser", "lesser/mojave", "lesser/phantom")));
        }

        static int[] Pair(Genotype genotype) => [genotype.AllelesAt(Bel.Loci[0]).First, genotype.AllelesAt(Bel.Loci[0]).Second];
    }

    [Fact]
    public void TwoUnlikeCopies_HaveNoWildAlleleToGive()
    {
        var looks = Ratios.ExactLooks(Cross.Of(Mating.Of(Describe.Male(Bel, "lesser/mojave"), Genotype.Wild(Bel, Sex.Female))));

        Assert.Equal(new Dictionary<string, string> { ["lesser"] = "1/2", ["mojave"] = "1/2" }, looks);
    }

    // Lesser to every member is white; two of Phantom, and Mojave/Phantom, are not.
    [Fact]
    public void WhiteLook_OfSeveralPairs_IsOneLookWithItsPairsHidden()
    {
        var cross = Cross.Of(Mating.Of(Describe.Male(Bel, "lesser/mojave"), Describe.Female(Bel, "lesser/phantom")));
        var looks = cross.Looks().ToDictionary(Ratios.Text);

        Assert.Equal(["white", "mauve"], looks.Keys);
        Assert.Equal(new Fraction(3, 4), looks["white"].Chance.Exact); // lesser/lesser, lesser/phantom, mojave/lesser
        Assert.Equal(3, looks["white"].Hidden.Count);
        Assert.All(looks["white"].Hidden, h => Assert.Equal(new Fraction(1, 3), h.Chance.Exact));
        Assert.Empty(looks["mauve"].Hidden);
    }

    // Ivory hides nearly everything; Leopard shows through it, Enchi weakly. What is hidden stays in the genotype and in the odds.
    [Fact]
    public void Ivory_HidesOtherGenesButNotLeopard()
    {
        var both = new[] { "yellow-belly/+", "leopard/+", "enchi/+", "clown/+" };
        var cross = Cross.Of(Mating.Of(Describe.Male(Ivory, both), Describe.Female(Ivory, "yellow-belly/+", "clown/+")));
        var looks = cross.Looks().ToDictionary(Ratios.Text);

        // 1/4 ivory, half of them leopard; the other six sorts of clown and enchi are not told apart.
        Assert.Equal(new Fraction(1, 8), looks["ivory"].Chance.Exact);
        Assert.Equal(new Fraction(1, 8), looks["ivory leopard"].Chance.Exact);
        Assert.DoesNotContain(looks.Keys, k => k.StartsWith("ivory", StringComparison.Ordinal) && (k.Contains("enchi") || k.Contains("clown")));
        Assert.Equal(["enchi"], looks["ivory leopard"].Faint.Select(e => e.Id));
        Assert.Equal(
            ["enchi 1/2", "clown 1/2", "clown/clown 1/4"],
            looks["ivory"].Hidden.Select(h => $"{h.Locus.Id}{(h.First > 0 ? "/" + h.Locus.Id : "")} {h.Chance}"));
        Assert.Equal(new Fraction(1, 16), cross.ChanceOf(Describe.Want(Ivory, "yellow-belly/yellow-belly", "clown/clown")).Exact);
        Assert.Equal(1.0, looks.Values.Sum(l => l.Chance.Value), 1e-15);
    }

    [Fact]
    public void Ivory_WithoutAnythingToHide_IsTheOrdinaryLook()
    {
        var looks = Ratios.ExactLooks(Cross.Of(Mating.Of(Describe.Male(Ivory, "yellow-belly/+"), Describe.Female(Ivory, "yellow-belly/+"))));

        Assert.Equal(new Dictionary<string, string> { ["yellow-belly"] = "1/2", ["normal"] = "1/4", ["ivory"] = "1/4" }, looks);
    }

    // A two-copy lethal gene: of eggs a quarter fails, of live hatchlings two in three carry.
    [Fact]
    public void TwoCopyLethal_ShowsEggsAndHatchlings()
    {
        var species = Genetics.Loci.Species.From(
            new SpeciesDefinition("lethal", SexSystem.XY, [Describe.Free("spider", Describe.Dominant("spider"))])
            {
                Dangers = [Describe.TwoCopies("spider", Probability.Impossible)],
            });

        var cross = Cross.Of(Mating.Of(Describe.Male(species, "spider/+"), Describe.Female(species, "spider/+")));

        Assert.Equal(new Fraction(1, 4), cross.Survival.Complement.Exact);
        Assert.Equal(new Fraction(2, 3), cross.Looks().First().ChanceOfHatchling.Exact);
        Assert.Equal(new Fraction(1, 2), cross.ChanceOf(Describe.Want(species, "spider/+", "spider/spider")).Exact);
        Assert.Equal(Probability.Impossible, cross.ChanceOf(Describe.Want(species, "spider/spider")));
        Assert.Equal(Probability.Impossible, cross.Genotypes().Single(g => g.Chance.Exact == new Fraction(1, 4) && !g.Survival.IsCertain).Survival);
    }

    // No egg lives: there is nothing to list, and nothing to divide by.
    [Fact]
    public void AllDie_ListsNoLooks()
    {
        var species = Genetics.Loci.Species.From(
            new SpeciesDefinition("lethal", SexSystem.XY, [Describe.Free("spider", Describe.Dominant("spider"))])
            {
                Dangers = [Describe.TwoCopies("spider", Probability.Impossible)],
            });

        var cross = Cross.Of(Mating.Of(Describe.Male(species, "spider/spider"), Describe.Female(species, "spider/spider")));

        Assert.Equal(Probability.Impossible, cross.Survival);
        Assert.Empty(cross.Looks());
        Assert.Equal(Probability.Certain, Assert.Single(cross.Genotypes()).Chance);
    }
}
