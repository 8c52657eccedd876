using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Genetics.Tests.Crosses;

public class PunnettSquareTests
{
    // The square of two double hybrids has sixteen cells; 9, 3, 3 and 1 of them look alike (Punnett RC, Mendelism).
    [Fact]
    public void Of_TwoDoubleHybrids_HasSixteenCells()
    {
        var pea = Describe.Species(SexSystem.XY, Describe.Free("A", Describe.Recessive("a")), Describe.Free("B", Describe.Recessive("b")));

        var square = PunnettSquare.Of(Describe.Male(pea, "a/+", "b/+"), Describe.Female(pea, "a/+", "b/+"), [pea.Groups[0], pea.Groups[1]]);

        Assert.Equal(4, square.SireGametes.Count);
        Assert.Equal(4, square.DamGametes.Count);
        Assert.All(square.SireGametes, g => Assert.Equal(new Fraction(1, 4), g.Weight.Exact));
        var looks = Cells(square).CountBy(c => (c.Genotype.AllelesAt(pea.Loci[0]) == (1, 1), c.Genotype.AllelesAt(pea.Loci[1]) == (1, 1)));
        Assert.Equal([9, 3, 3, 1], looks.Select(l => l.Value).OrderDescending());
    }

    [Fact]
    public void Of_AllGroups_SumsToTheGenotypesOfTheCross() => ScenarioGen.Small.Where(s => s.Parents.Mating.IsCertain).Sample(
        scenario =>
        {
            var (sire, dam) = scenario.Parents.Cases[0].Value;

            var square = PunnettSquare.Of(sire, dam, scenario.Sample.Species.Groups);

            var byGenotype = new Dictionary<Genotype, double>();
            foreach (var (genotype, chance) in Cells(square))
            {
                byGenotype[genotype] = byGenotype.GetValueOrDefault(genotype) + chance;
            }

            foreach (var outcome in Cross.Of(scenario.Parents.Mating).Genotypes())
            {
                var sum = byGenotype.Where(g => outcome.Sex is null
                    ? g.Key.Species.Groups.All(x => g.Key[x] == outcome.Genotype[x])
                    : g.Key.Equals(outcome.Genotype)).ToArray();
                Assert.Equal(outcome.Chance.Value, sum.Sum(g => g.Value), 1e-12);
                Array.ForEach(sum, g => byGenotype.Remove(g.Key));
            }

            Assert.Empty(byGenotype);
        },
        iter: 100);

    private static IEnumerable<(Genotype Genotype, double Chance)> Cells(PunnettSquare square)
    {
        for (var r = 0; r < square.SireGametes.Count; r++)
        {
            for (var c = 0; c < square.DamGametes.Count; c++)
            {
                yield return (square[r, c], square.SireGametes[r].Weight.Value * square.DamGametes[c].Weight.Value);
            }
        }
    }
}
