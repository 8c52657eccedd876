using BenchmarkDotNet.Attributes;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Pairs;
using Clutchwright.Testing;

namespace Clutchwright.Benchmarks;

/// <summary>All pairs of 200 males and 200 females over 12 loci for one want. At each locus an animal is wild, has one copy, has two, or is a
/// possible het of 1/2 or 2/3; two copies of one allele are deadly. The want is of three loci.</summary>
[MemoryDiagnoser]
public class PairRankingBenchmarks
{
    private const int Animals = 200;
    private const int Loci = 12;

    private static readonly GoodEggs Clutch = GoodEggs.Of(
        [0.0, 0.02, 0.04, 0.1, 0.18, 0.2, 0.2, 0.14, 0.08, 0.04],
        Probability.From(0.8),
        ClutchRate.Of(0.9, 0.1),
        ClutchRate.Of(0.9, 0.1));

    private readonly GenotypeBelief[] _sires;
    private readonly GenotypeBelief[] _dams;
    private readonly Want _want;

    public PairRankingBenchmarks()
    {
        var species = Species.From(
            new SpeciesDefinition(
                "sample",
                SexSystem.XY,
                Enumerable.Range(0, Loci).Select(i => Describe.Free($"L{i}", i % 2 == 0 ? Describe.Recessive($"m{i}") : Describe.Incomplete($"m{i}"))).ToArray())
            {
                Dangers = [Describe.TwoCopies("m11", Probability.Impossible)],
            });
        var random = new Random(20);
        _sires = Enumerable.Range(0, Animals).Select(_ => Belief(random, species, Sex.Male)).ToArray();
        _dams = Enumerable.Range(0, Animals).Select(_ => Belief(random, species, Sex.Female)).ToArray();
        _want = Describe.Want(species, "m0/m0", "m1/+", "m1/m1", "m2/m2");
    }

    [Benchmark(Description = "40,000 pairs, ranked")]
    public int Ranked() => PairRanking.Of(_sires, _dams, _want, Clutch).Pairs.Count;

    [Benchmark(Baseline = true, Description = "40,000 pairs, a cross each")]
    public int CrossEach()
    {
        var possible = 0;
        foreach (var sire in _sires)
        {
            foreach (var dam in _dams)
            {
                var chance = Cross.Of(Mating.Of(sire, dam)).SharedChanceOf(_want);
                possible += chance.AtLeastOne(Clutch).IsImpossible ? 0 : 1;
            }
        }

        return possible;
    }

    private static GenotypeBelief Belief(Random random, Species species, Sex sex) => species.Groups
        .Where(g => !g.IsSex)
        .Aggregate(GenotypeBelief.Wild(species, sex), (belief, group) => random.Next(8) switch
        {
            0 or 1 => belief.With(group, [new(new(0, 1), Probability.Certain)]),
            2 => belief.With(group, [new(new(1, 1), Probability.Certain)]),
            3 => belief.With(group, [new(new(0, 1), Probability.Half), new(default, Probability.Half)]),
            4 => belief.With(group, [new(new(0, 1), Probability.Ratio(2, 3)), new(default, Probability.Ratio(1, 3))]),
            _ => belief,
        });
}
