using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Planning.Pairs;

/// <summary>Looks at the pairs of a stock in the order of what each can give at most.</summary>
internal sealed class PairSearch
{
    // Bounds and chances come by different sums: one that is equal must not fall below the other.
    private const double Slack = 1e-9;
    private readonly PairTable _table;
    private readonly int _sireCount;
    private readonly int _damCount;
    private readonly Want _want;
    private readonly double[] _eggs;
    private readonly PairTies? _ties;
    private readonly CancellationToken _cancel;
    private readonly ClutchChances _chances;
    private readonly Dictionary<(int Sire, int Dam), (SharedChance PerEgg, Probability AtLeastOne)> _apart = [];
    private int _reckoned;
    private int _notReckoned;

    public PairSearch(
        IReadOnlyList<GenotypeBelief> sires, IReadOnlyList<GenotypeBelief> dams, Want want, GoodEggs clutch, PairTies? ties, CancellationToken cancel)
    {
        (_table, _want, _chances, _ties, _cancel) = (new PairTable(sires, dams, want), want, new ClutchChances(clutch), ties, cancel);
        (_sireCount, _damCount) = (sires.Count, dams.Count);
        _eggs = [.. clutch.Chances.Select(c => c.Value)];
    }

    public BestPairs Find(int most)
    {
        var (good, leftOut) = (new List<(int Pair, double Bound)>(), new List<(int Pair, double Bound)>());
        for (var sire = 0; sire < _sireCount; sire++)
        {
            _cancel.ThrowIfCancellationRequested();
            for (var dam = 0; dam < _damCount; dam++)
            {
                var bound = _table.BoundOf(sire, dam, _ties?.AreTied(sire, dam) ?? false);

                // What is impossible of two apart is impossible of them together; a rule that ties groups can make it so too.
                if (bound.Ceiling == 0.0 || (_table.IsTiedByRule(sire, dam) && Apart(sire, dam).PerEgg.Ceiling.IsImpossible))
                {
                    continue;
                }

                var isLeftOut = _table.GravestOf(sire, dam) >= Severity.Suffering;
                (isLeftOut ? leftOut : good).Add(((sire * _damCount) + dam, AtMost(bound) + Slack));
            }
        }

        var (pairs, less) = Best(good, most);
        var (others, lessOut) = Best(leftOut, most);
        return new(pairs, others, good.Count - less, leftOut.Count - lessOut, _reckoned, _notReckoned);
    }

    private (IReadOnlyList<RankedPair> Pairs, int Impossible) Best(List<(int Pair, double Bound)> bounds, int most)
    {
        var open = new PriorityQueue<int, double>(bounds.Select(b => (b.Pair, -b.Bound)));
        var known = new PriorityQueue<Known, Known>(Comparer<Known>.Create(Known.Compare));
        var best = new List<RankedPair>();
        var impossible = 0;
        while (best.Count < most && open.Count + known.Count > 0)
        {
            if (open.TryPeek(out var pair, out var least) && (!known.TryPeek(out var next, out _) || -least >= next.Value))
            {
                open.Dequeue();
                var (sire, dam) = (pair / _damCount, pair % _damCount);
                var (chance, atLeastOne) = Reckon(sire, dam);
                if (chance.Ceiling.IsImpossible)
                {
                    impossible++;
                    continue;
                }

                var found = new Known(sire, dam, chance, atLeastOne, atLeastOne.Value, chance.PerEgg.Value);
                known.Enqueue(found, found);
            }
            else
            {
                var first = known.Dequeue();
                best.Add(new(
                    first.Sire, first.Dam, first.Chance, first.AtLeastOne, [.. _table.DangersOf(first.Sire, first.Dam).OrderByDescending(d => d.Severity)]));
            }
        }

        return (best, impossible);
    }

    private (SharedChance PerEgg, Probability AtLeastOne) Reckon(int sire, int dam)
    {
        if (_ties?.AreTied(sire, dam) != true)
        {
            return Apart(sire, dam);
        }

        _cancel.ThrowIfCancellationRequested();
        if (_ties.Together(sire, dam) is not { } mating)
        {
            _notReckoned++;
            return Apart(sire, dam);
        }

        _reckoned++;
        var chance = Cross.Of(mating).SharedChanceOf(_want);
        return (chance, _chances.AtLeastOne(chance));
    }

    // Animals believed alike give the same pair.
    private (SharedChance PerEgg, Probability AtLeastOne) Apart(int sire, int dam)
    {
        var kind = (_table.KindOfSire(sire), _table.KindOfDam(dam));
        if (!_apart.TryGetValue(kind, out var known))
        {
            var chance = _table.ChanceOf(sire, dam);
            _apart.Add(kind, known = (chance, _chances.AtLeastOne(chance)));
        }

        return known;
    }

    private double AtMost(PairBound bound)
    {
        var miss = 1.0 - Math.Min(1.0, bound.PerEgg / bound.Ceiling);
        var none = 0.0;
        for (var n = _eggs.Length - 1; n >= 0; n--)
        {
            none = (none * miss) + _eggs[n];
        }

        return bound.Ceiling * (1.0 - none);
    }

    private sealed record Known(int Sire, int Dam, SharedChance Chance, Probability AtLeastOne, double Value, double PerEgg)
    {
        // Of equal chances the likelier per egg comes first, then the order given.
        public static int Compare(Known a, Known b) => a.Value != b.Value ? b.Value.CompareTo(a.Value)
            : a.PerEgg != b.PerEgg ? b.PerEgg.CompareTo(a.PerEgg)
            : a.Sire != b.Sire ? a.Sire.CompareTo(b.Sire)
            : a.Dam.CompareTo(b.Dam);
    }
}
