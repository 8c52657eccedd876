namespace Clutchwright.Pedigrees.Kinship;

/// <summary>Why two animals are related: every route of descent between them, and what each adds to the inbreeding of their young.</summary>
/// <remarks>Source: docs/references.md [Wright1922]. The contributions of all routes sum to the kinship of the two. Cannot change.</remarks>
public sealed class DescentRoutes
{
    /// <summary>The most ancestors among which routes are sought; of more, the nearest are taken.</summary>
    public const int MostAncestors = 1200;

    private readonly AncestorPairs _pairs;
    private readonly KinshipReckoner _reckoner;
    private readonly double[] _best;
    private readonly ulong[] _counts;

    private DescentRoutes(KinshipReckoner reckoner, int first, int second, int most)
    {
        var descent = reckoner.Descent;
        var (one, other) = (descent.NodeOf(first), descent.NodeOf(second));
        _reckoner = reckoner;
        _pairs = new AncestorPairs(descent.Graph, [one, other], MostAncestors);
        _best = new double[_pairs.Count * (_pairs.Count + 1) / 2];
        _counts = new ulong[_best.Length];
        Kinship = reckoner.Between(first, second);
        FillTable();
        var start = AncestorPairs.At(_pairs.IndexOf(one), _pairs.IndexOf(other));
        Count = _counts[start];
        Ancestors = Sums(start);
        Routes = List(_pairs.IndexOf(one), _pairs.IndexOf(other), most);
    }

    /// <summary>The kinship of the two: the inbreeding coefficient to be expected of their young.</summary>
    public double Kinship { get; }

    /// <summary>The routes that add most, the greatest first.</summary>
    public IReadOnlyList<DescentRoute> Routes { get; }

    /// <summary>How many routes there are among the ancestors looked at; <see cref="ulong.MaxValue"/> stands for that many or more.</summary>
    public ulong Count { get; }

    /// <summary>Whether all ancestors were looked at; otherwise routes through the most distant ones are left out of everything but
    /// <see cref="Kinship"/>.</summary>
    public bool IsComplete => _pairs.IsComplete;

    /// <summary>The common ancestors through which routes go, that which adds most first. Their contributions sum to the kinship, if the answer is
    /// complete.</summary>
    public IReadOnlyList<CommonAncestor> Ancestors { get; }

    /// <summary>Finds the routes between two animals.</summary>
    /// <param name="reckoner">The kinships.</param>
    /// <param name="first">One parent's position.</param>
    /// <param name="second">The other's; if both are one animal (self-fertilised), the one route is the animal itself.</param>
    /// <param name="most">The most routes to list, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such animal, or <paramref name="most"/> is negative.</exception>
    /// <remarks>Cost: time and memory grow with the square of the number of ancestors looked at, and with the routes listed.</remarks>
    public static DescentRoutes Between(KinshipReckoner reckoner, int first, int second, int most)
    {
        ArgumentNullException.ThrowIfNull(reckoner);
        ArgumentOutOfRangeException.ThrowIfNegative(most);
        return new DescentRoutes(reckoner, first, second, most);
    }

    /// <summary>By pair: how many routes lead on from it, and the most that one of them gives.</summary>
    private void FillTable()
    {
        for (var one = 0; one < _pairs.Count; one++)
        {
            for (var other = 0; other <= one; other++)
            {
                var at = AncestorPairs.At(one, other);
                var end = EndOf(one, other);
                (_counts[at], _best[at]) = (end > 0.0 ? 1UL : 0UL, end);
                foreach (var (to, share) in StepsFrom(one, other))
                {
                    _counts[at] = Add(_counts[at], _counts[AncestorPairs.At(to.First, to.Second)]);
                    _best[at] = Math.Max(_best[at], share * _best[AncestorPairs.At(to.First, to.Second)]);
                }
            }
        }
    }

    private static ulong Add(ulong a, ulong b) => b > ulong.MaxValue - a ? ulong.MaxValue : a + b;

    /// <summary>What a route that ends at a pair is worth; 0 if none ends there.</summary>
    private double EndOf(int one, int other) =>
        one == other
            ? (_pairs.IsChoice(one) ? 0.0 : (1.0 + _reckoner.InbreedingOfNode(_pairs.Nodes[one])) / 2.0)
            : _pairs.IsFounder[one] && _pairs.IsFounder[other] ? _pairs.FoundersKinship(one, other).Value : 0.0;

