using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <content>What a pair's chance cannot pass, from what is believed of each animal alone.</content>
public sealed partial class PairTable
{
    /// <summary>What the chances of a pair cannot pass.</summary>
    /// <param name="sire">The place of the male, from 0.</param>
    /// <param name="dam">The place of the female, from 0.</param>
    /// <param name="areTied">Whether the doubts of the two may have to do with each other, in whatever way; otherwise each animal's doubt is its own.</param>
    /// <remarks>At each group: how often, at most, the two are such that the chance there reaches each of its values, over all ways to tie the two beliefs
    /// (Strassen's condition, docs/references.md [Strassen1965]; the crude bound by either animal alone where a belief has over ten cases). Independent groups are multiplied, alternatives
    /// added, rules of survival that tie groups left out. For two that are not tied the bound is their chance, but for such alternatives and rules.</remarks>
    public PairBound BoundOf(int sire, int dam, bool areTied)
    {
        var (perEgg, ceiling) = (0.0, 0.0);
        for (var alternative = 0; alternative < _want.Alternatives.Count; alternative++)
        {
            var (mean, positive) = (1.0, 1.0);
            for (var i = 0; i < _counting.Length && positive > 0.0; i++)
            {
                var (m, p) = _counting[i].BoundAt(sire, dam, alternative, areTied);
                (mean, positive) = (mean * m, positive * p);
            }

            (perEgg, ceiling) = (perEgg + mean, ceiling + positive);
        }

        return new(Math.Min(perEgg, 1.0), Math.Min(ceiling, 1.0));
    }

    /// <summary>Whether a rule of survival that ties several groups can come true in a pair, so that its chance is not a product over groups.</summary>
    /// <param name="sire">The place of the male, from 0.</param>
    /// <param name="dam">The place of the female, from 0.</param>
    public bool IsTiedByRule(int sire, int dam)
    {
        if (_tyingRules.Length == 0)
        {
            return false;
        }

        var possible = Possible(sire, dam);
        return Array.Exists(_tyingRules, r => IsSet(possible, r));
    }

    /// <summary>The gravest danger whose genotype a pair can give; <c>null</c>: none.</summary>
    /// <param name="sire">The place of the male, from 0.</param>
    /// <param name="dam">The place of the female, from 0.</param>
    public Severity? GravestOf(int sire, int dam)
    {
        if (_dangers.Length == 0)
        {
            return null;
        }

        Severity? gravest = null;
        var possible = Possible(sire, dam);
        for (var i = 0; i < _dangers.Length; i++)
        {
            if (IsSet(possible, i) && (gravest is null || _dangers[i].Severity > gravest))
            {
                gravest = _dangers[i].Severity;
            }
        }

        return gravest;
    }

    /// <summary>A number that males believed alike share: all of it that this table looks at.</summary>
    /// <param name="sire">The place of the male, from 0.</param>
    public int KindOfSire(int sire) => (_kindsOfSires ??= Kinds(_sires.Count, (site, i) => site.BeliefOfSire(i)))[sire];

    /// <summary>A number that females believed alike share: all of it that this table looks at.</summary>
    /// <param name="dam">The place of the female, from 0.</param>
    public int KindOfDam(int dam) => (_kindsOfDams ??= Kinds(_dams.Count, (site, i) => site.BeliefOfDam(i)))[dam];

    private int[]? _kindsOfSires;
    private int[]? _kindsOfDams;

    // Rules of survival that tie groups look at all of the animal: then each is of its own kind.
    private int[] Kinds(int count, Func<Site, int, int> beliefAt)
    {
        if (_tyingRules.Length > 0)
        {
            return [.. Enumerable.Range(0, count)];
        }

        var kinds = new int[count];
        foreach (var site in _sites)
        {
            var numbers = new Dictionary<(int, int), int>();
            for (var i = 0; i < count; i++)
            {
                var key = (kinds[i], beliefAt(site, i));
                if (!numbers.TryGetValue(key, out kinds[i]))
                {
                    numbers.Add(key, kinds[i] = numbers.Count);
                }
            }
        }

        return kinds;
    }

