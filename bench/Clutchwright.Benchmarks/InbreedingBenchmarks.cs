using BenchmarkDotNet.Attributes;
using Clutchwright.Pedigrees.Kinship;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Benchmarks;

/// <summary>Inbreeding coefficients of every animal of a generated pedigree, the reading of the parents included.</summary>
[MemoryDiagnoser]
[WarmupCount(1)]
[IterationCount(3)]
[InvocationCount(1)]
public class InbreedingBenchmarks
{
    private SamplePedigree _pedigree = new();

    [Params("kennel 10000", "kennel 100000", "random 100000", "shallow 1000000", "kennel 1000000")]
    public string Of { get; set; } = "kennel 10000";

    [GlobalSetup]
    public void Setup()
    {
        var animals = int.Parse(Of.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture);
        _pedigree = Of.Split(' ')[0] switch
        {
            "kennel" => Kennels.Kennel(animals),
            "shallow" => Kennels.Shallow(animals),
            _ => Kennels.RandomMating(animals),
        };
    }

    [Benchmark(Description = "inbreeding of all animals")]
    public double All() => KinshipReckoner.Of(Descent.OfParents(_pedigree.Sires, _pedigree.Dams)).Inbreeding[^1];
}
