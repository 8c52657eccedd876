using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Genetics.Crosses;

/// <summary>One want over every pair of many males and many females: the same figures as a <see cref="Cross"/> of each pair,
/// with what pairs have in common worked out once.</summary>
/// <remarks>
/// At a linkage group few different beliefs occur in a stock, so each factor is kept by the two beliefs it comes from. Only groups
/// that the want or a rule of survival names are looked at. Cost: one factor for each pair of different beliefs at such a group, and for each
/// pair of animals one multiplication a group. Not safe to use from several threads at once.
/// </remarks>
public sealed partial class PairTable
{
    private readonly IReadOnlyList<GenotypeBelief> _sires;
    private readonly IReadOnlyList<GenotypeBelief> _dams;
    private readonly Species _species;
    private readonly Want _want;
    private readonly Danger[] _dangers;
    private readonly List<Site> _sites = [];
    private readonly Site[] _counting;
    private readonly int[] _tyingRules;
    private readonly int[] _subsets;
    private readonly int[] _coefficients;

    /// <summary>Prepares the table.</summary>
    /// <param name="sires">Males of one species, at least one.</param>
    /// <param name="dams">Females of the same species.</param>
    /// <param name="want">What is wanted.</param>
    public PairTable(IReadOnlyList<GenotypeBelief> sires, IReadOnlyList<GenotypeBelief> dams, Want want)
    {
        _sires = sires;
        _dams = dams;
        _want = want;
        _species = sires[0].Species;
        _dangers = [.. _species.Dangers];
        (_subsets, _coefficients) = WantReckoner.Subsets(want.Alternatives.Count);
        var rules = new List<Danger>();
        var tying = new List<int>();
        for (var i = 0; i < _dangers.Length; i++)
        {
            var rule = _dangers[i];
            if (rule.Viability.ToHatchling.IsCertain)
            {
                continue;
            }

            var groups = rule.Sites.Select(s => s.Locus.Group).Append(rule.Sex is null ? null : _species.SexGroup).OfType<LinkageGroup>();
            if (groups.Distinct().Count() > 1)
            {
                tying.Add(i);
            }
            else
            {
                rules.Add(rule);
            }
        }

        foreach (var group in _species.Groups)
        {
            var counts = want.Loci.Any(l => l.Group == group)
                || rules.Exists(r => r.Sites.Any(s => s.Locus.Group == group))
                || (group.IsSex && (want.Alternatives.Any(a => a.Sex is not null) || rules.Exists(r => r.Sex is not null)));
            var endangered = _dangers.Any(d => d.Sites.Any(s => s.Locus.Group == group));
            if (counts || endangered)
            {
                _sites.Add(new Site(this, group, counts, rules));
            }
        }

        _tyingRules = [.. tying];
        _counting = [.. _sites.Where(s => s.Counts)];
    }

    /// <summary>The chance per egg of the want in one pair, as it depends on what the two may be.</summary>
    /// <param name="sire">The place of the male, from 0.</param>
    /// <param name="dam">The place of the female, from 0.</param>
    public SharedChance ChanceOf(int sire, int dam)
    {
        foreach (var site in _counting)
        {
            // Nothing that another group or a rule of survival says makes the impossible possible.
            if (site.ShapeAt(sire, dam).IsNever)
            {
                return SharedChance.Never;
            }
        }

        if (IsTiedByRule(sire, dam))
        {
            return Cross.Of(Mating.Of(_sires[sire], _dams[dam])).SharedChanceOf(_want);
        }

        var single = Probability.Certain;
        CaseProduct? product = null;
        foreach (var site in _counting)
        {
            var factor = site.At(sire, dam);
            if (product is null && factor.Weights.Length == 1 && _subsets.Length == 1)
            {
                single *= factor.Values[0][0];
                continue;
            }

            product ??= new CaseProduct(_subsets.Length);
            product.Multiply(factor.Weights, (k, t) => factor.Values[k][t]);
        }

        if (product is null)
        {
            return SharedChance.Certain(single);
        }

        if (!single.IsCertain)
        {
            product.Multiply([Probability.Certain], (_, _) => single);
        }

        return product.Sum(_coefficients);
    }

    /// <summary>The dangers whose genotype a pair can give, in the species' order.</summary>
    /// <param name="sire">The place of the male, from 0.</param>
    /// <param name="dam">The place of the female, from 0.</param>
    public IReadOnlyList<Danger> DangersOf(int sire, int dam)
    {
        var possible = Possible(sire, dam);
        var result = new List<Danger>();
        for (var i = 0; i < _dangers.Length; i++)
        {
            if (IsSet(possible, i))
            {
                result.Add(_dangers[i]);
            }
        }

        return result;
    }

    private static bool IsSet(ulong[] bits, int at) => (bits[at / 64] >> (at % 64) & 1UL) != 0UL;

    // Bit i: no group rules danger i out.
    private ulong[] Possible(int sire, int dam)
    {
        var possible = new ulong[(_dangers.Length + 63) / 64];
        Array.Fill(possible, ulong.MaxValue);
        foreach (var site in _sites)
        {
            var here = site.ShapeAt(sire, dam).Possible;
            for (var word = 0; word < possible.Length; word++)
            {
                possible[word] &= here[word];
            }
        }

        return possible;
    }

    private sealed partial class Site
    {
        private readonly PairTable _table;
        private readonly LinkageGroup _group;
        private readonly List<Danger> _rules;
        private readonly List<IReadOnlyList<Weighted<Diplotype>>> _ofSires;
        private readonly List<IReadOnlyList<Weighted<Diplotype>>> _ofDams;
        private readonly int[] _sire;
        private readonly int[] _dam;
        private readonly Factor?[,] _factors;
        private readonly Dictionary<(Diplotype Sire, Diplotype Dam), (Probability[] Values, ulong[] Possible)> _cases = [];