    private IEnumerable<((int First, int Second) To, double Share)> StepsFrom(int first, int second)
    {
        if (first == second)
        {
            // The same sire in doubt: whoever he is, he is the same on both sides.
            for (var i = 0; _pairs.IsChoice(first) && i < _pairs.Parents[first].Length; i++)
            {
                if (_pairs.Parents[first][i] is >= 0 and var sire)
                {
                    yield return ((sire, sire), _pairs.ChancesOf(first)![i].Value);
                }
            }

            yield break;
        }

        if (_pairs.IsFounder[first] && _pairs.IsFounder[second])
        {
            yield break;
        }

        var isFirst = _pairs.FirstStepsBack(first, second);
        var younger = isFirst ? first : second;
        var chances = _pairs.ChancesOf(younger);
        for (var i = 0; i < _pairs.Parents[younger].Length; i++)
        {
            if (_pairs.Parents[younger][i] is >= 0 and var parent)
            {
                yield return (isFirst ? (parent, second) : (first, parent), chances?[i].Value ?? 0.5);
            }
        }
    }

    private List<CommonAncestor> Sums(int start)
    {
        var (mass, walks) = (new double[_best.Length], new ulong[_best.Length]);
        (mass[start], walks[start]) = (1.0, 1);
        var (sums, counts) = (new double[_pairs.Count], new ulong[_pairs.Count]);
        for (var one = _pairs.Count - 1; one >= 0; one--)
        {
            // A pair leads to pairs whose older is older still, or whose younger is: both lie behind in this order.
            for (var other = one; other >= 0; other--)
            {
                var at = AncestorPairs.At(one, other);
                if (walks[at] == 0 || _counts[at] == 0)
                {
                    continue;
                }

                if (EndOf(one, other) is > 0.0 and var end)
                {
                    sums[one] += mass[at] * end;
                    counts[one] = Add(counts[one], walks[at]);
                }

                foreach (var (to, share) in StepsFrom(one, other))
                {
                    var next = AncestorPairs.At(to.First, to.Second);
                    mass[next] += mass[at] * share;
                    walks[next] = Add(walks[next], walks[at]);
                }
            }
        }

        return
        [
            .. Enumerable.Range(0, _pairs.Count)
                .Where(i => counts[i] > 0)
                .Select(i => new CommonAncestor(_reckoner.Descent.Animals[_pairs.Nodes[i]], sums[i], counts[i]))
                .OrderByDescending(a => a.Contribution)
                .ThenBy(a => a.Ancestor),
        ];
    }

    /// <summary>The best routes first: of every walk begun it is known how much its best end gives.</summary>
    private List<DescentRoute> List(int first, int second, int most)
    {
        var routes = new List<DescentRoute>();
        var queue = new PriorityQueue<Walk, (double, int)>();
        var order = 0;
        Begin(new Walk(first, second, 1.0, 1.0, IsEnd: false, null), _best[AncestorPairs.At(first, second)]);
        while (routes.Count < most && queue.TryDequeue(out var walk, out _))
        {
            if (walk.IsEnd)
            {
                routes.Add(Write(walk));
                continue;
            }

            Begin(walk with { IsEnd = true }, walk.Share * EndOf(walk.First, walk.Second));
            foreach (var (to, share) in StepsFrom(walk.First, walk.Second))
            {
                var isChance = _pairs.IsChoice(walk.First != to.First ? walk.First : walk.Second);
                var next = new Walk(to.First, to.Second, walk.Share * share, isChance ? walk.Chance * share : walk.Chance, IsEnd: false, walk);
                Begin(next, next.Share * _best[AncestorPairs.At(to.First, to.Second)]);
            }
        }

        return routes;

        void Begin(Walk walk, double best)
        {
            if (best > 0.0)
            {
                queue.Enqueue(walk, (-best, order++));
            }
        }
    }

    private DescentRoute Write(Walk end)
    {
        var (first, second) = (new List<int>(), new List<int>());
        for (Walk? walk = end; walk is not null; walk = walk.Before)
        {
            Put(first, walk.First);
            Put(second, walk.Second);
        }

        first.Reverse();
        second.Reverse();
        var inbreeding = _reckoner.InbreedingOfNode(_pairs.Nodes[end.First]);
        double? founders = end.First == end.Second ? null : EndOf(end.First, end.Second);
        return new DescentRoute(
            first[^1], first, second, inbreeding, founders, end.Chance, end.Share * EndOf(end.First, end.Second));

        void Put(List<int> path, int index)
        {
            var animal = _reckoner.Descent.Animals[_pairs.Nodes[index]];
            if (animal >= 0 && (path.Count == 0 || path[^1] != animal))
            {
                path.Add(animal);
            }
        }
    }

    private sealed record Walk(int First, int Second, double Share, double Chance, bool IsEnd, Walk? Before);
}
