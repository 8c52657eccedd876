using System.Numerics;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>What every animal can be at one linkage group, and with which weight by its own records: the part of the network before anything is summed.</summary>
internal sealed class GroupNetwork
{
    private readonly PedigreeFrame _frame;
    private readonly bool[] _allowed;

    /// <summary>Starts from weights by node and state; states of weight 0 are not possible.</summary>
    public GroupNetwork(PedigreeFrame frame, StateSpace space, int[] sires, int[] dams, int[][] possibleSires, double[][] weights)
    {
        _frame = frame;
        Space = space;
        Sires = sires;
        Dams = dams;
        PossibleSires = possibleSires;
        Weights = weights;
        var n = space.Count;
        _allowed = new bool[frame.Count * n];
        for (var node = 0; node < frame.Count; node++)
        {
            for (var s = 0; s < n; s++)
            {
                _allowed[(node * n) + s] = weights[node][s] > 0.0;
            }
        }

        States = new int[frame.Count][];
    }

    /// <summary>Gets the states that can be.</summary>
    public StateSpace Space { get; }

    /// <summary>Gets the sires at this group; an animal taken by its label only has none.</summary>
    public int[] Sires { get; }

    /// <summary>Gets the dams at this group.</summary>
    public int[] Dams { get; }

    /// <summary>Gets the possible sires at this group.</summary>
    public int[][] PossibleSires { get; }

    /// <summary>Gets the weights by node and state.</summary>
    public double[][] Weights { get; }

    /// <summary>Gets the states each node can have once <see cref="Reduce"/> has run.</summary>
    public int[][] States { get; }

    /// <summary>Gets the node of a family whose records cannot all be true; -1 where none was met.</summary>
    public int ClashAt { get; private set; } = -1;

    /// <summary>Leaves out, family by family until nothing changes, what a parent or young of the family cannot be.</summary>
    /// <returns>Whether something is left for everyone.</returns>
    /// <remarks>Source: docs/references.md [LangeGoradia1987].</remarks>
    public bool Reduce()
    {
        var index = ReferenceEquals(Sires, _frame.Sires) ? _frame.Families : FamilyIndex.Of(Sires, Dams, PossibleSires);
        var families = index.Families;
        var isQueued = new bool[families.Count];
        var queue = new Queue<int>();
        for (var f = 0; f < families.Count; f++)
        {
            queue.Enqueue(f);
            isQueued[f] = true;
        }

        while (queue.TryDequeue(out var f))
        {
            isQueued[f] = false;
            var changed = ReduceFamily(families[f]);
            if (changed is null)
            {
                ClashAt = families[f].Young[0];
                return false;
            }

            foreach (var node in changed)
            {
                foreach (var other in index.OfNode[node])
                {
                    if (other != f && !isQueued[other])
                    {
                        isQueued[other] = true;
                        queue.Enqueue(other);
                    }
                }
            }
        }

        for (var node = 0; node < _frame.Count; node++)
        {
            States[node] = ListOf(node);
            if (States[node].Length == 0)
            {
                ClashAt = node;
                return false;
            }
        }

        return true;
    }

    private int[] ListOf(int node)
    {
        var n = Space.Count;
        var count = 0;
        for (var s = 0; s < n; s++)
        {
            count += _allowed[(node * n) + s] ? 1 : 0;
        }

        var list = new int[count];
        var at = 0;
        for (var s = 0; s < n; s++)
        {
            if (_allowed[(node * n) + s])
            {
                list[at++] = s;
            }
        }

        return list;
    }

    // The members that lost a state; null where nothing is left.
    private List<int>? ReduceFamily(Family family)
    {
        if (Space.Young is { } possible)
        {
            return ReduceByBits(family, possible);
        }

        var n = Space.Count;
        var dams = ListOf(family.Dam);
        var young = family.Young;
        var kept = new bool[(young.Count + family.Sires.Length + 1) * n];
        var damRow = (young.Count + family.Sires.Length) * n;
        var mark = new bool[young.Count * n];
        for (var i = 0; i < family.Sires.Length; i++)
        {
            foreach (var s in ListOf(family.Sires[i]))
            {
                foreach (var d in dams)
                {
                    if (!TryPair(young, s, d, mark))
                    {
                        continue;
                    }

                    kept[((young.Count + i) * n) + s] = true;
                    kept[damRow + d] = true;
                    for (var k = 0; k < mark.Length; k++)
                    {
                        kept[k] |= mark[k];
                    }
                }
            }
        }

        var changed = new List<int>();
        for (var y = 0; y < young.Count; y++)
        {
            if (!Keep(young[y], kept.AsSpan(y * n, n), changed))
            {
                return null;
            }
        }

        // One sire of several is ruled out only as the sire, not in what he is.
        if (family.Sires.Length == 1 && !Keep(family.Sires[0], kept.AsSpan(young.Count * n, n), changed))
        {
            return null;
        }

        return Keep(family.Dam, kept.AsSpan(damRow, n), changed) ? changed : null;
    }

