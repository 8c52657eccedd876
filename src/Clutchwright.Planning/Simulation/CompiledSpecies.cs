using System.Numerics;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Meiosis;

namespace Clutchwright.Planning.Simulation;

/// <summary>An animal of a simulation: its sex and, in one word, its haplotypes at the groups in play.</summary>
/// <param name="Sex">The sex.</param>
/// <param name="Code">The haplotypes, as <see cref="CompiledSpecies"/> packs them; equal codes of one sex are equal genotypes.</param>
public readonly record struct CompiledAnimal(Sex Sex, ulong Code);

/// <summary>A species made ready for drawing young in great numbers: each parent's gametes are looked up group by group. Immutable, and safe to use
/// from many threads.</summary>
/// <remarks>The same segregation, linkage, sex linkage and survival as in a cross. Use it where every season has other parents; where one pair lays again and
/// again, <see cref="CompiledCross"/> is faster. Memory: a table for each diplotype met, and 16 bytes for each possible one.</remarks>
public sealed class CompiledSpecies
{
    private readonly Species _species;
    private readonly Site[] _sites;
    private readonly Rule[] _rules;

    private CompiledSpecies(Species species, Site[] sites, Rule[] rules) => (_species, _sites, _rules) = (species, sites, rules);

    /// <summary>Makes a species ready.</summary>
    /// <param name="species">The species.</param>
    /// <param name="inPlay">The linkage groups at which any animal may carry a mutant allele; the sex chromosomes are added. Fewer are faster.</param>
    /// <exception cref="ArgumentException">The haplotypes of the groups do not fit into 64 bits.</exception>
    public static CompiledSpecies Of(Species species, IEnumerable<LinkageGroup> inPlay)
    {
        var groups = inPlay.Concat(species.Groups.Where(g => g.IsSex)).Distinct().OrderBy(g => g.Index).ToArray();
        var (sites, shift) = (new List<Site>(), 0);
        foreach (var group in groups)
        {
            var bits = BitOperations.Log2((uint)group.HaplotypeCount - 1) + 1;
            bits = group.HaplotypeCount == 1 ? 0 : bits;
            sites.Add(new(species, group, shift, bits));
            shift += 2 * bits;
        }

        if (shift > 64)
        {
            throw new ArgumentException($"The groups in play need {shift} bits, more than 64.", nameof(inPlay));
        }

        var rules = species.Dangers
            .Where(d => !d.Viability.ToHatchling.IsCertain && d.Groups.Except(groups).All(g => d.IsMetAt(g, default)))
            .Select(d => new Rule(d, [.. sites.Where(s => d.Groups.Contains(s.Group))]))
            .ToArray();
        return new(species, [.. sites], rules);
    }

    /// <summary>Packs a genotype.</summary>
    /// <exception cref="ArgumentException">It is of another species, or carries a mutant allele at a group that is not in play.</exception>
    public CompiledAnimal Compile(Genotype genotype)
    {
        if (genotype.Species != _species || _species.Groups.Except(_sites.Select(s => s.Group)).Any(g => !genotype[g].IsWild))
        {
            throw new ArgumentException("The genotype is of another species, or carries alleles that are not in play.", nameof(genotype));
        }

        return new(genotype.Sex, _sites.Aggregate(0UL, (code, site) => code | site.Pack(genotype[site.Group])));
    }

    /// <summary>The genotype of an animal.</summary>
    public Genotype GenotypeOf(CompiledAnimal animal) => _sites.Aggregate(
        Genotype.Wild(_species, animal.Sex), (genotype, site) => genotype.With(site.Group, site.Unpack(animal.Code)));

    /// <summary>What an animal has at a linkage group.</summary>
    /// <param name="animal">The animal.</param>
    /// <param name="group">A group of the species; one that is not in play is wild.</param>
    public Diplotype At(CompiledAnimal animal, LinkageGroup group)
    {
        foreach (var site in _sites)
        {
            if (site.Group == group)
            {
                return site.Unpack(animal.Code);
            }
        }

        return default;
    }

    /// <summary>Draws what a good egg of a pair becomes.</summary>
    /// <param name="sire">The sire.</param>
    /// <param name="dam">The dam.</param>
    /// <param name="random">The stream.</param>
    /// <param name="young">The young, whether it hatches or not.</param>
    /// <returns>Whether its genotype lets it hatch.</returns>
    /// <remarks>Cost: a random number for each group at which a parent is heterozygous, and one for each danger met.</remarks>
    public bool Hatches(CompiledAnimal sire, CompiledAnimal dam, CountedRandom random, out CompiledAnimal young)
    {
        var (code, sex) = (0UL, Sex.Female);
        foreach (var site in _sites)
        {
            var (pair, own) = Fertilization.Of(_species, site.Group, site.Draw(sire, random), site.Draw(dam, random));
            code |= site.Pack(pair);
            sex = own ?? sex;
        }

        young = new(sex, code);
        foreach (var rule in _rules)
        {
            if (rule.IsMet(young) && random.NextShare() >= rule.Lives)
            {
                return false;
            }
        }

        return true;
    }

    private sealed class Rule(Danger danger, Site[] sites)
    {
        public double Lives { get; } = danger.Viability.ToHatchling.Value;

        public bool IsMet(CompiledAnimal animal) => (danger.Sex is null || danger.Sex == animal.Sex)
            && Array.TrueForAll(sites, s => danger.IsMetAt(s.Group, s.Unpack(animal.Code)));
    }

    // A group in play: where its two haplotypes stand in the word, and the gametes of each diplotype of either sex, made when first asked for.
    private sealed class Site(Species species, LinkageGroup group, int shift, int bits)
    {
        private readonly Gametes?[][] _gametes = [new Gametes?[1 << (2 * bits)], new Gametes?[1 << (2 * bits)]];
        private readonly Sex _heterogametic = species.SexSystem.Heterogametic();
        private readonly ulong _mask = (1UL << bits) - 1;

        public LinkageGroup Group => group;

        public ulong Pack(Diplotype pair) => bits == 0 ? 0 : ((ulong)pair.First << shift) | ((ulong)pair.Second << (shift + bits));

        public Diplotype Unpack(ulong code) => bits == 0 ? default : new((int)((code >> shift) & _mask), (int)((code >> (shift + bits)) & _mask));

        public Gamete Draw(CompiledAnimal parent, CountedRandom random)
        {
            var isHeterogametic = parent.Sex == _heterogametic;
            var place = bits == 0 ? 0 : (int)((parent.Code >> shift) & ((_mask << bits) | _mask));
            var gametes = _gametes[isHeterogametic ? 1 : 0];

            // Two threads may make the same table at once; they are equal, so either will do.
            return (gametes[place] ??= new(GameteFormation.Of(group, Unpack(parent.Code), isHeterogametic).Select(w => (w.Value, w.Weight.Value)))).Draw(random);
        }
    }

    private sealed class Gametes
    {
        private readonly Gamete[] _gametes;
        private readonly AliasTable _table;

        public Gametes(IEnumerable<(Gamete Gamete, double Chance)> gametes)
        {
            var all = gametes.ToArray();
            _gametes = [.. all.Select(g => g.Gamete)];
            _table = AliasTable.Of([.. all.Select(g => g.Chance)]);
        }

        public Gamete Draw(CountedRandom random) => _gametes.Length == 1 ? _gametes[0] : _gametes[_table.Draw(random)];
    }
}
