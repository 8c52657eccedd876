namespace Clutchwright.Pedigrees.Beliefs.Explanations;

/// <summary>Puts records into steps, those of near kin first.</summary>
/// <remarks>Up to a parent counts a little less than over to a mate, and that less than down to young, so that parents come before mates and a mate before
/// the clutch, which tells more once it is known whose it is.</remarks>
internal sealed class KinOrder
{
    private const int Up = 4;
    private const int Over = 5;
    private const int Down = 6;
    private readonly PedigreeFrame _frame;
    private readonly int _node;
    private readonly Dictionary<string, int> _nodes = new(StringComparer.Ordinal);
    private readonly int[] _distances;
    private readonly bool[] _isSingle;

    public KinOrder(PedigreeFrame frame, int node)
    {
        _frame = frame;
        _node = node;
        for (var n = 0; n < frame.RecordedCount; n++)
        {
            _nodes.TryAdd(frame.Records[n]!.Key, n);
        }

        _distances = Distances();
        _isSingle = new bool[frame.Count];
        var open = new Stack<int>([node]);
        while (open.TryPop(out var n))
        {
            foreach (var parent in ParentsOf(n).Where(p => !_isSingle[p]))
            {
                _isSingle[parent] = true;
                open.Push(parent);
            }
        }

        for (var n = 0; n < frame.Count; n++)
        {
            if (frame.IsFounder(n))
            {
                _isSingle[n] = true;
            }
            else if (ParentsOf(n).Contains(node))
            {
                foreach (var mate in ParentsOf(n))
                {
                    _isSingle[mate] = true;
                }
            }
        }
    }

    /// <summary>The steps in order.</summary>
    public IReadOnlyList<(StepKind Kind, RecordPlace[] Records)> Group(IReadOnlyList<RecordPlace> records) =>
        [.. records
            .GroupBy(StepOf)
            .Select(g => (g.Key, Records: g.OrderBy(r => _nodes[r.Key]).ThenBy(r => r.Index).ToArray()))
            .OrderBy(g => g.Records.Min(r => _distances[_nodes[r.Key]]))
            .ThenBy(g => g.Key.Kind)
            .ThenBy(g => _frame.Records[_nodes[g.Records[0].Key]]!.Clutch, StringComparer.Ordinal)
            .ThenBy(g => _nodes[g.Records[0].Key])
            .ThenBy(g => g.Records[0].Index)
            .Select(g => (g.Key.Kind, g.Records))];

    private (StepKind Kind, string Step) StepOf(RecordPlace place)
    {
        var node = _nodes[place.Key];
        if (node == _node)
        {
            return (StepKind.Own, $"{place.Index}");
        }

        var record = _frame.Records[node]!;
        return _isSingle[node]
            ? (StepKind.Kin, place.Key)
            : (StepKind.Clutch, $"{record.Sire}\u0001{record.Dam}\u0001{string.Join('\u0002', record.PossibleSires)}\u0001{record.Clutch}");
    }

    private IEnumerable<int> ParentsOf(int node)
    {
        if (_frame.Sires[node] >= 0)
        {
            yield return _frame.Sires[node];
        }

        foreach (var male in _frame.PossibleSires[node])
        {
            yield return male;
        }

        if (_frame.Dams[node] >= 0)
        {
            yield return _frame.Dams[node];
        }
    }

    private int[] Distances()
    {
        var steps = new List<(int To, int Length)>[_frame.Count];
        for (var n = 0; n < _frame.Count; n++)
        {
            steps[n] = [];
        }

        for (var n = 0; n < _frame.Count; n++)
        {
            int[] parents = [.. ParentsOf(n)];
            foreach (var parent in parents)
            {
                steps[n].Add((parent, Up));
                steps[parent].Add((n, Down));
                foreach (var mate in parents.Where(p => p != parent))
                {
                    steps[parent].Add((mate, Over));
                }
            }
        }

        var distances = new int[_frame.Count];
        Array.Fill(distances, int.MaxValue);
        distances[_node] = 0;
        var queue = new PriorityQueue<int, int>([(_node, 0)]);
        while (queue.TryDequeue(out var n, out var length))
        {
            if (length > distances[n])
            {
                continue;
            }

            foreach (var (to, more) in steps[n])
            {
                if (length + more < distances[to])
                {
                    distances[to] = length + more;
                    queue.Enqueue(to, length + more);
                }
            }
        }

        return distances;
    }
}
