using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Pedigrees.Tests.Beliefs.Twin;

/// <summary>The belief of one kin by the definition: every combination of what each animal, recorded or not, may be, for every case of which
/// possible sire it was and which doubted record is right. Slow.</summary>
internal sealed class TwinKin
{
    private const double Tiny = 1.0 / (1L << 50);
    private readonly List<TwinNode> _nodes;
    private readonly TwinGroup[] _groups;
    private readonly List<(TwinNode Node, int Index)> _doubted = [];
    private readonly Dictionary<int, List<double>> _choices = [];
    private readonly HashSet<TwinGroup> _raised = [];
    private readonly HashSet<(TwinNode Node, TwinGroup Group)> _cut = [];
    private readonly HashSet<(TwinNode Node, TwinGroup Group)> _uncut = [];
    private readonly HashSet<RecordPlace> _soft = [];
    private Func<RecordPlace, bool> _counts = _ => true;
    private bool _isAtItsWord;

    public TwinKin(List<TwinNode> nodes, TwinGroup[] groups, Queue<ClashingRecords> clashes)
    {
        _nodes = nodes;
        _groups = groups;
        foreach (var node in nodes.Where(n => n.Choice >= 0))
        {
            _choices[node.Choice] = node.MaleChances;
        }

        foreach (var node in nodes.Where(n => n.Record is not null))
        {
            for (var i = 0; i < node.Record!.Observations.Count; i++)
            {
                var observation = node.Record.Observations[i];
                if (observation.Confidence.Value is > 0.5 and < 1.0 && groups.Count(g => g.Speaks(observation)) > 1)
                {
                    _doubted.Add((node, i));
                }
            }
        }

        Decide(clashes);
    }

    public double LogLikelihood { get; private set; }

    /// <summary>Gets what went wrong in checking clashes.</summary>
    public List<string> Complaints { get; } = [];

    public IEnumerable<TwinNode> Nodes => _nodes;

    /// <summary>Gets the weights of two animals' states together at each group; they sum to 1. An animal with itself: its own.</summary>
    public Dictionary<(TwinGroup Group, TwinNode First, TwinNode Second), double[,]> Joint { get; } = [];

    public bool IsCounted(TwinNode node, Observation observation) =>
        node.IsFounder || _groups.Any(g => g.IsChanceTold(observation) && _cut.Contains((node, g)));

    public bool IsChance(Observation observation) => _groups.Any(g => g.IsChanceTold(observation));

    private void Decide(Queue<ClashingRecords> clashes)
    {
        while (true)
        {
            var possible = Sum(_groups);
            if (possible.Any(p => p))
            {
                if (!CutToLabels())
                {
                    return;
                }

                continue;
            }

            // Only what cannot be gets more room: the first group that cannot by itself, else those that a choice or a doubt ties.
            var narrow = Array.Find(_groups, g => !Sum([g]).Any(p => p));
            var tied = narrow is not null ? [narrow] : _groups.Where(g => Sum([g]).Any(p => !p)).ToArray();
            if (tied.Aggregate(false, (isNew, g) => _raised.Add(g) | isNew))
            {
                continue;
            }

            var cut = _cut.Where(c => tied.Contains(c.Group)).ToArray();
            if (cut.Length > 0)
            {
                _uncut.UnionWith(cut);
                _cut.ExceptWith(cut);
                continue;
            }

            if (!clashes.TryDequeue(out var clash))
            {
                Complaints.Add("No clash was found where there is one.");
                return;
            }

            Check(clash);
            if (!clash.Records.Aggregate(false, (isNew, r) => _soft.Add(r) | isNew))
            {
                Complaints.Add("A clash was found twice.");
                return;
            }
        }
    }

    // The records clash, and without any one of them they do not.
    private void Check(ClashingRecords clash)
    {
        var (raised, soft) = (_raised.ToArray(), _soft.ToArray());
        _raised.UnionWith(_groups);
        _soft.Clear();
        var groups = _groups.Where(g => clash.Groups.Contains(g.Group)).ToArray();
        _counts = clash.Records.Contains;
        _isAtItsWord = true;
        if (Sum(groups).Any(p => p))
        {
            Complaints.Add($"These do not clash: {string.Join(' ', clash.Records)}");
        }

        foreach (var spare in clash.Records)
        {
            _counts = r => r != spare && clash.Records.Contains(r);
            if (!Sum(groups).Any(p => p))
            {
                Complaints.Add($"They clash without {spare} as well: {string.Join(' ', clash.Records)}");
            }
        }

        _counts = _ => true;
        _isAtItsWord = false;
        _raised.Clear();
        _raised.UnionWith(raised);
        _soft.UnionWith(soft);
    }

