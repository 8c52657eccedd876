using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Testing;

namespace Clutchwright.Genetics.Tests.Crosses;

/// <summary>Mendel G (1866), Verh. naturforsch. Ver. Bruenn 4: 3-47, in the English of Bateson W (1902), Mendel's Principles of Heredity: a
/// Defence. Counts as printed there; the chi-squares of the counts were computed apart from this program. The dominant allele stands
/// as wild, the recessive as the mutant.</summary>
public class MendelTests
{
    private static readonly Species Pea = Describe.Species(
        SexSystem.XY,
        Describe.Free("A", Describe.Recessive("a")),
        Describe.Free("B", Describe.Recessive("b")),
        Describe.Free("C", Describe.Recessive("c")));

    [Theory]
    [InlineData(5474, 1850, 0.26288)] // seed form
    [InlineData(6022, 2001, 0.01500)] // colour of the albumen
    [InlineData(705, 224, 0.39074)] // seed coat
    [InlineData(882, 299, 0.06351)] // form of the pods
    [InlineData(428, 152, 0.45057)] // colour of the unripe pods
    [InlineData(651, 207, 0.34965)] // position of the flowers
    [InlineData(787, 277, 0.60652)] // length of the stem
    [InlineData(14949, 5010, 0.10957)] // all seven
    [InlineData(336, 101, 0.83066)] // the first ten plants of the first experiment
    [InlineData(355, 123, 0.13668)] // the first ten plants of the second
    public void Monohybrid_MendelsCounts_GiveTheirChiSquare(int dominant, int recessive, double chiSquare)
    {
        var looks = Ratios.Looks(Hybrids("a/+"));

        Assert.Equal(chiSquare, Ratios.ChiSquare([dominant, recessive], [looks["normal"], looks["a"]]), 5e-6);
    }

    [Fact]
    public void Monohybrid_Is3To1() => Assert.Equal(
        new Dictionary<string, string> { ["normal"] = "3/4", ["a"] = "1/4" }, Ratios.ExactLooks(Hybrids("a/+")));

    [Fact]
    public void Dihybrid_Is9To3To3To1() => Assert.Equal(
        new Dictionary<string, string> { ["normal"] = "9/16", ["a"] = "3/16", ["b"] = "3/16", ["a b"] = "1/16" },
        Ratios.ExactLooks(Hybrids("a/+", "b/+")));

    [Fact]
    public void Trihybrid_Is27To9To9To9To3To3To3To1() => Assert.Equal(
        new Dictionary<string, string>
        {
            ["normal"] = "27/64",
            ["a"] = "9/64",
            ["b"] = "9/64",
            ["c"] = "9/64",
            ["a b"] = "3/64",
            ["a c"] = "3/64",
            ["b c"] = "3/64",
            ["a b c"] = "1/64",
        },
        Ratios.ExactLooks(Hybrids("a/+", "b/+", "c/+")));

    // 556 seeds: round yellow, angular yellow, round green, angular green.
    [Fact]
    public void Dihybrid_MendelsSeeds_GiveTheirChiSquare()
    {
        var looks = Ratios.Looks(Hybrids("a/+", "b/+"));

        Assert.Equal(0.47002, Ratios.ChiSquare([315, 101, 108, 32], [looks["normal"], looks["a"], looks["b"], looks["a b"]]), 5e-6);
    }

    // 529 plants in nine genotypes: AB 38, Ab 35, aB 28, ab 30, ABb 65, aBb 68, AaB 60, Aab 67, AaBb 138.
    [Fact]
    public void Dihybrid_MendelsNineGenotypes_GiveTheirChiSquare()
    {
        (string A, string B, int Count)[] plants =
        [
            ("AA", "BB", 38), ("AA", "bb", 35), ("aa", "BB", 28), ("aa", "bb", 30), ("AA", "Bb", 65), ("aa", "Bb", 68), ("Aa", "BB", 60),
            ("Aa", "bb", 67), ("Aa", "Bb", 138),
        ];
        var cross = Hybrids("a/+", "b/+");

        var shares = plants.Select(p => GenotypeShare(cross, p.A + p.B)).ToArray();

        Assert.Equal(2.81096, Ratios.ChiSquare(plants.Select(p => p.Count).ToArray(), shares), 5e-6);
    }

