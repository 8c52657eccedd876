using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Meiosis;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Genetics.Tests.Meiosis;

public class GameteFormationTests
{
    [Fact]
    public void Of_AnyParent_SumsToOneInOrderWithoutRepeats() => SpeciesGen.Any.SelectMany(s => ScenarioGen.Genotypes(s.Species)).Sample(
        genotype =>
        {
            foreach (var group in genotype.Species.Groups)
            {
                var gametes = GameteFormation.Of(group, genotype[group], genotype.IsHeterogametic);

                Assert.Equal(1.0, gametes.Sum(g => g.Weight.Value), 1e-12);
                Assert.Equal(gametes.Select(g => g.Value).Distinct().Count(), gametes.Count);
                Assert.Equal(gametes.OrderBy(g => g.Value.Haplotype).ThenBy(g => g.Value.CarriesUnshared), gametes);
                Assert.All(gametes, g => Assert.False(g.Weight.IsImpossible));
            }
        },
        iter: 500);

    // Mendel's first law: either allele of every locus comes with chance 1/2, whatever it is linked with.
    [Fact]
    public void Of_AnyParent_GivesEitherAlleleOfALocusWithHalf() => SpeciesGen.Any.SelectMany(s => ScenarioGen.Genotypes(s.Species)).Sample(
        genotype =>
        {
            foreach (var locus in genotype.Species.Loci)
            {
                var group = locus.Group;
                var (first, second) = genotype.AllelesAt(locus);
                var share = GameteFormation.Of(group, genotype[group], genotype.IsHeterogametic)
                    .Where(g => group.AlleleAt(g.Value.Haplotype, locus.IndexInGroup) == first)
                    .Sum(g => g.Weight.Value);

                Assert.Equal(first == second ? 1.0 : 0.5, share, 1e-12);
            }

            if (genotype.IsHeterogametic)
            {
                var sex = genotype.Species.SexGroup;
                Assert.Equal(
                    0.5, GameteFormation.Of(sex, genotype[sex], heterogametic: true).Where(g => g.Value.CarriesUnshared).Sum(g => g.Weight.Value), 1e-12);
            }
        },
        iter: 500);

    // Two loci 20 cM apart: r = 0.16484 by Haldane's function (the figure used for the crossing schemes of Canzar & El-Kebir 2011).
    [Fact]
    public void Of_TwentyCentimorgans_RecombinesByHaldane()
    {
        var species = Describe.Species(
            SexSystem.XY, Describe.Linked("A", 0.0, Describe.Recessive("a")), Describe.Linked("B", 20.0, Describe.Recessive("b")));
        var group = species.Groups[0];

        var gametes = GameteFormation.Of(group, Describe.Male(species, "a/+", "b/+")[group], heterogametic: true);

        Assert.Equal(4, gametes.Count);
        Assert.Equal(0.16484 / 2.0, gametes.Single(g => g.Value.Haplotype == 1).Weight.Value, 5e-6); // a without b
        Assert.Equal((1.0 - 0.16484) / 2.0, gametes.Single(g => g.Value.Haplotype == 3).Weight.Value, 5e-6);
    }

    [Fact]
    public void Of_OneFreeLocus_IsExactlyHalf()
    {
        var species = Describe.Species(SexSystem.XY, Describe.Free("A", Describe.Recessive("a")));

        var gametes = GameteFormation.Of(species.Groups[0], new Diplotype(0, 1), heterogametic: true);

        Assert.Equal([new(new(0, false), Probability.Half), new(new(1, false), Probability.Half)], gametes);
    }
}