    private bool CutToLabels()
    {
        var found = false;
        foreach (var group in _groups)
        {
            var waiting = new HashSet<TwinNode>();
            foreach (var node in _nodes)
            {
                if (node.Parents.Any(waiting.Contains))
                {
                    waiting.Add(node);
                }
                else if (!node.IsFounder && !_cut.Contains((node, group)) && !_uncut.Contains((node, group)) && Chance(node, group) is { } said)
                {
                    var own = Own(group, node);
                    var carries = own.Where((_, s) => group.Carries(s, said)).Sum();
                    var agrees = own.Where((_, s) => group.Chances(said)[s] > 0.0).Sum();
                    if (agrees > 1e-9 && (node.IsHalfKnown ? carries < 1.0 - 1e-9 : carries <= 1e-9))
                    {
                        _cut.Add((node, group));
                        waiting.Add(node);
                        found = true;
                    }
                }
            }
        }

        return found;
    }

    // The possible het told of an animal, where nothing is said for certain.
    private static Observation.Said? Chance(TwinNode node, TwinGroup group)
    {
        var said = (node.Record?.Observations ?? []).OfType<Observation.Said>().Where(group.Speaks).ToArray();
        return said.All(group.IsChanceTold) ? said.FirstOrDefault() : null;
    }

    public double[] Own(TwinGroup group, TwinNode node)
    {
        var joint = Joint[(group, node, node)];
        return [.. Enumerable.Range(0, group.States.Count).Select(s => joint[s, s])];
    }

    // Fills in the joint weights; says for each case of choices and doubts whether it is possible.
    private List<bool> Sum(TwinGroup[] groups)
    {
        Joint.Clear();
        var sums = new Dictionary<(TwinGroup, TwinNode, TwinNode), double[,]>();
        var total = 0.0;
        var possible = new List<bool>();
        foreach (var (males, rights, weight) in Cases(groups))
        {
            var parts = groups.Select(g => new TwinSum(_nodes, g, n => Prior(g, n, rights), n => Likelihood(g, n, rights), males, n => IsCut(n, g))).ToArray();
            var whole = parts.Aggregate(weight, (p, s) => p * s.Total);
            possible.Add(whole > 0.0);
            total += whole;
            foreach (var part in parts.Where(_ => whole > 0.0))
            {
                foreach (var (pair, joint) in part.Joint)
                {
                    var key = (part.Group, pair.First, pair.Second);
                    if (!sums.TryGetValue(key, out var sum))
                    {
                        sums.Add(key, sum = new double[joint.GetLength(0), joint.GetLength(1)]);
                    }

                    for (var x = 0; x < joint.GetLength(0); x++)
                    {
                        for (var y = 0; y < joint.GetLength(1); y++)
                        {
                            sum[x, y] += whole / part.Total * joint[x, y];
                        }
                    }
                }
            }
        }

        foreach (var (key, sum) in sums)
        {
            Joint[key] = sum;
            for (var x = 0; x < sum.GetLength(0); x++)
            {
                for (var y = 0; y < sum.GetLength(1); y++)
                {
                    sum[x, y] /= total;
                }
            }
        }

        LogLikelihood = Math.Log(total);
        return possible;
    }

    // Every choice of sires, and every doubted record right or wrong.
    private List<(Dictionary<int, int> Males, Dictionary<(TwinNode Node, int Index), bool> Rights, double Weight)> Cases(TwinGroup[] groups)
    {
        var cases = new List<(Dictionary<int, int> Males, Dictionary<(TwinNode Node, int Index), bool> Rights, double Weight)> { ([], [], 1.0) };
        foreach (var (choice, chances) in _choices)
        {
            cases = [.. cases.SelectMany(_ => Enumerable.Range(0, chances.Count), (c, m) =>
                (new Dictionary<int, int>(c.Males) { [choice] = m }, c.Rights, c.Weight * chances[m]))];
        }

        foreach (var (node, index) in _doubted)
        {
            if (_isAtItsWord || _soft.Contains(new(node.Record!.Key, index)) || !groups.Any(g => IsWeighed(g, node, index)))
            {
                continue;
            }

            var sure = node.Record.Observations[index].Confidence.Value;
            var isStart = groups.Any(g => (node.IsFounder || IsCut(node, g)) && StartAt(g, node) == index);
            var right = isStart ? sure : (2.0 * sure) - 1.0;
            cases = [.. cases.SelectMany(_ => new[] { true, false }, (c, r) =>
                (c.Males, new Dictionary<(TwinNode, int), bool>(c.Rights) { [(node, index)] = r }, c.Weight * (r ? right : 1.0 - sure)))];
        }

        return cases;
    }

    private bool IsCut(TwinNode node, TwinGroup group) => _cut.Contains((node, group));

