using BenchmarkDotNet.Attributes;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Planning.Simulation;
using Clutchwright.Testing;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Benchmarks;

/// <summary>Gene dropping over a kennel of 1,000 animals, 10 loci and 64,000 replicates (6.4e8 animal-locus-replicates), and 200,000 clutches of a pair with
/// one copy each at six free loci, two of them linked, in programmes of ten seasons.</summary>
public class SimulationBenchmarks
{
    private const int Programmes = 20_000;
    private const int Seasons = 10;

    private static readonly ClutchSampler Clutch = ClutchSampler.Of(
        [0.0, 0.02, 0.04, 0.1, 0.18, 0.2, 0.2, 0.14, 0.08, 0.04],
        Probability.From(0.8),
        ClutchRate.Of(0.9, 0.1),
        ClutchRate.Of(0.9, 0.1));

    private readonly GeneDropping _free;
    private readonly GeneDropping _linked;
    private readonly CompiledSpecies _species;
    private readonly CompiledAnimal _sire;
    private readonly CompiledAnimal _dam;
    private readonly CompiledCross _cross;

    public SimulationBenchmarks()
    {
        var stock = Kennels.Kennel(1000);
        _free = GeneDropping.Of(stock.Sires, stock.Dams, [.. Enumerable.Repeat(new DroppedLocus(0.25, RecombinationFraction.Free), 10)]);
        _linked = GeneDropping.Of(stock.Sires, stock.Dams, [.. Enumerable.Repeat(new DroppedLocus(0.25, RecombinationFraction.From(0.1)), 10)]);
        var species = Describe.Species(
            SexSystem.XY,
            [
                .. Enumerable.Range(0, 4).Select(i => Describe.Free($"L{i}", Describe.Recessive($"m{i}"))),
                Describe.Linked("L4", 0.0, Describe.Recessive("m4")),
                Describe.Linked("L5", 10.0, Describe.Recessive("m5")),
            ]);
        string[] hets = [.. Enumerable.Range(0, 6).Select(i => $"m{i}/+")];
        var (sire, dam) = (Describe.Male(species, hets), Describe.Female(species, hets));
        _species = CompiledSpecies.Of(species, species.Groups);
        (_sire, _dam) = (_species.Compile(sire), _species.Compile(dam));
        _cross = CompiledCross.Of(sire, dam);
    }

    [Benchmark(Baseline = true, Description = "gene drop, unlinked loci, 1 thread")]
    public long Free() => Drop(_free, 1);

    [Benchmark(Description = "the same, counted at every animal and locus")]
    public long Counted() => _free.Run(
        64_000,
        1,
        1,
        () => new long[1],
        (sum, block) =>
        {
            for (var locus = 0; locus < 10; locus++)
            {
                for (var animal = 0; animal < 1000; animal++)
                {
                    sum[0] += block.Copies(animal, locus).Two;
                }
            }
        },
        (sum, other) => sum[0] += other[0])[0];

    [Benchmark(Description = "the same, unlinked loci, 2 threads")]
    public long FreeOnTwo() => Drop(_free, 2);

    [Benchmark(Description = "the same, r = 0.1 between neighbours, 1 thread")]
    public long Linked() => Drop(_linked, 1);

    [Benchmark(Description = "200,000 clutch-seasons, 1 thread")]
    public int Clutches() => Run(1);

    [Benchmark(Description = "200,000 clutch-seasons, 2 threads")]
    public int ClutchesOnTwo() => Run(2);

    [Benchmark(Description = "the same, one pair throughout, 1 thread")]
    public int OnePair() => RunPair(1);

    private static long Drop(GeneDropping dropping, int threads) => dropping.Run(
        64_000, 1, threads, () => new long[1], (sum, block) => sum[0] += block.Copies(999, 9).Two, (sum, other) => sum[0] += other[0])[0];

    // Each season a hatchling of each sex, where there is one, takes the place of its parent.
    private int Run(int threads) => Replicates.Run(Programmes, 1, threads, (random, number) =>
    {
        var (sire, dam) = (_sire, _dam);
        var hatched = new List<CompiledAnimal>();
        var young = number % 2;
        for (var season = 0; season < Seasons; season++)
        {
            _ = Clutch.Draw(_species, sire, dam, random, hatched);
            young += hatched.Count;
            foreach (var animal in hatched)
            {
                (sire, dam) = animal.Sex == Sex.Male ? (animal, dam) : (sire, animal);
            }
        }

        return young;
    }).Sum();

    // The same pair every season.
    private int RunPair(int threads) => Replicates.Run(Programmes, 1, threads, (random, number) =>
    {
        var hatched = new List<int>();
        var young = number % 2;
        for (var season = 0; season < Seasons; season++)
        {
            _ = Clutch.Draw(_cross, random, hatched);
            young += hatched.Count;
        }

        return young;
    }).Sum();
}
