using BenchmarkDotNet.Attributes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Planning.Schemes;

namespace Clutchwright.Benchmarks;

/// <summary>Servin's pyramiding instances (Genetics 168: 513): loci 20 cM apart, a parent for each and a blank one, 0.999 a crossing.</summary>
public class SchemeBenchmarks
{
    private static readonly SchemeProblem Six = Servin(6);
    private static readonly SchemeProblem Eight = Servin(8);

    [Benchmark(Baseline = true, Description = "8 loci, the cheapest tree, parents once: 1394")]
    public int TreeOnce() => TreeSchemes.ParentsOnce(Eight, Selfing.LastStep)!.Cost;

    [Benchmark(Description = "8 loci, the cheapest tree, parents at will: 1103")]
    public int TreeAtWill() => TreeSchemes.ParentsAtWill(Eight)!.Cost;

    [Benchmark(Description = "6 loci, plants used again: 618 (published 624)")]
    public int SharedSix() => SharedSchemes.Best(Six, new(Starts: 8, ProofSteps: 0), threads: 2).Scheme!.Cost;

    [Benchmark(Description = "8 loci, plants used again: 953 (published 1147)")]
    public int SharedEight() => SharedSchemes.Best(Eight, new(ProofSteps: 0), threads: 2).Scheme!.Cost;

    [Benchmark(Description = "shares of the risk, 20 steps")]
    public int Shares() => RiskShares.Least([.. Enumerable.Range(1, 20).Select(i => 0.01 * i)], 0.95).Total;

    private static SchemeProblem Servin(int loci)
    {
        var all = (1 << loci) - 1;
        return new(
            LinkedLoci.Neighbours([.. Enumerable.Repeat(RecombinationFraction.AtDistance(20.0), loci - 1)]),
            [default, .. Enumerable.Range(0, loci).Select(i => new HaplotypePair(1 << i, 1 << i))],
            new(all, all),
            0.999);
    }
}
