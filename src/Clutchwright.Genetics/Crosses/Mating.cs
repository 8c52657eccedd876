using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>A sire and a dam, each known for certain, in doubt, or in a doubt the two share.</summary>
/// <remarks>
/// Kept as independent blocks of linkage groups; each block has its own cases (what sire and dam may be there, together) with weights
/// that sum to 1. Groups at which neither can carry a mutant allele are left out. Immutable.
/// </remarks>
public sealed class Mating
{
    private readonly Lazy<IReadOnlyList<MatingBlock>> _blocks;

    private Mating(Species species, IReadOnlyList<MatingBlock> blocks)
    {
        Species = species;
        SireIsHeterogametic = species.SexSystem.Heterogametic() == Sex.Male;
        _blocks = new(blocks);
    }

    private Mating(GenotypeBelief sire, GenotypeBelief dam)
    {
        Species = sire.Species;
        SireIsHeterogametic = sire.IsHeterogametic;
        _blocks = new(() => BlocksOf(sire, dam));
    }

    /// <summary>Gets the species.</summary>
    public Species Species { get; }

    /// <summary>Gets whether it is the sire that has two different sex chromosomes.</summary>
    public bool SireIsHeterogametic { get; }

    /// <summary>Gets whether there is no doubt about either parent.</summary>
    public bool IsCertain => Blocks.All(b => b.Cases.Count == 1);

    /// <summary>Gets the independent blocks; the sex chromosomes are always in one of them.</summary>
    internal IReadOnlyList<MatingBlock> Blocks => _blocks.Value;

    /// <summary>Two parents whose doubts, if any, are independent of each other.</summary>
    /// <exception cref="ArgumentException">The sire is not male, the dam not female, or the species differ.</exception>
    public static Mating Of(GenotypeBelief sire, GenotypeBelief dam)
    {
        Check(sire.Species, sire.Sex, dam.Species, dam.Sex);
        return new(sire, dam);
    }

    /// <summary>Two parents whose doubts are tied to each other at some linkage groups, group by group.</summary>
    /// <param name="sire">What is believed of the sire.</param>
    /// <param name="dam">What is believed of the dam.</param>
    /// <param name="together">What the two may be together, at the groups at which they are tied; weights sum to 1.</param>
    /// <exception cref="ArgumentException">The sire is not male, the dam not female, the species differ, or the weights of a group do not sum to 1.</exception>
    public static Mating Of(
        GenotypeBelief sire,
        GenotypeBelief dam,
        IReadOnlyDictionary<LinkageGroup, IReadOnlyList<Weighted<(Diplotype Sire, Diplotype Dam)>>> together)
    {
        Check(sire.Species, sire.Sex, dam.Species, dam.Sex);
        if (together.FirstOrDefault(t => Math.Abs(t.Value.Sum(c => c.Weight.Value) - 1.0) > 1e-9) is { Key: { } wrong })
        {
            throw new ArgumentException($"The weights at {wrong.Id} do not sum to 1.", nameof(together));
        }

        var blocks = BlocksOf(sire, dam).Where(b => !together.ContainsKey(b.Groups[0]));
        var tied = together.Select(t => new MatingBlock(
            [t.Key], [.. t.Value.Select(c => new MatingCase([c.Value.Sire], [c.Value.Dam], c.Weight))]));
        return new(sire.Species, [.. blocks.Concat(tied).OrderBy(b => b.Groups[0].Index)]);
    }

    /// <summary>Two parents known for certain.</summary>
    /// <exception cref="ArgumentException">The sire is not male, the dam not female, or the species differ.</exception>
    public static Mating Of(Genotype sire, Genotype dam) => Of(GenotypeBelief.Certain(sire), GenotypeBelief.Certain(dam));

    /// <summary>Two parents whose doubts belong together, as whole cases: all that varies from case to case stays tied together.</summary>
    /// <param name="cases">What the two may be, together; weights sum to 1.</param>
    /// <exception cref="ArgumentException">There is no case, the weights do not sum to 1, a sire is not male or a dam not female, or the species differ.</exception>
    public static Mating Jointly(IReadOnlyList<Weighted<(Genotype Sire, Genotype Dam)>> cases)
    {
        if (cases.Count == 0 || Math.Abs(cases.Sum(c => c.Weight.Value) - 1.0) > 1e-9)
        {
            throw new ArgumentException("The weights of the cases do not sum to 1.", nameof(cases));
        }

        var (sire, dam) = cases[0].Value;
        foreach (var (value, _) in cases)
        {
            Check(value.Sire.Species, value.Sire.Sex, value.Dam.Species, value.Dam.Sex);
            Check(sire.Species, value.Sire.Sex, value.Dam.Species, value.Dam.Sex);
        }

        var varying = sire.Species.Groups
            .Where(g => cases.Any(c => c.Value.Sire[g] != sire[g] || c.Value.Dam[g] != dam[g]))
            .ToArray();
        var blocks = sire.Species.Groups
            .Except(varying)
            .Where(g => g.IsSex || !sire[g].IsWild || !dam[g].IsWild)
            .Select(g => new MatingBlock([g], [new([sire[g]], [dam[g]], Probability.Certain)]))
            .ToList();
        if (varying.Length > 0)
        {
            blocks.Add(new(
                varying,
                cases
                    .Where(c => !c.Weight.IsImpossible)
                    .Select(c => new MatingCase(
                        varying.Select(g => c.Value.Sire[g]).ToArray(),
                        varying.Select(g => c.Value.Dam[g]).ToArray(),
                        c.Weight))
                    .ToArray()));
        }

        return new(sire.Species, blocks);
    }

