using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Planning.Pairs;
using Clutchwright.Testing;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Planning.Tests.Pairs;

/// <summary>A small stock of kin with beliefs of the whole pedigree, so that many pairs share a doubt.</summary>
internal sealed class KinStock
{
    private static readonly Species Snake = Describe.Species(
        SexSystem.XY,
        Describe.Free("r", Describe.Recessive("r")),
        Describe.Free("t", Describe.Recessive("t")),
        Describe.Free("i", Describe.Incomplete("i"), Describe.Incomplete("j")),
        Describe.SexLinked("x", 0.0, Describe.Incomplete("x")));

    private static readonly string[][] Wants = [["r/r"], ["r/r", "t/t"], ["i/j"], ["i/i", "r/r"], ["x/+"], ["t/t", "x/+"]];
    private readonly PedigreeBeliefs _beliefs;
    private readonly RecordedAnimal[] _sires;
    private readonly RecordedAnimal[] _dams;
    private readonly LinkageGroup[] _groups;

    private KinStock(PedigreeBeliefs beliefs, Want want)
    {
        (_beliefs, Want) = (beliefs, want);
        _sires = [.. beliefs.Animals.Where(a => a.Sex == Sex.Male)];
        _dams = [.. beliefs.Animals.Where(a => a.Sex == Sex.Female)];
        _groups = [.. want.Loci.Select(l => l.Group).Distinct()];
    }

    public Want Want { get; }

    public IReadOnlyList<GenotypeBelief> Sires => [.. _sires.Select(a => _beliefs[a.Key].Genotype)];

    public IReadOnlyList<GenotypeBelief> Dams => [.. _dams.Select(a => _beliefs[a.Key].Genotype)];

    public PairTies Ties => new((s, d) => _beliefs.AreTied(_sires[s].Key, _dams[d].Key, _groups), (s, d) => Together(s, d));

    /// <summary>A stock of 8 to 20 animals; two of three were looked at, and alleles are common, so that little is certain.</summary>
    public static KinStock Of(int seed)
    {
        var random = new SplitMix64((ulong)seed);
        var pedigree = new SamplePedigree();
        for (var i = 0; i < 4; i++)
        {
            pedigree.Add(i % 2 == 0 ? Sex.Male : Sex.Female);
        }

        for (var most = 8 + random.Below(13); pedigree.Count < most;)
        {
            var males = Enumerable.Range(0, pedigree.Count).Where(p => pedigree.Sexes[p] == Sex.Male).ToArray();
            var females = Enumerable.Range(0, pedigree.Count).Where(p => pedigree.Sexes[p] == Sex.Female).ToArray();
            pedigree.Add(random.Below(2) == 0 ? Sex.Male : Sex.Female, males[random.Below(males.Length)], females[random.Below(females.Length)]);
        }

        var frequencies = Snake.Loci.SelectMany(l => l.Alleles.Skip(1)).ToDictionary(a => a, _ => 0.3);
        var animals = GeneDrop.Record(Snake, pedigree, frequencies, (ulong)seed + 1)
            .Select(a => random.Below(3) == 0 ? a with { Observations = [] } : a)
            .ToArray();
        var settings = BeliefSettings.Default with { Frequencies = frequencies };
        var want = Wants[random.Below(Wants.Length)];
        return new(
            PedigreeBeliefs.Of(Snake, animals, settings),
            random.Below(4) > 0 ? Describe.Want(Snake, want) : new Want([Describe.Alternative(Snake, null, want), Describe.Alternative(Snake, Sex.Female, "t/t")]));
    }

    private Mating Together(int sire, int dam)
    {
        var (his, her) = (_beliefs[_sires[sire].Key].Genotype, _beliefs[_dams[dam].Key].Genotype);
        var together = new Dictionary<LinkageGroup, IReadOnlyList<Weighted<(Diplotype Sire, Diplotype Dam)>>>();
        foreach (var group in _groups.Where(g => his[g].Count > 1 && her[g].Count > 1))
        {
            together.Add(group, _beliefs.Together(group, _sires[sire].Key, _dams[dam].Key));
        }

        return Mating.Of(his, her, together);
    }
}
