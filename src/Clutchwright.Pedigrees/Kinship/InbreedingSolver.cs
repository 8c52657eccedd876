using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Clutchwright.Pedigrees.Kinship;

/// <summary>The inbreeding coefficients of every node of a graph: ancestors are traced once for each full-sib family, several families at
/// a time, each in a lane of its own.</summary>
/// <remarks>With T the shares of alleles that each node has from each ancestor and D the part of self-kinship that is a node's own, the kinships are
/// T D T'. Sources: docs/references.md [MeuwissenLuo1992], [SargolzaeiIwaisaki2005]. Where those keep ancestors waiting in sorted lists
/// or lists by path length, a bit for each node does here, read from the youngest down.</remarks>
internal sealed class InbreedingSolver
{
    private const int Lanes = 8;

    /// <summary>A kinship below this, computed as a small difference of larger numbers, is computed again without a difference.</summary>
    private const double Doubtful = 1e-12;

    private readonly DescentGraph _graph;
    private readonly int[] _first;
    private readonly int[] _second;
    private readonly double[] _lanes;
    private readonly ulong[] _waiting;
    private readonly double[] _sums = new double[Lanes];
    private AncestorTrace? _trace;

    private InbreedingSolver(DescentGraph graph)
    {
        _graph = graph;
        _first = graph.First;
        _second = graph.Second;
        _lanes = new double[graph.ParentCount * Lanes];
        _waiting = new ulong[(graph.ParentCount + 63) / 64];
        Inbreeding = new double[graph.Count];
        Rest = new double[graph.Count];
    }

    /// <summary>By node, twice the self-kinship less 1.</summary>
    public double[] Inbreeding { get; }

    /// <summary>By node, the part of its self-kinship that it does not owe to the kinship of its parents.</summary>
    public double[] Rest { get; }

    public static InbreedingSolver Solve(DescentGraph graph)
    {
        var solver = new InbreedingSolver(graph);
        var (levels, starts) = Levels.Of(graph);
        var families = Families.Of(graph);
        var tasks = new List<int>();
        for (var level = 0; level + 1 < starts.Length; level++)
        {
            tasks.Clear();
            foreach (var node in levels.AsSpan(starts[level]..starts[level + 1]))
            {
                solver.Begin(node);
                if (families[node] == node)
                {
                    tasks.Add(node);
                }
            }

            var all = CollectionsMarshal.AsSpan(tasks);
            for (var at = 0; at < all.Length; at += Lanes)
            {
                solver.Run(all[at..Math.Min(at + Lanes, all.Length)]);
            }

            foreach (var node in levels.AsSpan(starts[level]..starts[level + 1]))
            {
                if (families[node] >= 0)
                {
                    solver.Inbreeding[node] = solver.Inbreeding[families[node]];
                }
            }
        }

        return solver;
    }

    public double SelfOf(int node) => (1.0 + Inbreeding[node]) / 2.0;

    /// <summary>What is known of a node from its parents' inbreeding alone.</summary>
    private void Begin(int node)
    {
        var first = _first[node];
        if (first < DescentGraph.None)
        {
            var draw = _graph.DrawOf(first);
            if (!draw.IsChoice)
            {
                Inbreeding[node] = _graph.FounderInbreeding(node).Value;
                Rest[node] = draw.Rest;
            }
        }
        else if (first == DescentGraph.None)
        {
            Inbreeding[node] = _graph.FounderInbreeding(node).Value;
            Rest[node] = SelfOf(node);
        }
        else
        {
            Rest[node] = 0.5 - (SelfOf(first) / 4.0) - (_second[node] == DescentGraph.None ? 0.0 : SelfOf(_second[node]) / 4.0);
        }
    }

