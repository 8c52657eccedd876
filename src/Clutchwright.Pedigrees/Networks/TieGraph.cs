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

    /// <summary>Whether a variable has not been removed.</summary>
    public bool IsAlive(int v) => (_alive[v >> 6] & (1UL << v)) != 0;

    /// <summary>The same graph, to be changed apart.</summary>
    public TieGraph Copy() => new(this);

    /// <summary>The part of the graph over some variables, renumbered in their order.</summary>
    public TieGraph Restrict(int[] kept)
    {
        var part = new TieGraph(kept.Length);
        for (var i = 0; i < kept.Length; i++)
        {
            for (var j = i + 1; j < kept.Length; j++)
            {
                if (IsTied(kept[i], kept[j]))
                {
                    part.Tie(i, j);
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

    /// <summary>Ties every two of some variables, a row at a time.</summary>
    public void TieNeighbours(List<int> variables)
    {
        Span<ulong> all = Words <= 64 ? stackalloc ulong[Words] : new ulong[Words];
        all.Clear();
        foreach (var v in variables)
        {
            all[v >> 6] |= 1UL << v;
        }

        foreach (var v in variables)
        {
            var row = Row(v);
            for (var w = 0; w < row.Length; w++)
            {
                row[w] |= all[w];
            }

            row[v >> 6] &= ~(1UL << v);
        }
    }

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

    /// <summary>Whether every two of some variables are tied.</summary>
    public bool IsComplete(List<int> variables)
    {
        for (var i = 0; i < variables.Count; i++)
        {
            for (var j = i + 1; j < variables.Count; j++)
            {
                if (!IsTied(variables[i], variables[j]))
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>How many pairs of some variables are not tied.</summary>
    public int MissingTies(List<int> variables)
    {
        Span<ulong> all = Words <= 64 ? stackalloc ulong[Words] : new ulong[Words];
        all.Clear();
        foreach (var v in variables)
        {
            all[v >> 6] |= 1UL << v;
        }

        var missing = 0;
        foreach (var v in variables)
        {
            var row = Row(v);
            for (var w = 0; w < row.Length; w++)
            {
                missing += BitOperations.PopCount(all[w] & ~row[w]);
            }
        }

        return (missing - variables.Count) / 2;
    }

    /// <summary>The sum, over pairs that are not tied, of the product of their weights.</summary>
    public double MissingWeight(List<int> variables, double[] weights)
    {
        var sum = 0.0;
        for (var i = 0; i < variables.Count; i++)
        {
            for (var j = i + 1; j < variables.Count; j++)
            {
                if (!IsTied(variables[i], variables[j]))
                {
                    sum += weights[variables[i]] * weights[variables[j]];
                }
            }
        }

        return sum;
    }

    /// <summary>Takes a variable out.</summary>
    /// <param name="v">The variable.</param>
    /// <param name="neighbours">Its neighbours.</param>
    public void Remove(int v, List<int> neighbours)
    {
        foreach (var u in neighbours)
        {
            Row(u)[v >> 6] &= ~(1UL << v);
        }

        Row(v).Clear();
        _alive[v >> 6] &= ~(1UL << v);
    }

    private void Tie(int u, int v)
    {
        Row(u)[v >> 6] |= 1UL << v;
        Row(v)[u >> 6] |= 1UL << u;
    }

    private bool IsTied(int u, int v) => (Row(u)[v >> 6] & (1UL << v)) != 0;

    private Span<ulong> Row(int v) => _rows.AsSpan(v * Words, Words);
}
