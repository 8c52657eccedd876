using BenchmarkDotNet.Attributes;
using Clutchwright.Pedigrees.Kinship;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Benchmarks;

/// <summary>What a page about kin asks, over 20 seasons of a kennel of 50 females and 8 males: some 6,000 animals.</summary>
[MemoryDiagnoser]
public class KinshipBenchmarks
{
    private readonly KinshipReckoner _reckoner;
    private readonly int[] _males;
    private readonly int[] _females;
    private readonly int[] _latest;

    public KinshipBenchmarks()
    {
        var stock = Kennels.Seasons(20, 50, 8, 1);
        _reckoner = KinshipReckoner.Of(Descent.OfParents(stock.Sires, stock.Dams));
        _latest = [.. Enumerable.Range(stock.Count - 400, 400)];
        _males = [.. _latest.Where(i => stock.Sexes[i] == Genetics.Loci.Sex.Male).Take(100)];
        _females = [.. _latest.Where(i => stock.Sexes[i] == Genetics.Loci.Sex.Female).Take(100)];
    }

    [Benchmark(Baseline = true, Description = "100 males x 100 females, a table")]
    public double Table() => _reckoner.Table(_males, _females)[99, 99];

    [Benchmark(Description = "the same, pair by pair")]
    public double Pairs() => _males.Sum(male => _females.Sum(female => _reckoner.Between(male, female)));

    [Benchmark(Description = "one pair")]
    public double Pair() => _reckoner.Between(_males[0], _females[0]);

    [Benchmark(Description = "the 40 best routes of one pair")]
    public int Routes() => DescentRoutes.Between(_reckoner, _males[0], _females[0], 40).Routes.Count;

    [Benchmark(Description = "founders and ancestors of 400")]
    public double Founders() => FounderContributions.Of(_reckoner.Descent, _latest).MajorAncestors().EffectiveAncestors;
}
