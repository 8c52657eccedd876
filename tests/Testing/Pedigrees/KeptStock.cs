using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Testing.Pedigrees;

/// <summary>A made-up stock as a keeper records one: founders bought with words about what they carry, all young looked at, six generations, twelve loci in play.</summary>
/// <param name="Species">The species.</param>
/// <param name="Animals">The animals, parents first.</param>
public sealed record KeptStock(Species Species, IReadOnlyList<RecordedAnimal> Animals)
{
    private const int Founders = 30;
    private const int Generations = 6;

    private static readonly Species Snake = Describe.Species(
        SexSystem.XY,
        [
            .. Enumerable.Range(1, 6).Select(i => Describe.Free($"r{i}", Describe.Recessive($"r{i}"))),
            .. Enumerable.Range(1, 4).Select(i => Describe.Free($"i{i}", Describe.Incomplete($"i{i}"))),
            Describe.Free("series", Describe.Incomplete("s1"), Describe.Incomplete("s2"), Describe.Incomplete("s3")),
            Describe.SexLinked("sex", 0.05, Describe.Incomplete("sex1")),
        ]);

    /// <summary>Grows a stock.</summary>
    /// <param name="animals">How many animals, founders included.</param>
    /// <param name="seed">The seed.</param>
    public static KeptStock Grow(int animals, ulong seed)
    {
        var random = new SplitMix64(seed);
        var pedigree = new SamplePedigree();
        var generation = new List<int>();
        for (var i = 0; i < Founders; i++)
        {
            pedigree.Add(i % 3 == 0 ? Sex.Male : Sex.Female);
            generation.Add(0);
        }

        while (pedigree.Count < animals)
        {
            // Breeders of the last two generations; one male has many clutches, and a daughter may go back to her sire.
            var young = 1 + ((pedigree.Count - Founders) * (Generations - 1) / Math.Max(1, animals - Founders));
            var breeders = Enumerable.Range(0, pedigree.Count).Where(p => generation[p] < young && generation[p] >= young - 2).ToArray();
            var sires = breeders.Where(p => pedigree.Sexes[p] == Sex.Male).Take(6).ToArray();
            var dams = breeders.Where(p => pedigree.Sexes[p] == Sex.Female).ToArray();
            var (sire, dam) = (sires[random.Below(sires.Length)], dams[random.Below(dams.Length)]);
            for (var egg = 4 + random.Below(5); egg > 0 && pedigree.Count < animals; egg--)
            {
                pedigree.Add(random.Below(2) == 0 ? Sex.Male : Sex.Female, sire, dam);
                generation.Add(young);
            }
        }

        var frequencies = Snake.Loci.SelectMany(l => l.Alleles.Skip(1)).ToDictionary(a => a, a => a.Mode == InheritanceMode.Recessive ? 0.15 : 0.08);
        var genotypes = GeneDrop.Genotypes(Snake, pedigree, frequencies, seed + 1);
        var looks = new Dictionary<string, Observation.Seen>(StringComparer.Ordinal);
        return new(Snake, [.. genotypes.Select((g, i) => new RecordedAnimal(
            SamplePedigree.Id(i)!, pedigree.Sexes[i], [GeneDrop.Look(Snake, g, looks), .. pedigree.IsFounder(i) ? Words(g) : []])
        {
            Sire = SamplePedigree.Id(pedigree.Sires[i]),
            Dam = SamplePedigree.Id(pedigree.Dams[i]),
        })]);
    }

    // What the seller said: two of three carriers of a recessive are told as het, the others as 66 % possible hets.
    private static IEnumerable<Observation> Words(Genotype genotype) => Snake.Loci
        .Where(l => genotype.AllelesAt(l) is (0, 1) or (1, 0))
        .Where(l => l.Alleles[1].Mode == InheritanceMode.Recessive)
        .Select(l => new Observation.Said(
            Describe.PossibleHet(Snake, genotype.Sex, l.Alleles[1].Id, l.Index % 3 == 0 ? Probability.Ratio(2, 3) : Probability.Certain),
            StatementBasis.Told));
}