    private void Run(ReadOnlySpan<int> nodes)
    {
        var top = -1;
        for (var lane = 0; lane < nodes.Length; lane++)
        {
            var first = _first[nodes[lane]];
            if (first < DescentGraph.None)
            {
                var draw = _graph.DrawOf(first);
                for (var i = 0; i < draw.From.Length; i++)
                {
                    Put(draw.From[i], lane, draw.Weights[i], ref top);
                }
            }
            else
            {
                Put(first, lane, 0.5, ref top);
                Put(_second[nodes[lane]], lane, 0.5, ref top);
            }
        }

        Trace(top);
        for (var lane = 0; lane < nodes.Length; lane++)
        {
            Finish(nodes[lane], _sums[lane]);
        }
    }

    private void Put(int node, int lane, double share, ref int top)
    {
        _lanes[(node * Lanes) + lane] += share;
        _waiting[node >> 6] |= 1UL << (node & 63);
        top = Math.Max(top, node);
    }

    /// <param name="node">A choice, or the first of a family.</param>
    /// <param name="square">The kinship with itself of what the node draws on average.</param>
    private void Finish(int node, double square)
    {
        var first = _first[node];
        if (first < DescentGraph.None)
        {
            var draw = _graph.DrawOf(first);
            var self = 0.0;
            for (var i = 0; i < draw.From.Length; i++)
            {
                self += draw.Weights[i] * SelfOf(draw.From[i]);
            }

            Inbreeding[node] = (2.0 * self) - 1.0;
            Rest[node] = Math.Max(0.0, self - square);
        }
        else
        {
            var kinship = (2.0 * square) - ((SelfOf(first) + SelfOf(_second[node])) / 2.0);
            if (kinship != 0.0 && kinship < Doubtful)
            {
                _trace ??= new AncestorTrace(_graph);
                kinship = _trace.Kinship(first, _second[node], Rest);
            }

            Inbreeding[node] = kinship;
        }
    }

    /// <summary>Passes what waits at each node on to its parents, youngest first, and sums squares of shares times the nodes' own parts.</summary>
    private void Trace(int top)
    {
        ref var lanes = ref MemoryMarshal.GetArrayDataReference(_lanes);
        ref var waiting = ref MemoryMarshal.GetArrayDataReference(_waiting);
        ref var firsts = ref MemoryMarshal.GetArrayDataReference(_first);
        ref var seconds = ref MemoryMarshal.GetArrayDataReference(_second);
        ref var rests = ref MemoryMarshal.GetArrayDataReference(Rest);
        var sum = Vector512<double>.Zero;
        var half = Vector512.Create(0.5);
        unchecked
        {
            for (var word = (nint)(top >> 6); word >= 0; word--)
            {
                ulong bits;
                while ((bits = Unsafe.Add(ref waiting, word)) != 0)
                {
                    var bit = 63 - BitOperations.LeadingZeroCount(bits);
                    Unsafe.Add(ref waiting, word) = bits & ~(1UL << bit);
                    var node = (word << 6) | bit;
                    var at = (nuint)node * Lanes;
                    var share = Vector512.LoadUnsafe(ref lanes, at);
                    Vector512<double>.Zero.StoreUnsafe(ref lanes, at);
                    sum += share * share * Unsafe.Add(ref rests, node);
                    var first = Unsafe.Add(ref firsts, node);
                    if (first >= 0)
                    {
                        var part = share * half;
                        Pass(ref lanes, ref waiting, first, part);
                        var second = Unsafe.Add(ref seconds, node);
                        if (second >= 0)
                        {
                            Pass(ref lanes, ref waiting, second, part);
                        }
                    }
                    else if (first < DescentGraph.None)
                    {
                        var draw = _graph.DrawOf(first);
                        for (var i = 0; i < draw.From.Length; i++)
                        {
                            Pass(ref lanes, ref waiting, draw.From[i], share * draw.Weights[i]);
                        }
                    }
                }
            }
        }

        sum.StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(_sums));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Pass(ref double lanes, ref ulong waiting, int parent, Vector512<double> part)
    {
        unchecked
        {
            var at = (nuint)parent * Lanes;
            (Vector512.LoadUnsafe(ref lanes, at) + part).StoreUnsafe(ref lanes, at);
            Unsafe.Add(ref waiting, parent >> 6) |= 1UL << (parent & 63);
        }
    }
}
