using BenchmarkDotNet.Attributes;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Pairs;
using Clutchwright.Testing;

namespace Clutchwright.Benchmarks;

/// <summary>Every pair of 200 males and 200 females over 12 loci, with possible hets, an allelic group, a sex-linked locus and rules of
/// survival, for one want; beside it a cross of each of the first 20 by 20 pairs, which is a hundredth of that work done pair by pair, and
/// as many pairs of animals of which nothing is certain at any locus: the worst a stock can be.</summary>
[MemoryDiagnoser]
public class DoubtfulStockBenchmarks
{
    private const int Animals = 200;

    private static readonly GoodEggs Clutch = GoodEggs.Of(
        [0.0, 0.02, 0.04, 0.1, 0.18, 0.2, 0.2, 0.14, 0.08, 0.04],
        Probability.From(0.75),
        ClutchRate.Fixed(0.9),
        ClutchRate.Fixed(0.9));

    private static readonly Probability[] Chances = [Probability.Ratio(2, 3), Probability.Half, Probability.Ratio(1, 3), Probability.From(0.23)];

    private readonly Species _species;
    private readonly GenotypeBelief[] _sires;
    private readonly GenotypeBelief[] _dams;
    private readonly GenotypeBelief[] _doubtfulSires;
    private readonly GenotypeBelief[] _doubtfulDams;
    private readonly Want _three;
    private readonly Want _twelve;

    public DoubtfulStockBenchmarks()
    {
        LocusDefinition[] loci =
        [
            .. Enumerable.Range(0, 5).Select(i => Describe.Free($"R{i}", Describe.Recessive($"r{i}"))),
            .. Enumerable.Range(0, 4).Select(i => Describe.Free($"I{i}", Describe.Incomplete($"i{i}"))),
            Describe.Free("G", Describe.Incomplete("g1"), Describe.Incomplete("g2"), Describe.Incomplete("g3")),
            Describe.Free("D", Describe.Dominant("d")),
            Describe.SexLinked("S", 0.05, Describe.Incomplete("s")),
        ];
        _species = Species.From(new("sample", SexSystem.XY, loci)
        {
            Dangers =
            [
                Describe.TwoCopies("d", Probability.Impossible),
                new("weak", [new GenotypeCondition.Carries("d"), new GenotypeCondition.IsPair("g1", "g1")], Severity.Lethal, "Weak.", Evidence.CommonPractice)
                {
                    Viability = new(Probability.Half, Probability.Certain, Probability.Certain),
                },
            ],
        });
        var random = new Random(1);
        _sires = [.. Enumerable.Range(0, Animals).Select(_ => Animal(Sex.Male, random))];
        _dams = [.. Enumerable.Range(0, Animals).Select(_ => Animal(Sex.Female, random))];
        _doubtfulSires = [.. Enumerable.Range(0, 20).Select(_ => Doubtful(Sex.Male, random))];
        _doubtfulDams = [.. Enumerable.Range(0, 20).Select(_ => Doubtful(Sex.Female, random))];
        _three = Carrying("R0", "I0", "S");
        _twelve = Carrying([.. _species.Loci.Select(l => l.Id)]);
    }

    [Benchmark(Baseline = true, Description = "40,000 pairs, a want of 3 loci")]
    public int ThreeLoci() => Rank(_three);

    [Benchmark(Description = "40,000 pairs, a want of 12 loci")]
    public int TwelveLoci() => Rank(_twelve);

    [Benchmark(Description = "400 pairs one by one, a want of 12 loci")]
    public double PairByPair() => _sires.Take(20).Sum(s => _dams.Take(20).Sum(d =>
    {
        var cross = Cross.Of(Mating.Of(s, d));
        return cross.SharedChanceOf(_twelve).AtLeastOne(Clutch).Value + _species.Dangers.Count(x => !cross.ChanceOf(x).IsImpossible);
    }));

    [Benchmark(Description = "400 pairs in doubt at every locus, a want of 12 loci")]
    public int InDoubtEverywhere() => PairRanking.Of(_doubtfulSires, _doubtfulDams, _twelve, Clutch).Pairs.Count;

    private int Rank(Want want)
    {
        var ranking = PairRanking.Of(_sires, _dams, want, Clutch);
        return ranking.Pairs.Count + ranking.LeftOut.Count;
    }

    private Want Carrying(params string[] loci) => new(
    [
        new WantedGenotype(null, [.. loci.Select(id => _species.FindLocus(id)!).Select(l =>
            WantedPairs.Of(l, [.. Enumerable.Range(0, l.Alleles.Count).SelectMany(_ => Enumerable.Range(1, l.Alleles.Count - 1), (a, b) => (a, b))]))]),
    ]);

    // Six loci in ten wild, as in a real stock few animals carry much; a third of the rest in doubt.
    private GenotypeBelief Animal(Sex sex, Random random)
    {
        var belief = GenotypeBelief.Wild(_species, sex);
        foreach (var locus in _species.Loci)
        {
            if (random.Next(10) < 6)
            {
                continue;
            }

            var (first, second) = (random.Next(locus.Alleles.Count), 1 + random.Next(locus.Alleles.Count - 1));
            var pair = random.Next(3) == 0 ? new Diplotype(first, second) : new Diplotype(0, second);
            var chance = random.Next(3) == 0 ? Chances[random.Next(Chances.Length)] : Probability.Certain;
            belief = belief.With(locus.Group, [new(pair, chance), new(default, chance.Complement)]);
        }

        return belief;
    }

    private GenotypeBelief Doubtful(Sex sex, Random random)
    {
        var belief = GenotypeBelief.Wild(_species, sex);
        foreach (var locus in _species.Loci)
        {
            var chance = Chances[random.Next(Chances.Length)];
            belief = belief.With(locus.Group, [new(new(0, 1), chance), new(default, chance.Complement)]);
        }

        return belief;
    }
}