    // 639 plants in 27 genotypes. The first rows are printed in the copy seen, the rest is [recalled] and sums to the printed total.
    [Fact]
    public void Trihybrid_MendelsTwentySevenGenotypes_GiveTheirChiSquare()
    {
        (string Plant, int Count)[] plants =
        [
            ("AABBCC", 8), ("AABBcc", 14), ("AAbbCC", 9), ("AAbbcc", 11), ("aaBBCC", 8), ("aaBBcc", 10), ("aabbCC", 10), ("aabbcc", 7),
            ("AABBCc", 22), ("AAbbCc", 17), ("aaBBCc", 25), ("aabbCc", 20), ("AABbCC", 15), ("AABbcc", 18), ("aaBbCC", 19),
            ("aaBbcc", 24), ("AaBBCC", 14), ("AaBBcc", 18), ("AabbCC", 20), ("Aabbcc", 16), ("AABbCc", 45), ("aaBbCc", 36),
            ("AaBBCc", 38), ("AabbCc", 40), ("AaBbCC", 49), ("AaBbcc", 48), ("AaBbCc", 78),
        ];
        var cross = Hybrids("a/+", "b/+", "c/+");

        var shares = plants.Select(p => GenotypeShare(cross, p.Plant)).ToArray();

        Assert.Equal(639, plants.Sum(p => p.Count));
        Assert.Equal(1.0, shares.Sum(s => s.Value), 1e-15);
        Assert.Equal(15.32238, Ratios.ChiSquare(plants.Select(p => p.Count).ToArray(), shares), 5e-6);
    }

    // The hybrid put to the double recessive.
    [Theory]
    [InlineData(31, 26, 27, 26, 0.61818)]
    [InlineData(24, 25, 22, 27, 0.53061)]
    [InlineData(47, 40, 38, 41, 1.08434)]
    public void TestCross_MendelsCounts_GiveTheirChiSquare(int both, int first, int second, int none, double chiSquare)
    {
        var looks = Ratios.Looks(Cross.Of(Mating.Of(Describe.Male(Pea, "a/+", "b/+"), Describe.Female(Pea, "a/a", "b/b"))));

        Assert.Equal(["1/4", "1/4", "1/4", "1/4"], looks.Values.Select(p => p.ToString()));
        Assert.Equal(chiSquare, Ratios.ChiSquare([both, first, second, none], [.. looks.Values]), 5e-6);
    }

    // Of the dominants of F2, one in three breeds true. Among ten seeds a hybrid shows no recessive with chance (3/4)^10, so that 0.62912 of the
    // plants are seen to segregate. Point made by Fisher RA (1936), Ann Sci 1: 115-137 [recalled]; value computed.
    [Fact]
    public void SelfedDominants_TenOffspringEach_SegregateLessThanTwoInThree()
    {
        var looksDominant = Hybrids("a/+").Looks().First();
        var hybrid = Assert.Single(looksDominant.Hidden);
        var selfed = Mating.Jointly(
        [
            new((Describe.Male(Pea, "a/+"), Describe.Female(Pea, "a/+")), hybrid.Chance),
            new((Genotype.Wild(Pea, Sex.Male), Genotype.Wild(Pea, Sex.Female)), hybrid.Chance.Complement),
        ]);

        var segregates = Cross.Of(selfed).SharedChanceOf(Describe.Want(Pea, "a/a"));

        Assert.Equal(new Fraction(2, 3), hybrid.Chance.Exact);
        Assert.Equal(0.62912, segregates.AtLeastOne(10).Value, 5e-6);
        Assert.Equal(new Fraction(2, 3), segregates.Ceiling.Exact);
    }

    private static Cross Hybrids(params string[] pairs) =>
        Cross.Of(Mating.Of(Describe.Male(Pea, pairs), Describe.Female(Pea, pairs)));

    private static Probability GenotypeShare(Cross cross, string plant)
    {
        var pairs = plant.Chunk(2).Select((p, i) => Pair(i, p)).ToArray();
        var genotype = Describe.Animal(Pea, Sex.Female, pairs.OfType<string>().ToArray());
        return cross.Genotypes().Single(g => g.Genotype.Equals(genotype)).Chance;

        static string? Pair(int locus, char[] letters)
        {
            var mutant = ((char)('a' + locus)).ToString();
            return letters.Count(char.IsLower) switch { 0 => null, 1 => $"{mutant}/+", _ => $"{mutant}/{mutant}" };
        }
    }
}
