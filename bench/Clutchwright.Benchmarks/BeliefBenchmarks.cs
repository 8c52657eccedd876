using BenchmarkDotNet.Attributes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Testing;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Benchmarks;

/// <summary>All posteriors and the likelihood of a breeder's stock over 20 seasons, one recessive, every animal looked at.</summary>
[MemoryDiagnoser]
public class KennelBeliefBenchmarks
{
    private static readonly Species Snake = Describe.Species(SexSystem.XY, Describe.Free("clown", Describe.Recessive("clown")));
    private IReadOnlyList<RecordedAnimal> _animals = [];
    private BeliefSettings _settings = BeliefSettings.Default;

    /// <summary>Gets or sets how common the recessive is among founders.</summary>
    [Params(0.25, 0.05)]
    public double Frequency { get; set; }

    /// <summary>Gets or sets the seasons, females and males of the kennel.</summary>
    [Params("10-10-3", "20-10-3", "10-20-5", "20-20-5")]
    public string Kennel { get; set; } = string.Empty;

    /// <summary>Makes the stock.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        var size = Kennel.Split('-').Select(int.Parse).ToArray();
        var frequencies = new Dictionary<Allele, double> { [Snake.FindAllele("clown")!] = Frequency };
        _settings = new() { Frequencies = frequencies };
        _animals = GeneDrop.Record(Snake, Kennels.Seasons(size[0], size[1], size[2], 1), frequencies, 101);
    }

    /// <summary>From the records to every animal's chance of carrying.</summary>
    [Benchmark]
    public double AllPosteriors()
    {
        var beliefs = PedigreeBeliefs.Of(Snake, _animals, _settings);
        var clown = Snake.FindAllele("clown")!;
        return beliefs.LogLikelihood + _animals.Sum(a => beliefs[a.Key].Genotype.ChanceOfCarrying(clown).Value);
    }
}

/// <summary>All posteriors of a kennel too wide for an exact answer: predicted, then sampled.</summary>
public class SampledKennelBenchmarks
{
    private static readonly Species Snake = Describe.Species(SexSystem.XY, Describe.Free("clown", Describe.Recessive("clown")));
    private IReadOnlyList<RecordedAnimal> _animals = [];
    private BeliefSettings _settings = BeliefSettings.Default;

    /// <summary>Gets or sets the seasons, females and males of the kennel.</summary>
    [Params("10-50-8", "20-50-8")]
    public string Kennel { get; set; } = string.Empty;

    /// <summary>Makes the stock; the clock is the one the desk gives the engine.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        var size = Kennel.Split('-').Select(int.Parse).ToArray();
        var frequencies = new Dictionary<Allele, double> { [Snake.FindAllele("clown")!] = 0.05 };
        _settings = new() { Frequencies = frequencies, Clock = TimeProvider.System };
        _animals = GeneDrop.Record(Snake, Kennels.Seasons(size[0], size[1], size[2], 1), frequencies, 101);
    }

    /// <summary>From the records to every animal's chance of carrying.</summary>
    [Benchmark]
    public double AllPosteriors()
    {
        var beliefs = PedigreeBeliefs.Of(Snake, _animals, _settings);
        var clown = Snake.FindAllele("clown")!;
        return _animals.Sum(a => beliefs[a.Key].Genotype.ChanceOfCarrying(clown).Value);
    }
}

/// <summary>A stock of 300 animals over 6 generations with 12 loci in play.</summary>
[MemoryDiagnoser]
public class StockBeliefBenchmarks
{
    private IReadOnlyList<RecordedAnimal> _animals = [];
    private IReadOnlyList<RecordedAnimal> _withOneMore = [];
    private PedigreeBeliefs? _before;

    /// <summary>Makes the stock, with one hatchling more to come.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        var stock = KeptStock.Grow(301, 1);
        _animals = [.. stock.Animals.Take(300)];
        _withOneMore = stock.Animals;
        Species = stock.Species;
        _before = PedigreeBeliefs.Of(Species, _animals);
        _ = Read(_before, _animals);
    }

    private Species Species { get; set; } = null!;

    /// <summary>From nothing.</summary>
    [Benchmark(Baseline = true)]
    public double FromNothing() => Read(PedigreeBeliefs.Of(Species, _animals), _animals);

    /// <summary>After one new hatchling, the beliefs of all animals having been read before: the beliefs of all read.</summary>
    [Benchmark]
    public double AfterOneHatchling() => Read(PedigreeBeliefs.Of(Species, _withOneMore, before: _before), _withOneMore);

    /// <summary>The same without reading any belief.</summary>
    [Benchmark]
    public double AfterOneHatchlingUnread() => PedigreeBeliefs.Of(Species, _withOneMore, before: _before).LogLikelihood;

    private static double Read(PedigreeBeliefs beliefs, IReadOnlyList<RecordedAnimal> animals) =>
        animals.Sum(a => beliefs[a.Key].Genotype[beliefs.Species.Groups[0]][0].Weight.Value);
}
