using System.Numerics;

namespace Clutchwright.Pedigrees.Kinship;

/// <summary>Follows the ancestors of two nodes, youngest first. Not for several threads at a time.</summary>
internal sealed class AncestorTrace(DescentGraph graph)
{
    private readonly double[] _firstShares = new double[graph.Count];
    private readonly double[] _secondShares = new double[graph.Count];
    private readonly ulong[] _waiting = new ulong[(graph.Count + 63) / 64];

    /// <summary>The kinship of two nodes: the sum over common ancestors of the shares of both times what is the ancestor's own.</summary>
    /// <param name="first">A node.</param>
    /// <param name="second">A node.</param>
    /// <param name="rest">By node, the part of its self-kinship that is its own.</param>
    public double Kinship(int first, int second, double[] rest)
    {
        Put(first, 1.0, 0.0);
        Put(second, 0.0, 1.0);
        var sum = 0.0;
        for (var word = Math.Max(first, second) >> 6; word >= 0; word--)
        {
            while (_waiting[word] != 0)
            {
                var node = Take(word);
                var (one, other) = (_firstShares[node], _secondShares[node]);
                (_firstShares[node], _secondShares[node]) = (0.0, 0.0);
                sum += one * other * rest[node];
                var parent = graph.First[node];
                if (parent >= 0)
                {
                    Put(parent, one / 2.0, other / 2.0);
                    if (graph.Second[node] >= 0)
                    {
                        Put(graph.Second[node], one / 2.0, other / 2.0);
                    }
                }
                else if (parent < DescentGraph.None)
                {
                    var draw = graph.DrawOf(parent);
                    for (var i = 0; i < draw.From.Length; i++)
                    {
                        Put(draw.From[i], one * draw.Weights[i], other * draw.Weights[i]);
                    }
                }
            }
        }

        return sum;
    }

    private int Take(int word)
    {
        var bit = 63 - BitOperations.LeadingZeroCount(_waiting[word]);
        _waiting[word] &= ~(1UL << bit);
        return (word << 6) | bit;
    }

    private void Put(int node, double first, double second)
    {
        _firstShares[node] += first;
        _secondShares[node] += second;
        _waiting[node >> 6] |= 1UL << (node & 63);
    }
}