    private sealed partial class Site
    {
        private readonly int[] _supportOfSire;
        private readonly int[] _supportOfDam;
        private readonly List<Diplotype[]> _supportsOfSires;
        private readonly List<Diplotype[]> _supportsOfDams;
        private readonly double[][] _weightsOfSire;
        private readonly double[][] _weightsOfDam;
        private readonly Shape?[,] _shapes;

        public int BeliefOfSire(int sire) => _sire[sire];

        public int BeliefOfDam(int dam) => _dam[dam];

        /// <summary>All that follows from what the two may be, however probable.</summary>
        public Shape ShapeAt(int sire, int dam)
        {
            var (s, d) = (_supportOfSire[_sire[sire]], _supportOfDam[_dam[dam]]);
            return _shapes[s, d] ??= Form(_supportsOfSires[s], _supportsOfDams[d]);
        }

        public (double Mean, double Positive) BoundAt(int sire, int dam, int alternative, bool areTied)
        {
            var (his, her) = (_weightsOfSire[_sire[sire]], _weightsOfDam[_dam[dam]]);
            var shape = ShapeAt(sire, dam);
            if (areTied && his.Length > 1 && her.Length > 1)
            {
                return shape.Steps[alternative].Most(his, her);
            }

            var values = shape.Values[alternative];
            var (mean, positive, at) = (0.0, 0.0, 0);
            foreach (var a in his)
            {
                foreach (var b in her)
                {
                    var value = values[at++];
                    mean += a * b * value;
                    positive += value > 0.0 ? a * b : 0.0;
                }
            }

            return (mean, positive);
        }

        private static double[] Weights(IReadOnlyList<Weighted<Diplotype>> belief) => [.. belief.Select(w => w.Weight.Value)];

        private static (int[] Of, List<Diplotype[]> Supports) Supports(List<IReadOnlyList<Weighted<Diplotype>>> beliefs)
        {
            var supports = new List<Diplotype[]>();
            var of = new int[beliefs.Count];
            for (var i = 0; i < of.Length; i++)
            {
                Diplotype[] own = [.. beliefs[i].Select(w => w.Value)];
                of[i] = supports.FindIndex(s => s.AsSpan().SequenceEqual(own));
                if (of[i] < 0)
                {
                    of[i] = supports.Count;
                    supports.Add(own);
                }
            }

            return (of, supports);
        }

        private Shape Form(Diplotype[] sire, Diplotype[] dam)
        {
            var possible = new ulong[(_table._dangers.Length + 63) / 64];
            var alternatives = Counts ? _table._want.Alternatives.Count : 0;
            var values = new double[alternatives][];
            for (var a = 0; a < alternatives; a++)
            {
                values[a] = new double[sire.Length * dam.Length];
            }

            var isNever = true;
            for (var k = 0; k < sire.Length * dam.Length; k++)
            {
                var known = Case(sire[k / dam.Length], dam[k % dam.Length]);
                isNever &= Array.TrueForAll(known.Values, v => v.IsImpossible);
                for (var word = 0; word < possible.Length; word++)
                {
                    possible[word] |= known.Possible[word];
                }

                for (var a = 0; a < alternatives; a++)
                {
                    values[a][k] = known.Values[Array.IndexOf(_table._subsets, 1 << a)].Value;
                }
            }

            return new(isNever, possible, values, Array.ConvertAll(values, v => new CouplingBound(v, sire.Length, dam.Length)));
        }
    }

    /// <summary>What follows at one group from what two animals may be, however probable.</summary>
    /// <param name="IsNever">Whether no case gives what is wanted here.</param>
    /// <param name="Possible">A bit for each danger: whether it can come true as far as this group is concerned.</param>
    /// <param name="Values">The chance by alternative and case.</param>
    /// <param name="Steps">The bound by alternative.</param>
    private sealed record Shape(bool IsNever, ulong[] Possible, double[][] Values, CouplingBound[] Steps);
}

/// <summary>What the chances of a pair cannot pass.</summary>
/// <param name="PerEgg">Of the chance per egg over all cases, in [0, 1].</param>
/// <param name="Ceiling">Of the weight of the cases in which it is possible, in [0, 1]; 0 only where nothing is possible.</param>
public readonly record struct PairBound(double PerEgg, double Ceiling);
