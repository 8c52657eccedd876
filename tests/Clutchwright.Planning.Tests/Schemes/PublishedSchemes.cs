using Clutchwright.Genetics.Loci;
using Clutchwright.Planning.Schemes;

namespace Clutchwright.Planning.Tests.Schemes;

/// <summary>The instances of Servin et al. 2004 (Genetics 168: 513) and of Canzar and El-Kebir 2011 (WABI).</summary>
internal static class PublishedSchemes
{
    /// <summary>One plant with each wanted allele twice and one with none; neighbours 20 cM apart; 0.999 a crossing.</summary>
    public static SchemeProblem Servin(int loci, double success = 0.999)
    {
        var all = (1 << loci) - 1;
        return new(
            LinkedLoci.Neighbours([.. Enumerable.Repeat(RecombinationFraction.AtDistance(20.0), loci - 1)]),
            [default, .. Enumerable.Range(0, loci).Select(i => new HaplotypePair(1 << i, 1 << i))],
            new(all, all),
            success);
    }

    /// <summary>The pepper: three unlinked places, the third with two loci 1 % apart; weights 100 / 100 / 1.</summary>
    public static SchemeProblem Pepper(int mostPlants = 5000) => new(
        LinkedLoci.Pairwise(4, (i, j) => (i, j) == (2, 3) ? RecombinationFraction.From(0.01) : RecombinationFraction.Free),
        [HaplotypePair.Parse("1110/1110"), HaplotypePair.Parse("0001/0001")],
        HaplotypePair.Parse("1111/1111"),
        0.95)
    {
        PerCrossing = 100,
        PerGeneration = 100,
        MostPlants = mostPlants,
    };
}
