using System.Numerics;

namespace Clutchwright.Pedigrees.Kinship;

/// <summary>The kinship of one node with many: its shares are followed up to its ancestors, weighed with what is each ancestor's own,
/// and handed down to the others. Not for several threads at a time.</summary>
/// <remarks>Source: docs/references.md [Colleau2002], on the ancestors concerned only.</remarks>
internal sealed class ColleauPass
{
    private readonly DescentGraph _graph;
    private readonly double[] _rest;
    private readonly int[] _columns;
    private readonly int[] _downward;
    private readonly double[] _shares;
    private readonly double[] _kinships;
    private readonly ulong[] _waiting;

    public ColleauPass(DescentGraph graph, double[] rest, int[] columns)
    {
        _graph = graph;
        _rest = rest;
        _columns = columns;
        _downward = AncestorsOf(graph, columns);
        _shares = new double[graph.Count];
        _kinships = new double[graph.Count];
        _waiting = new ulong[(graph.Count + 63) / 64];
    }

    /// <summary>Some nodes and all their ancestors, parents first.</summary>
    public static int[] AncestorsOf(DescentGraph graph, IReadOnlyList<int> nodes)
    {
        var found = new bool[graph.Count];
        var top = -1;
        foreach (var node in nodes)
        {
            found[node] = true;
            top = Math.Max(top, node);
        }

        var ancestors = new List<int>();
        for (var node = top; node >= 0; node--)
        {
            if (!found[node])
            {
                continue;
            }

            ancestors.Add(node);
            foreach (var parent in ParentsOf(graph, node))
            {
                found[parent] = true;
            }
        }

        ancestors.Reverse();
        return [.. ancestors];
    }

    /// <summary>The nodes that a node draws from.</summary>
    public static IReadOnlyList<int> ParentsOf(DescentGraph graph, int node) => (graph.First[node], graph.Second[node]) switch
    {
        (DescentGraph.None, _) => [],
        ( < DescentGraph.None and var draw, _) => graph.DrawOf(draw).From,
        (var first, DescentGraph.None) => [first],
        var (first, second) => [first, second],
    };

    /// <returns>The kinships with the columns, in their order.</returns>
    public double[] Row(int node)
    {
        var touched = Up(node);
        foreach (var at in _downward)
        {
            var first = _graph.First[at];
            var kinship = _shares[at] * _rest[at];
            if (first >= 0)
            {
                kinship += _kinships[first] / 2.0;
                if (_graph.Second[at] >= 0)
                {
                    kinship += _kinships[_graph.Second[at]] / 2.0;
                }
            }
            else if (first < DescentGraph.None)
            {
                var draw = _graph.DrawOf(first);
                for (var i = 0; i < draw.From.Length; i++)
                {
                    kinship += _kinships[draw.From[i]] * draw.Weights[i];
                }
            }

            _kinships[at] = kinship;
        }

        foreach (var at in touched)
        {
            _shares[at] = 0.0;
        }

        return Array.ConvertAll(_columns, column => _kinships[column]);
    }

    private List<int> Up(int node)
    {
        var touched = new List<int>();
        Put(node, 1.0);
        for (var word = node >> 6; word >= 0; word--)
        {
            while (_waiting[word] != 0)
            {
                var bit = 63 - BitOperations.LeadingZeroCount(_waiting[word]);
                _waiting[word] &= ~(1UL << bit);
                var at = (word << 6) | bit;
                touched.Add(at);
                var first = _graph.First[at];
                if (first >= 0)
                {
                    Put(first, _shares[at] / 2.0);
                    if (_graph.Second[at] >= 0)
                    {
                        Put(_graph.Second[at], _shares[at] / 2.0);
                    }
                }
                else if (first < DescentGraph.None)
                {
                    var draw = _graph.DrawOf(first);
                    for (var i = 0; i < draw.From.Length; i++)
                    {
                        Put(draw.From[i], _shares[at] * draw.Weights[i]);
                    }
                }
            }
        }

        return touched;
    }

    private void Put(int node, double share)
    {
        _shares[node] += share;
        _waiting[node >> 6] |= 1UL << (node & 63);
    }
}