    /// <summary>A son and a daughter of one pair as the next parents: what the pair may be is a doubt the two share.</summary>
    /// <param name="parents">The pair.</param>
    /// <remarks>Takes the young as laid: neither what was seen of them nor a loss before hatching is counted in.</remarks>
    public static Mating OfSiblings(Mating parents)
    {
        var blocks = new List<MatingBlock>();
        foreach (var block in parents.Blocks)
        {
            var joint = new Dictionary<MatingCaseKey, Probability>();
            foreach (var mating in block.Cases)
            {
                var young = ChildStates.Of(parents, block.Groups, mating);
                foreach (var son in ChildStates.GivenSex(young, Sex.Male))
                {
                    foreach (var daughter in ChildStates.GivenSex(young, Sex.Female))
                    {
                        var key = new MatingCaseKey(son.Value.Diplotypes, daughter.Value.Diplotypes);
                        var chance = mating.Weight * son.Weight * daughter.Weight;
                        joint[key] = joint.TryGetValue(key, out var old) ? old + chance : chance;
                    }
                }
            }

            blocks.Add(new(block.Groups, joint.Select(j => new MatingCase(j.Key.Sire, j.Key.Dam, j.Value)).ToArray()));
        }

        return new(parents.Species, blocks);
    }

    /// <summary>The pairs of alleles that one parent may have at a locus, the smaller index first in each, likeliest pair first.</summary>
    /// <param name="locus">A locus of the species.</param>
    /// <param name="sex">Which parent: the sire is male, the dam female.</param>
    public IReadOnlyList<Weighted<(int First, int Second)>> PairsAt(Locus locus, Sex sex)
    {
        var block = Blocks.FirstOrDefault(b => b.Groups.Contains(locus.Group));
        if (block is null)
        {
            return [new((0, 0), Probability.Certain)];
        }

        var at = block.Groups.TakeWhile(g => g != locus.Group).Count();
        return block.Cases
            .GroupBy(c =>
            {
                var (a, b) = locus.PairOf(sex == Sex.Male ? c.Sire[at] : c.Dam[at]);
                return a <= b ? (a, b) : (b, a);
            })
            .Select(g => new Weighted<(int, int)>(g.Key, g.Aggregate(Probability.Impossible, (sum, c) => sum + c.Weight)))
            .OrderByDescending(w => w.Weight)
            .ToArray();
    }

    private static List<MatingBlock> BlocksOf(GenotypeBelief sire, GenotypeBelief dam)
    {
        var blocks = new List<MatingBlock>();
        foreach (var group in sire.Species.Groups)
        {
            var (ofSire, ofDam) = (sire[group], dam[group]);
            if (!group.IsSex && ofSire.Count == 1 && ofDam.Count == 1 && ofSire[0].Value.IsWild && ofDam[0].Value.IsWild)
            {
                continue;
            }

            var cases = new List<MatingCase>(ofSire.Count * ofDam.Count);
            foreach (var s in ofSire)
            {
                foreach (var d in ofDam)
                {
                    cases.Add(new([s.Value], [d.Value], s.Weight * d.Weight));
                }
            }

            blocks.Add(new([group], cases));
        }

        return blocks;
    }

    private static void Check(Species sireSpecies, Sex sireSex, Species damSpecies, Sex damSex)
    {
        if (sireSpecies != damSpecies)
        {
            throw new ArgumentException("Sire and dam are of different species.");
        }

        if (sireSex != Sex.Male || damSex != Sex.Female)
        {
            throw new ArgumentException("A sire is male and a dam female.");
        }
    }
}

/// <summary>Linkage groups whose doubts belong together, and what the parents may be there.</summary>
internal sealed record MatingBlock(IReadOnlyList<LinkageGroup> Groups, IReadOnlyList<MatingCase> Cases);

/// <summary>One thing that the two parents may be, by the groups of a block.</summary>
internal sealed record MatingCase(Diplotype[] Sire, Diplotype[] Dam, Probability Weight);

/// <summary>Compares cases by content.</summary>
internal readonly struct MatingCaseKey(Diplotype[] sire, Diplotype[] dam) : IEquatable<MatingCaseKey>
{
    public Diplotype[] Sire { get; } = sire;

    public Diplotype[] Dam { get; } = dam;

    public bool Equals(MatingCaseKey other) => Sire.AsSpan().SequenceEqual(other.Sire) && Dam.AsSpan().SequenceEqual(other.Dam);

    public override bool Equals(object? obj) => obj is MatingCaseKey other && Equals(other);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var diplotype in Sire.Concat(Dam))
        {
            hash.Add(diplotype);
        }

        return hash.ToHashCode();
    }
}
