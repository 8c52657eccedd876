using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Genetics.Tests.Genotypes;

public class GenotypeTests
{
    private static readonly Species Snake = Describe.Species(
        SexSystem.XY,
        Describe.Free("clown", Describe.Recessive("Clown")),
        Describe.Free("pastel", Describe.Incomplete("Pastel")),
        Describe.Linked("A", 0.0, Describe.Recessive("A1")),
        Describe.Linked("B", 10.0, Describe.Recessive("B1")),
        Describe.SexLinked("banana", 0.08, Describe.Incomplete("Banana")));

    // The notation of genetics as the design of the program sets it.
    [Theory]
    [InlineData("+/+", Sex.Male)]
    [InlineData("clown/clown · Pastel/+", Sex.Male, "Clown/Clown", "Pastel/+")]
    [InlineData("X Banana/Y +", Sex.Male, "Banana/+")]
    [InlineData("X +/Y Banana", Sex.Male, "+/Banana")]
    [InlineData("Banana/+", Sex.Female, "+/Banana")]
    [InlineData("a1 b1/+ +", Sex.Female, "A1/+", "B1/+")]
    [InlineData("a1 +/+ b1", Sex.Female, "A1/+", "+/B1")]
    public void ToString_AnyGenotype_IsGeneticsNotation(string expected, Sex sex, params string[] pairs) =>
        Assert.Equal(expected, Describe.Animal(Snake, sex, pairs).ToString());

    [Fact]
    public void Equals_StrandsSwapped_IsTrueButForUnlikeSexChromosomes()
    {
        Assert.Equal(Describe.Female(Snake, "A1/+", "+/B1"), Describe.Female(Snake, "+/A1", "B1/+"));
        Assert.NotEqual(Describe.Female(Snake, "A1/+", "+/B1"), Describe.Female(Snake, "A1/+", "B1/+"));
        Assert.Equal(Describe.Female(Snake, "Banana/+"), Describe.Female(Snake, "+/Banana"));
        Assert.NotEqual(Describe.Male(Snake, "Banana/+"), Describe.Male(Snake, "+/Banana"));
        Assert.NotEqual(Describe.Male(Snake, "Pastel/+"), Describe.Female(Snake, "Pastel/+"));
    }

    [Fact]
    public void With_NotAHaplotype_Throws()
    {
        var wild = Genotype.Wild(Snake, Sex.Male);

        Assert.Throws<ArgumentOutOfRangeException>(() => wild.With(Snake.Groups[0], new Diplotype(0, 2)));
        Assert.Throws<ArgumentOutOfRangeException>(() => wild.With(Snake.Groups[0], new Diplotype(-1, 0)));
    }

    [Fact]
    public void Belief_WeightsThatDoNotSumToOne_Throws()
    {
        var belief = GenotypeBelief.Wild(Snake, Sex.Male);

        Assert.Throws<ArgumentException>(() => belief.With(Snake.Groups[0], [new(new(0, 1), Probability.Half)]));
        Assert.Throws<ArgumentException>(() => belief.With(Snake.Groups[0], [new(new(0, 2), Probability.Certain)]));
    }

    // Carrying and pairs at a locus by the full list of genotypes a belief allows.
    [Fact]
    public void Belief_AnyAnimal_AgreesWithItsGenotypesWrittenOut() => SpeciesGen.Any.SelectMany(s => ScenarioGen.Beliefs(s.Species))
        .Where(b => b.Species.Groups.Aggregate(1, (count, g) => count * b[g].Count) < 500)
        .Sample(
            belief =>
            {
                var cases = SampleParents.CasesOf(belief);

                Assert.Equal(1.0, cases.Sum(c => c.Weight.Value), 1e-11);
                Assert.Equal(belief.IsCertain, cases.Count == 1);
                Assert.Equal(cases.Max(c => c.Weight.Value), cases.Where(c => c.Value.Equals(belief.MostLikely())).Sum(c => c.Weight.Value), 1e-12);
                foreach (var locus in belief.Species.Loci)
                {
                    var pairs = belief.PairsAt(locus).ToDictionary(p => p.Value, p => p.Weight.Value);
                    foreach (var pair in cases.GroupBy(c => Sorted(c.Value.AllelesAt(locus))))
                    {
                        Assert.Equal(pair.Sum(c => c.Weight.Value), pairs[pair.Key], 1e-11);
                    }

                    foreach (var allele in locus.Alleles)
                    {
                        var carrying = cases.Where(c => c.Value.AllelesAt(locus).First == allele.Index || c.Value.AllelesAt(locus).Second == allele.Index);
                        Assert.Equal(carrying.Sum(c => c.Weight.Value), belief.ChanceOfCarrying(allele).Value, 1e-11);
                    }
                }
            },
            iter: 150);

    private static (int First, int Second) Sorted((int First, int Second) pair) =>
        pair.First <= pair.Second ? pair : (pair.Second, pair.First);
}