    // The record a founder starts from; -1: none.
    private int StartAt(TwinGroup group, TwinNode node)
    {
        var records = node.Record!.Observations;
        int[] counted = [.. Enumerable.Range(0, records.Count).Where(i => _counts(new(node.Record.Key, i)))];
        if (counted.FirstOrDefault(i => records[i] is Observation.Said && group.Speaks(records[i]), -1) is var said and >= 0)
        {
            return said;
        }

        var seen = counted.FirstOrDefault(i => records[i] is Observation.Seen s && s.Reading[group.Group].Any(w => w.Value != default), -1);
        return seen >= 0 && group.FromLook((Observation.Seen)records[seen], node.Sex) is not null ? seen : -1;
    }

    private double[] Prior(TwinGroup group, TwinNode node, Dictionary<(TwinNode Node, int Index), bool> rights)
    {
        var isRaised = _raised.Contains(group);
        if (node.Record is not { } record)
        {
            return isRaised ? group.AsNeeded(node.Sex) : group.AtRandom(node.Sex, (locus, allele) => node.Young.Any(y => Brings(group, y, locus, allele)));
        }

        var random = isRaised ? group.AsNeeded(node.Sex) : group.AtRandom(node.Sex, (_, _) => false);
        var at = StartAt(group, node);
        if (at < 0)
        {
            var test = record.Observations.Where((_, i) => _counts(new(record.Key, i))).OfType<Observation.DnaTest>()
                .FirstOrDefault(t => t.Copies > 0 && t.Allele.Locus.Group == group.Group);
            return test is null || group.BeforeTest(test, node.Sex) is not { } before ? random
                : isRaised ? [.. before.Select((w, s) => w > 0.0 ? w : random[s])] : before;
        }

        double[] start;
        if (record.Observations[at] is Observation.Seen seen)
        {
            start = group.FromLook(seen, node.Sex)!;
            if (isRaised)
            {
                start = [.. random.Select((w, s) => w * group.RightlyRead(seen)[s])];
                start = [.. start.Select(w => w / start.Sum())];
            }
        }
        else
        {
            start = group.FromWords(((Observation.Said)record.Observations[at]).Reading, node.Sex);
        }

        var place = new RecordPlace(record.Key, at);
        if (rights.TryGetValue((node, at), out var isRight))
        {
            return isRight ? start : random;
        }

        var sure = Sure(record.Observations[at]);
        var doubted = Mixed(sure, start, 1.0 - sure, random);
        return _soft.Contains(place)
            ? Mixed(1.0 - Soft(record.Observations[at]), doubted, Soft(record.Observations[at]), group.AsNeeded(node.Sex))
            : doubted;
    }

    private double[] Likelihood(TwinGroup group, TwinNode node, Dictionary<(TwinNode Node, int Index), bool> rights)
    {
        var chances = Enumerable.Repeat(1.0, group.States.Count).ToArray();
        var isStarted = node.IsFounder || IsCut(node, group);
        for (var i = 0; i < (node.Record?.Observations.Count ?? 0); i++)
        {
            var (observation, place) = (node.Record!.Observations[i], new RecordPlace(node.Record.Key, i));
            if (!_counts(place) || !IsWeighed(group, node, i) || (isStarted && StartAt(group, node) == i))
            {
                continue;
            }

            var sure = Sure(observation);
            var own = group.Chances(observation);
            for (var s = 0; s < chances.Length; s++)
            {
                var doubted = (sure * own[s]) + ((1.0 - sure) * (1.0 - own[s]));
                chances[s] *= _soft.Contains(place) ? ((1.0 - Soft(observation)) * doubted) + Soft(observation)
                    : rights.TryGetValue((node, i), out var isRight) ? isRight ? own[s] : 1.0
                    : doubted;
            }
        }

        return chances;
    }

    // A possible het told of an animal that has parents is a start or nothing.
    private bool IsWeighed(TwinGroup group, TwinNode node, int index) => group.Speaks(node.Record!.Observations[index])
        && (node.IsFounder || IsCut(node, group) || !group.IsChanceTold(node.Record.Observations[index]));

    // Whether a young's records speak of an allele, so that a parent that is not recorded may have brought it.
    private bool Brings(TwinGroup group, TwinNode young, Locus locus, int allele) => young.Record!.Observations
        .Where((_, i) => _counts(new(young.Record.Key, i)))
        .Any(o => o switch
        {
            Observation.Seen seen => TwinGroup.Names(seen.Reading, locus, allele),
            Observation.Said said => !group.IsChanceTold(said) && TwinGroup.Names(said.Reading, locus, allele),
            Observation.DnaTest test => test.Copies > 0 && test.Allele == locus.Alleles[allele],
            _ => false,
        });

    private double Sure(Observation observation) => _isAtItsWord ? 1.0 : observation.Confidence.Value;

    private static double Soft(Observation observation) =>
        observation is Observation.Said { Basis: StatementBasis.Told } ? Tiny * Tiny / 2.0 : Tiny * Tiny / 2.0 / (1L << 44);

    private static double[] Mixed(double first, double[] a, double second, double[] b) => [.. a.Select((w, s) => (first * w) + (second * b[s]))];
}