    // The same where the states of an animal fit a word.
    private List<int>? ReduceByBits(Family family, ulong[] possible)
    {
        var n = Space.Count;
        var young = family.Young;
        Span<ulong> allowed = young.Count <= 256 ? stackalloc ulong[young.Count] : new ulong[young.Count];
        Span<ulong> kept = young.Count <= 256 ? stackalloc ulong[young.Count] : new ulong[young.Count];
        Span<ulong> sires = family.Sires.Length <= 64 ? stackalloc ulong[family.Sires.Length] : new ulong[family.Sires.Length];
        kept.Clear();
        sires.Clear();
        for (var y = 0; y < allowed.Length; y++)
        {
            allowed[y] = BitsOf(young[y]);
        }

        var (ofDam, damKept) = (BitsOf(family.Dam), 0UL);
        for (var i = 0; i < sires.Length; i++)
        {
            for (var ofSire = BitsOf(family.Sires[i]); ofSire != 0; ofSire &= ofSire - 1)
            {
                for (var rest = ofDam; rest != 0; rest &= rest - 1)
                {
                    var (s, d) = (BitOperations.TrailingZeroCount(ofSire), BitOperations.TrailingZeroCount(rest));
                    var children = possible[(s * n) + d];
                    var y = 0;
                    while (y < allowed.Length && (allowed[y] & children) != 0)
                    {
                        y++;
                    }

                    if (y < allowed.Length)
                    {
                        continue;
                    }

                    sires[i] |= 1UL << s;
                    damKept |= 1UL << d;
                    for (y = 0; y < allowed.Length; y++)
                    {
                        kept[y] |= allowed[y] & children;
                    }
                }
            }
        }

        var changed = new List<int>();
        for (var y = 0; y < allowed.Length; y++)
        {
            if (!Keep(young[y], allowed[y], kept[y], changed))
            {
                return null;
            }
        }

        // One sire of several is ruled out only as the sire, not in what he is.
        if (sires.Length == 1 && !Keep(family.Sires[0], BitsOf(family.Sires[0]), sires[0], changed))
        {
            return null;
        }

        return Keep(family.Dam, ofDam, damKept, changed) ? changed : null;
    }

    private ulong BitsOf(int node)
    {
        var n = Space.Count;
        var bits = 0UL;
        for (var s = 0; s < n; s++)
        {
            bits |= _allowed[(node * n) + s] ? 1UL << s : 0UL;
        }

        return bits;
    }

    private bool Keep(int node, ulong allowed, ulong kept, List<int> changed)
    {
        if (allowed != kept)
        {
            changed.Add(node);
            for (var lost = allowed & ~kept; lost != 0; lost &= lost - 1)
            {
                _allowed[(node * Space.Count) + BitOperations.TrailingZeroCount(lost)] = false;
            }
        }

        return kept != 0;
    }

    private bool TryPair(List<int> young, int sire, int dam, bool[] mark)
    {
        Array.Clear(mark);
        var n = Space.Count;
        var (ofSire, ofDam) = (Space.Gametes[sire], Space.Gametes[dam]);
        for (var y = 0; y < young.Count; y++)
        {
            var found = false;
            foreach (var a in ofSire)
            {
                foreach (var b in ofDam)
                {
                    var child = Space.Child(a, b);
                    if (child >= 0 && _allowed[(young[y] * n) + child])
                    {
                        mark[(y * n) + child] = true;
                        found = true;
                    }
                }
            }

            if (!found)
            {
                return false;
            }
        }

        return true;
    }

    private bool Keep(int node, ReadOnlySpan<bool> kept, List<int> changed)
    {
        var n = Space.Count;
        var own = _allowed.AsSpan(node * n, n);
        var (any, lost) = (false, false);
        for (var s = 0; s < n; s++)
        {
            if (own[s] && !kept[s])
            {
                own[s] = false;
                lost = true;
            }

            any |= own[s];
        }

        if (lost)
        {
            changed.Add(node);
        }

        return any;
    }
}
