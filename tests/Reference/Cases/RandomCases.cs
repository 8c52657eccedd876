using Clutchwright.Genetics.Loci;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Cases;

/// <summary>Cases drawn from counted seeds: the same on every run.</summary>
internal static class RandomCases
{
    private static readonly double[] Shares = [0.002, 0.02, 0.05, 0.25, 0.5];

    /// <summary>A case of one locus with two alleles.</summary>
    /// <param name="kind">How the locus shows.</param>
    /// <param name="isSexLinked">Whether it lies on the X.</param>
    /// <param name="size">How large and how inbred the family is.</param>
    /// <param name="seed">The seed.</param>
    public static GeneticCase OneLocus(LocusKind kind, bool isSexLinked, FamilySize size, ulong seed)
    {
        var random = new SplitMix64(seed);
        var family = Family(random, size);
        var misread = random.Below(4) == 0 ? 0.01 : 0;
        return Make($"{kind}{(isSexLinked ? " on the X" : "")}, seed {seed}", random, family, [Locus(random, kind, misread)], isSexLinked, 0.5);
    }

    /// <summary>A case of two loci with two alleles each, linked.</summary>
    public static GeneticCase TwoLoci(FamilySize size, ulong seed)
    {
        var random = new SplitMix64(seed);
        var family = Family(random, size);
        LocusKind[] kinds = [LocusKind.Recessive, LocusKind.Dominant, LocusKind.Incomplete];
        LocusModel[] loci = [Locus(random, kinds[random.Below(3)], 0), Locus(random, kinds[random.Below(3)], 0)];
        return Make($"two loci, seed {seed}", random, family, loci, isSexLinked: false, 0.05 * (1 + random.Below(6)));
    }

    private static LocusModel Locus(SplitMix64 random, LocusKind kind, double misread)
    {
        var q = Shares[random.Below(Shares.Length)];
        return kind switch
        {
            LocusKind.Recessive => new([1 - q, q], (a, _) => a, misread),
            LocusKind.Dominant => new([1 - q, q], (_, b) => b, misread),
            LocusKind.Incomplete => new([1 - q, q], (a, b) => a + b, misread),
            LocusKind.RankedSeries => new(Frequencies(random, 3 + random.Below(2)), (a, _) => a, misread),
            _ => AnySeries(random, misread),
        };
    }

    // Any pairs may look alike; the looks are numbered in the order in which they first occur.
    private static LocusModel AnySeries(SplitMix64 random, double misread)
    {
        var frequencies = Frequencies(random, 3 + random.Below(2));
        var drawn = new int[frequencies.Length, frequencies.Length];
        var numbers = new Dictionary<int, int> { [0] = 0 };
        for (var a = 0; a < frequencies.Length; a++)
        {
            for (var b = a; b < frequencies.Length; b++)
            {
                // At least two looks: the last allele always shows when there are two of it.
                var look = (a, b) == (0, 0) ? 0 : a == frequencies.Length - 1 ? 1 : random.Below(5);
                numbers.TryAdd(look, numbers.Count);
                drawn[a, b] = numbers[look];
            }
        }

        return new(frequencies, (a, b) => drawn[a, b], misread);
    }

    private static double[] Frequencies(SplitMix64 random, int alleles)
    {
        var mutants = Enumerable.Range(1, alleles - 1).Select(_ => Shares[random.Below(4)]).ToArray();
        return [1 - mutants.Sum(), .. mutants];
    }

    /// <summary>A family of a size, drawn until it hangs together, has the loops asked for, and no animal has more than 8 mates.</summary>
    public static SamplePedigree Family(SplitMix64 random, FamilySize size)
    {
        while (true)
        {
            var family = Draw(random, size);
            var loops = FamilyShape.Loops(family);
            if (loops >= size.FewestLoops && loops <= size.MostLoops && FamilyShape.MostMates(family) <= 8 && FamilyShape.IsOne(family))
            {
                return family;
            }
        }
    }

    private static SamplePedigree Draw(SplitMix64 random, FamilySize size)
    {
        var family = new SamplePedigree();
        var founders = 2 + random.Below(size.MostFounders - 1);
        for (var i = 0; i < founders; i++)
        {
            family.Add(i % 2 == 0 ? Sex.Male : Sex.Female);
        }

        var count = Math.Max(founders + 1, size.Fewest + random.Below(size.Most - size.Fewest + 1));
        while (family.Count < count)
        {
            var (sire, dam) = (Parent(random, family, Sex.Male), Parent(random, family, Sex.Female));
            var clutch = 1 + random.Below(size.MostYoung);
            for (var egg = 0; egg < clutch && family.Count < count; egg++)
            {
                family.Add(random.Below(2) == 0 ? Sex.Male : Sex.Female, sire, dam);
            }
        }

        return family;
    }

    private static int Parent(SplitMix64 random, SamplePedigree family, Sex sex)
    {
        while (true)
        {
            var position = random.Below(family.Count);
            if (family.Sexes[position] == sex)
            {
                return position;
            }
        }
    }

    // The genes are dropped through the family, mutants commoner among its founders than the model says; three of four animals are looked at.
    private static GeneticCase Make(
        string name, SplitMix64 random, SamplePedigree family, IReadOnlyList<LocusModel> loci, bool isSexLinked, double recombination)
    {
        var dropped = new GeneDrop(random, family, loci, isSexLinked, recombination, isEnriched: true).Run();
        var isSeen = Enumerable.Range(0, family.Count).Select(_ => random.Below(4) > 0).ToArray();
        var seen = loci.Select((locus, l) => (IReadOnlyList<int?>)Enumerable.Range(0, family.Count)
            .Select(i => isSeen[i] ? Read(random, locus, dropped[l][i]) : (int?)null)
            .ToArray()).ToArray();
        return new(name, family, loci, isSexLinked, recombination, seen);
    }

    private static int Read(SplitMix64 random, LocusModel locus, (int First, int Second) pair) =>
        locus.Misread > 0 && random.Below(50) == 0 ? random.Below(locus.LookCount) : locus.LookOf(pair.First, pair.Second);
}
