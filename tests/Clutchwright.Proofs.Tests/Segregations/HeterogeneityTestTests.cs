using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Segregations;
using CsCheck;

namespace Clutchwright.Proofs.Tests.Segregations;

public class HeterogeneityTestTests
{
    private static readonly Fraction[] Monohybrid = [3, 1];

    /// <summary>The first ten plants of Mendel's first and second experiment [Mendel1866], counts checked in [Bateson1902]; figures computed.</summary>
    [Theory]
    [InlineData("45,12 27,8 24,7 19,10 32,11 26,6 88,24 22,10 28,6 25,7", 0.83066, 5.29703, 0.87047, 4.46636, 0.87813)]
    [InlineData("25,11 32,7 14,5 70,27 24,13 20,6 32,13 44,9 50,14 44,18", 0.13668, 7.18998, 0.70740, 7.05330, 0.63157)]
    public void Of_MendelsPlants_PartsTheSumAsKnown(string plants, double pooled, double sum, double sumP, double heterogeneity, double p)
    {
        int[][] clutches = [.. plants.Split(' ').Select(c => c.Split(',').Select(int.Parse).ToArray())];

        var test = HeterogeneityTest.Of(clutches, Monohybrid, new() { MostBranches = 10_000, Draws = 5000 });

        Assert.Equal(pooled, test.Pooled.ChiSquare, 5e-6);
        Assert.Equal(sum, test.Sum, 5e-6);
        Assert.Equal(10, test.SumDegreesOfFreedom);
        Assert.Equal(sumP, test.SumPValue, 5e-6);
        Assert.Equal(heterogeneity, test.ChiSquare, 1e-5);
        Assert.Equal(9, test.DegreesOfFreedom);
        Assert.Equal(p, test.PValue, 5e-6);
        Assert.Equal(p, test.Exact.Value, 0.06);
    }

    /// <summary>Fisher's tea table, 3 1 / 1 3: 34/70 two-sided [recalled from every textbook].</summary>
    [Fact]
    public void Exact_OfTheTeaTable_Is34In70()
    {
        var test = HeterogeneityTest.Of([[3, 1], [1, 3]], [1, 1]);

        Assert.True(test.Exact.IsExact);
        Assert.Equal(34.0 / 70.0, test.Exact.Value, 1e-12);
    }

    /// <summary>R: fisher.test(matrix(c(5, 3, 2, 7, 1, 6), 2)).</summary>
    [Fact]
    public void Exact_OfThreeClutches_AgreesWithAnotherProgram() =>
        Assert.Equal(0.117765350367314, HeterogeneityTest.Of([[5, 3], [2, 7], [1, 6]], [1, 1]).Exact.Value, 1e-12);

    /// <summary>The exact p value from its definition: every way of dealing the young out to the clutches.</summary>
    [Fact]
    public void Exact_OnAnyTable_EqualsDealingOutEveryYoung() => Gen.Int[0, 3].Array[2].Array[2, 3].Sample(clutches =>
    {
        var test = HeterogeneityTest.Of(clutches, [1, 1]);

        Assert.True(test.Exact.IsExact);
        Assert.Equal(SlowExact(clutches), test.Exact.Value, 1e-9);
    }, iter: 200);

    [Fact]
    public void Of_OneClutch_HasNothingToDisagree()
    {
        var test = HeterogeneityTest.Of([[7, 2]], Monohybrid);

        Assert.Equal(0.0, test.ChiSquare);
        Assert.Equal(0, test.DegreesOfFreedom);
        Assert.Equal(1.0, test.PValue);
        Assert.Equal(1.0, test.Exact.Value);
    }

    // Each arrangement of the young over places is as likely as any other; tables are told by what each clutch got.
    private static double SlowExact(int[][] clutches)
    {
        var sizes = clutches.Select(c => c.Sum()).ToArray();
        var ones = clutches.Sum(c => c[1]);
        var tables = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var mask = 0; mask < 1 << sizes.Sum(); mask++)
        {
            if (System.Numerics.BitOperations.PopCount((uint)mask) != ones)
            {
                continue;
            }

            var (table, at) = (new List<int>(), 0);
            foreach (var size in sizes)
            {
                table.Add(System.Numerics.BitOperations.PopCount((uint)((mask >> at) & ((1 << size) - 1))));
                at += size;
            }

            var key = string.Join(',', table);
            tables[key] = tables.GetValueOrDefault(key) + 1;
        }

        var observed = tables[string.Join(',', clutches.Select(c => c[1]))];
        return (double)tables.Values.Where(v => v <= observed).Sum() / tables.Values.Sum();
    }
}