        public Site(PairTable table, LinkageGroup group, bool counts, List<Danger> rules)
        {
            (_table, _group, Counts, _rules) = (table, group, counts, rules);
            (_ofSires, _sire) = Different(table._sires, group);
            (_ofDams, _dam) = Different(table._dams, group);
            _factors = new Factor?[_ofSires.Count, _ofDams.Count];
            (_supportOfSire, _supportsOfSires) = Supports(_ofSires);
            (_supportOfDam, _supportsOfDams) = Supports(_ofDams);
            _weightsOfSire = [.. _ofSires.Select(Weights)];
            _weightsOfDam = [.. _ofDams.Select(Weights)];
            _shapes = new Shape?[_supportsOfSires.Count, _supportsOfDams.Count];
        }

        public bool Counts { get; }

        public Factor At(int sire, int dam) => _factors[_sire[sire], _dam[dam]] ??= Make(_ofSires[_sire[sire]], _ofDams[_dam[dam]]);

        private static (List<IReadOnlyList<Weighted<Diplotype>>> Beliefs, int[] Place) Different(
            IReadOnlyList<GenotypeBelief> animals, LinkageGroup group)
        {
            var beliefs = new List<IReadOnlyList<Weighted<Diplotype>>>();
            var places = new Dictionary<IReadOnlyList<Weighted<Diplotype>>, int>(new ByContent());
            var place = new int[animals.Count];
            for (var i = 0; i < animals.Count; i++)
            {
                var belief = animals[i][group];
                if (!places.TryGetValue(belief, out place[i]))
                {
                    place[i] = beliefs.Count;
                    places.Add(belief, place[i]);
                    beliefs.Add(belief);
                }
            }

            return (beliefs, place);
        }

        // A stock in doubt has many beliefs, but few diplotypes that they are made of.
        private Factor Make(IReadOnlyList<Weighted<Diplotype>> sire, IReadOnlyList<Weighted<Diplotype>> dam)
        {
            var weights = new Probability[sire.Count * dam.Count];
            var values = new Probability[weights.Length][];
            for (var k = 0; k < weights.Length; k++)
            {
                var (s, d) = (sire[k / dam.Count], dam[k % dam.Count]);
                weights[k] = s.Weight * d.Weight;
                values[k] = Case(s.Value, d.Value).Values;
            }

            return values[0].Length == 1 ? Merged(weights, values) : new(weights, values);
        }

        private (Probability[] Values, ulong[] Possible) Case(Diplotype sire, Diplotype dam)
        {
            if (!_cases.TryGetValue((sire, dam), out var known))
            {
                _cases.Add((sire, dam), known = Reckon(sire, dam));
            }

            return known;
        }

        // Of one term most cases give the same few values; put together here they are multiplied once.
        private static Factor Merged(Probability[] weights, Probability[][] values)
        {
            var count = 0;
            for (var k = 0; k < weights.Length; k++)
            {
                var at = 0;
                while (at < count && values[at][0] != values[k][0])
                {
                    at++;
                }

                (weights[at], values[at]) = at < count ? (weights[at] + weights[k], values[at]) : (weights[k], values[k]);
                count = Math.Max(count, at + 1);
            }

            return new(weights[..count], values[..count]);
        }

        private (Probability[] Values, ulong[] Possible) Reckon(Diplotype sire, Diplotype dam)
        {
            var mating = Mating.Of(_table._sires[0], _table._dams[0]);
            var block = CrossBlock.Of(mating, [new MatingBlock([_group], [new([sire], [dam], Probability.Certain)])], _rules);
            var met = WantReckoner.Met(block, _table._want.Alternatives);
            var values = _table._subsets.Select(s => WantReckoner.Share(block, block.Laid, met, s)).ToArray();
            var sites = new CrossBlockSites([_group]);
            var possible = new ulong[(_table._dangers.Length + 63) / 64];
            Array.Fill(possible, ulong.MaxValue);
            for (var i = 0; i < _table._dangers.Length; i++)
            {
                var danger = _table._dangers[i];
                if (danger.Sites.Any(s => s.Locus.Group == _group)
                    && !Enumerable.Range(0, block.States.Count).Any(s => !block.Laid[s].IsImpossible && sites.Holds(danger, block.States[s])))
                {
                    possible[i / 64] &= ~(1UL << (i % 64));
                }
            }

            return (values, possible);
        }
    }

    private sealed class ByContent : IEqualityComparer<IReadOnlyList<Weighted<Diplotype>>>
    {
        public bool Equals(IReadOnlyList<Weighted<Diplotype>>? x, IReadOnlyList<Weighted<Diplotype>>? y)
        {
            if (ReferenceEquals(x, y))
            {
                return true;
            }

            if (x is null || y is null || x.Count != y.Count)
            {
                return false;
            }

            for (var i = 0; i < x.Count; i++)
            {
                if (x[i] != y[i])
                {
                    return false;
                }
            }

            return true;
        }

        public int GetHashCode(IReadOnlyList<Weighted<Diplotype>> belief)
        {
            var hash = new HashCode();
            for (var i = 0; i < belief.Count; i++)
            {
                hash.Add(belief[i].Value);
                hash.Add(belief[i].Weight.Value);
            }

            return hash.ToHashCode();
        }
    }

    /// <summary>One group of one pair of beliefs.</summary>
    /// <param name="Weights">Of the cases of the parents.</param>
    /// <param name="Values">By case and by subset of the want's alternatives.</param>
    private sealed record Factor(Probability[] Weights, Probability[][] Values);
}
