using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Genetics.Tests.Wants;

public class WantTests
{
    private static readonly Species Snake = Describe.Species(
        SexSystem.XY, Describe.Free("A", Describe.Incomplete("a")), Describe.SexLinked("B", 0.08, Describe.Incomplete("b")));

    [Fact]
    public void IsMetBy_AnyAnimal_IsWhatItsConditionsSay() => SpeciesGen.Any
        .SelectMany(s => Gen.Select(ScenarioGen.Genotypes(s.Species), ScenarioGen.Wants(s.Species)))
        .Sample(
            (animal, want) =>
            {
                var (first, second) = SampleParents.Strands(animal);

                var expected = want.IsMet(animal.Sex, animal.IsHeterogametic, l => (first[l], second[l]));

                Assert.Equal(expected, want.Want.IsMetBy(animal));
            },
            iter: 1000);

    [Fact]
    public void Showing_AForm_IsEveryPairThatTakesIt()
    {
        var super = WantedPairs.Showing(Snake.FindExpression("super-a")!);
        var single = WantedPairs.Showing(Snake.FindExpression("a")!);

        Assert.True(super.Allows(1, 1, ordered: false));
        Assert.False(super.Allows(0, 1, ordered: false));
        Assert.True(single.Allows(0, 1, ordered: false) && single.Allows(1, 0, ordered: false));
    }

    [Fact]
    public void ByStrand_LocusOffTheSexChromosomes_Throws() =>
        Assert.Throws<ArgumentException>(() => WantedPairs.ByStrand(Snake.Loci[0], 1, 0));

    [Fact]
    public void Constructor_TooManyOrNoAlternativesOrALocusTwice_Throws()
    {
        var any = new WantedGenotype(null, []);
        var pairs = WantedPairs.Of(Snake.Loci[0], [(0, 1)]);

        Assert.Throws<ArgumentException>(() => new Want([]));
        Assert.Throws<ArgumentException>(() => new Want(Enumerable.Repeat(any, Want.MostAlternatives + 1).ToArray()));
        Assert.Throws<ArgumentException>(() => new WantedGenotype(null, [pairs, pairs]));
    }

    // Ten alternatives that overlap in every way: the union over all subsets still gives what a direct count gives.
    [Fact]
    public void ChanceOf_MostAlternatives_IsTheUnion()
    {
        var species = Describe.Species(
            SexSystem.XY, Enumerable.Range(0, 10).Select(i => Describe.Free($"L{i}", Describe.Recessive($"m{i}"))).ToArray());
        var hets = Enumerable.Range(0, 10).Select(i => $"m{i}/+").ToArray();
        var cross = Cross.Of(Mating.Of(Describe.Male(species, hets), Describe.Female(species, hets)));

        var any = cross.ChanceOf(new Want(Enumerable.Range(0, 10).Select(i => Describe.Alternative(species, null, $"m{i}/m{i}")).ToArray()));

        // At least one of ten recessives: 1 - (3/4)^10.
        Assert.Equal("989527/1048576", any.ToString());
    }
}
