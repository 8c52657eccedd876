using System.Numerics;

namespace Clutchwright.Pedigrees.Networks;

/// <summary>Which variables stand in a table together, as rows of bits.</summary>
internal sealed class TieGraph
{
    private readonly int _count;
    private readonly ulong[] _rows;
    private readonly ulong[] _alive;

    /// <summary>Makes a graph without ties.</summary>
    public TieGraph(int count)
    {
        _count = count;
        Words = (count + 63) >> 6;
        _rows = new ulong[(long)count * Words];
        _alive = new ulong[Words];
        for (var v = 0; v < count; v++)
        {
            _alive[v >> 6] |= 1UL << v;
        }
    }

    private TieGraph(TieGraph other)
    {
        _count = other._count;
        Words = other.Words;
        _rows = (ulong[])other._rows.Clone();
        _alive = (ulong[])other._alive.Clone();
    }

    /// <summary>Gets how many words a row has.</summary>
    public int Words { get; }

    /// <summary>Gets how many variables have not been removed.</summary>
    public int AliveCount => _alive.Sum(BitOperations.PopCount);

    /// <summary>Whether a variable has not been removed.</summary>
    public bool IsAlive(int v) => (_alive[v >> 6] & (1UL << v)) != 0;

    /// <summary>The same graph, to be changed apart.</summary>
    public TieGraph Copy() => new(this);

    /// <summary>The part of the graph over some variables, renumbered in their order.</summary>
    public TieGraph Restrict(int[] kept)
    {
        var place = new int[_count];
        for (var i = 0; i < kept.Length; i++)
        {
            place[kept[i]] = i;
        }

        var part = new TieGraph(kept.Length);
        var isKept = new ulong[Words];
        foreach (var v in kept)
        {
            isKept[v >> 6] |= 1UL << v;
        }

        for (var i = 0; i < kept.Length; i++)
        {
            var row = Row(kept[i]);
            for (var word = 0; word < row.Length; word++)
            {
                for (var bits = row[word] & isKept[word]; bits != 0; bits &= bits - 1)
                {
                    part.Tie(i, place[(word << 6) + BitOperations.TrailingZeroCount(bits)]);
                }
            }
        }

        return part;
    }

    /// <summary>Ties every two of some variables.</summary>
    public void TieAll(IReadOnlyList<int> variables)
    {
        for (var i = 0; i < variables.Count; i++)
        {
            for (var j = i + 1; j < variables.Count; j++)
            {
                Tie(variables[i], variables[j]);
            }
        }
    }

    /// <summary>The variables that one is tied to, as bits.</summary>
    public Span<ulong> Row(int v) => _rows.AsSpan(v * Words, Words);

    /// <summary>Reads the neighbours of a variable into a list, which is emptied first.</summary>
    public void ReadNeighbours(int v, List<int> neighbours)
    {
        neighbours.Clear();
        var row = Row(v);
        for (var w = 0; w < row.Length; w++)
        {
            for (var bits = row[w]; bits != 0; bits &= bits - 1)
            {
                neighbours.Add((w << 6) + BitOperations.TrailingZeroCount(bits));
            }
        }
    }

    /// <summary>Adds the neighbours of a variable to a set of bits.</summary>
    public void AddNeighboursTo(int v, ulong[] set)
    {
        var row = Row(v);
        for (var w = 0; w < row.Length; w++)
        {
            set[w] |= row[w];
        }
    }

    /// <summary>Whether every two neighbours of a variable are tied.</summary>
    public bool IsSimplicial(int v)
    {
        var row = Row(v);
        for (var word = 0; word < row.Length; word++)
        {
            for (var bits = row[word]; bits != 0; bits &= bits - 1)
            {
                var u = (word << 6) + BitOperations.TrailingZeroCount(bits);
                var other = Row(u);
                for (var w = 0; w < other.Length; w++)
                {
                    var missing = row[w] & ~other[w];
                    if (missing != 0 && (w != word || missing != 1UL << u))
                    {
                        return false;
                    }
                }
            }
        }

        return true;
    }

    /// <summary>Takes a variable out without tying its neighbours.</summary>
    public void Drop(int v)
    {
        var row = Row(v);
        for (var word = 0; word < row.Length; word++)
        {
            for (var bits = row[word]; bits != 0; bits &= bits - 1)
            {
                var u = (word << 6) + BitOperations.TrailingZeroCount(bits);
                Row(u)[v >> 6] &= ~(1UL << v);
            }
        }

        row.Clear();
        _alive[v >> 6] &= ~(1UL << v);
    }

    /// <summary>How many pairs of a variable's neighbours are not tied.</summary>
    public int MissingTies(int v)
    {
        unchecked
        {
            var row = Row(v);
            var (missing, neighbours) = (0, 0);
            for (var word = 0; word < row.Length; word++)
            {
                for (var bits = row[word]; bits != 0; bits &= bits - 1)
                {
                    neighbours++;
                    var other = Row((word << 6) + BitOperations.TrailingZeroCount(bits));
                    for (var w = 0; w < other.Length; w++)
                    {
                        missing += BitOperations.PopCount(row[w] & ~other[w]);
                    }
                }
            }

            // Each pair was met from both ends, and each neighbour is not tied to itself.
            return (missing - neighbours) / 2;
        }
    }

    /// <summary>The sum, over pairs of a variable's neighbours that are not tied, of the product of their weights.</summary>
    public double MissingWeight(int v, double[] weights)
    {
        var sum = 0.0;
        var row = Row(v);
        for (var word = 0; word < row.Length; word++)
        {
            for (var bits = row[word]; bits != 0; bits &= bits - 1)
            {
                var u = (word << 6) + BitOperations.TrailingZeroCount(bits);
                var other = Row(u);
                var missing = 0.0;
                for (var w = 0; w < other.Length; w++)
                {
                    for (var rest = row[w] & ~other[w]; rest != 0; rest &= rest - 1)
                    {
                        var t = (w << 6) + BitOperations.TrailingZeroCount(rest);
                        missing += t == u ? 0.0 : weights[t];
                    }
                }

                sum += weights[u] * missing;
            }
        }

        return sum / 2.0;
    }

    /// <summary>How many of a set of variables one is tied to.</summary>
    public int CommonTies(int v, ReadOnlySpan<ulong> set)
    {
        var common = 0;
        var row = Row(v);
        for (var w = 0; w < row.Length; w++)
        {
            common += BitOperations.PopCount(row[w] & set[w]);
        }

        return common;
    }

    /// <summary>Ties all neighbours of a variable to each other and takes it out.</summary>
    public void Eliminate(int v)
    {
        var row = Row(v);
        for (var word = 0; word < row.Length; word++)
        {
            for (var bits = row[word]; bits != 0; bits &= bits - 1)
            {
                var u = (word << 6) + BitOperations.TrailingZeroCount(bits);
                var other = Row(u);
                for (var w = 0; w < other.Length; w++)
                {
                    other[w] |= row[w];
                }

                other[u >> 6] &= ~(1UL << u);
                other[v >> 6] &= ~(1UL << v);
            }
        }

        row.Clear();
        _alive[v >> 6] &= ~(1UL << v);
    }

    private void Tie(int u, int v)
    {
        Row(u)[v >> 6] |= 1UL << v;
        Row(v)[u >> 6] |= 1UL << u;
    }

    private bool IsTied(int u, int v) => (Row(u)[v >> 6] & (1UL << v)) != 0;
}
