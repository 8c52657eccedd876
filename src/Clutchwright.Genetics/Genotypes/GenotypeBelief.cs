using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Genotypes;

/// <summary>What an animal's genotype may be: for every linkage group the possible diplotypes with their probabilities, groups
/// independent of each other, and its sex.</summary>
/// <remarks>A certain genotype is the special case of one diplotype a group. Immutable.</remarks>
public sealed class GenotypeBelief
{
    private readonly IReadOnlyList<Weighted<Diplotype>>[] _groups;

    private GenotypeBelief(Species species, Sex sex, IReadOnlyList<Weighted<Diplotype>>[] groups)
    {
        Species = species;
        Sex = sex;
        _groups = groups;
    }

    /// <summary>Gets the species.</summary>
    public Species Species { get; }

    /// <summary>Gets the sex.</summary>
    public Sex Sex { get; }

    /// <summary>Gets whether the animal has two different sex chromosomes.</summary>
    public bool IsHeterogametic => Sex == Species.SexSystem.Heterogametic();

    /// <summary>Gets whether every group has one possibility only.</summary>
    public bool IsCertain => Array.TrueForAll(_groups, g => g.Count == 1);

    /// <summary>The possible diplotypes at a linkage group, likeliest first; their weights sum to 1.</summary>
    public IReadOnlyList<Weighted<Diplotype>> this[LinkageGroup group] => _groups[group.Index];

    /// <summary>An animal without any mutant allele.</summary>
    public static GenotypeBelief Wild(Species species, Sex sex) => Certain(Genotype.Wild(species, sex));

    /// <summary>An animal whose genotype is known.</summary>
    public static GenotypeBelief Certain(Genotype genotype) => new(
        genotype.Species,
        genotype.Sex,
        genotype.Species.Groups
            .Select(g => (IReadOnlyList<Weighted<Diplotype>>)[new Weighted<Diplotype>(genotype[g], Probability.Certain)])
            .ToArray());

    /// <summary>The same belief with other possibilities at one group.</summary>
    /// <param name="group">A group of the species.</param>
    /// <param name="possibilities">Diplotypes with weights that sum to 1; equal ones are put together, impossible ones left out.</param>
    /// <exception cref="ArgumentException">The weights do not sum to 1, or a code is not a haplotype of the group.</exception>
    public GenotypeBelief With(LinkageGroup group, IEnumerable<Weighted<Diplotype>> possibilities)
    {
        var ordered = Genotype.Ordered(group, IsHeterogametic);
        var sum = new Dictionary<Diplotype, Probability>();
        var total = Probability.Impossible;
        foreach (var (value, weight) in possibilities)
        {
            if (value.First < 0 || value.Second < 0 || value.First >= group.HaplotypeCount || value.Second >= group.HaplotypeCount)
            {
                throw new ArgumentException($"{value} are not haplotypes of {group.Id}.", nameof(possibilities));
            }

            if (weight.IsImpossible)
            {
                continue;
            }

            var key = ordered ? value : Diplotype.Unordered(value.First, value.Second);
            sum[key] = sum.TryGetValue(key, out var old) ? old + weight : weight;
            total += weight;
        }

        if (Math.Abs(total.Value - 1.0) > 1e-9)
        {
            throw new ArgumentException($"The weights at {group.Id} sum to {total}, not to 1.", nameof(possibilities));
        }

        var groups = (IReadOnlyList<Weighted<Diplotype>>[])_groups.Clone();
        groups[group.Index] = sum
            .Select(p => new Weighted<Diplotype>(p.Key, p.Value))
            .OrderByDescending(w => w.Weight)
            .ThenBy(w => w.Value.First)
            .ThenBy(w => w.Value.Second)
            .ToArray();
        return new(Species, Sex, groups);
    }

    /// <summary>The chance that the animal has at least one copy of an allele.</summary>
    public Probability ChanceOfCarrying(Allele allele)
    {
        var locus = allele.Locus;
        return this[locus.Group]
            .Where(w => locus.PairOf(w.Value) is var (first, second) && (first == allele.Index || second == allele.Index))
            .Aggregate(Probability.Impossible, (sum, w) => sum + w.Weight);
    }

    /// <summary>The possible allele pairs at one locus, likeliest first, the smaller index first in each.</summary>
    public IReadOnlyList<Weighted<(int First, int Second)>> PairsAt(Locus locus)
    {
        var sum = new Dictionary<(int First, int Second), Probability>();
        foreach (var (value, weight) in this[locus.Group])
        {
            var (a, b) = locus.PairOf(value);
            var key = a <= b ? (a, b) : (b, a);
            sum[key] = sum.TryGetValue(key, out var old) ? old + weight : weight;
        }

        return sum.Select(p => new Weighted<(int, int)>(p.Key, p.Value)).OrderByDescending(w => w.Weight).ToArray();
    }

    /// <summary>The possible allele pairs at one locus by strand, likeliest first.</summary>
    /// <param name="locus">A locus of the species.</param>
    /// <param name="isOrdered">Whether the strands differ, so that the first allele is that on X or Z; otherwise the smaller index comes first.</param>
    public IReadOnlyList<Weighted<(int First, int Second)>> PairsAt(Locus locus, bool isOrdered)
    {
        if (!isOrdered)
        {
            return PairsAt(locus);
        }

        var sum = new Dictionary<(int First, int Second), Probability>();
        foreach (var (value, weight) in this[locus.Group])
        {
            var key = locus.PairOf(value);
            sum[key] = sum.TryGetValue(key, out var old) ? old + weight : weight;
        }

        return sum.Select(p => new Weighted<(int, int)>(p.Key, p.Value)).OrderByDescending(w => w.Weight).ToArray();
    }

    /// <summary>The likeliest genotype: the likeliest diplotype of every group.</summary>
    public Genotype MostLikely()
    {
        var genotype = Genotype.Wild(Species, Sex);
        foreach (var group in Species.Groups)
        {
            if (!this[group][0].Value.IsWild)
            {
                genotype = genotype.With(group, this[group][0].Value);
            }
        }

        return genotype;
    }
}
