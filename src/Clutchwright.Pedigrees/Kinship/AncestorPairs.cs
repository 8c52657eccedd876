using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Kinship;

/// <summary>Some nodes with their ancestors, numbered anew from 0, and the rule by which every pair of them goes back to earlier pairs.</summary>
/// <remarks>Of a pair the younger steps back to its parents, a founder never: so two lines of descent meet for the first time at the
/// youngest animal that they share, and each pair of lines that share nothing else is walked exactly once.</remarks>
internal sealed class AncestorPairs
{
    private readonly Dictionary<int, int> _indexOf = [];

    public AncestorPairs(DescentGraph graph, IReadOnlyList<int> nodes, int most)
    {
        Graph = graph;
        Nodes = Nearest(graph, nodes, most, out var isComplete);
        IsComplete = isComplete;
        for (var i = 0; i < Nodes.Length; i++)
        {
            _indexOf.Add(Nodes[i], i);
        }

        Parents = Array.ConvertAll(Nodes, node => ColleauPass.ParentsOf(graph, node).Select(IndexOf).ToArray());
        IsFounder = Array.ConvertAll(Nodes, node => graph.First[node] < DescentGraph.None
            ? !graph.DrawOf(graph.First[node]).IsChoice
            : graph.First[node] == DescentGraph.None);
    }

    public DescentGraph Graph { get; }

    /// <summary>The nodes, parents first.</summary>
    public int[] Nodes { get; }

    /// <summary>Whether no ancestor was left out.</summary>
    public bool IsComplete { get; }

    /// <summary>By index, the indexes of the nodes that a node draws from; -1 for one that was left out.</summary>
    public int[][] Parents { get; }

    /// <summary>By index, whether a node draws from nothing by descent.</summary>
    public bool[] IsFounder { get; }

    public int Count => Nodes.Length;

    /// <summary>The index of a node; -1 if it is not among them.</summary>
    public int IndexOf(int node) => _indexOf.GetValueOrDefault(node, -1);

    /// <summary>Where a pair lies in a triangle of all pairs.</summary>
    public static int At(int one, int other) => one >= other ? (one * (one + 1) / 2) + other : (other * (other + 1) / 2) + one;

    /// <summary>Whether a node is one of several, by chance.</summary>
    public bool IsChoice(int index) => !IsFounder[index] && Graph.First[Nodes[index]] < DescentGraph.None;

    /// <summary>The chances with which a node draws from its <see cref="Parents"/>.</summary>
    public Probability[]? ChancesOf(int index) => IsChoice(index) ? Graph.DrawOf(Graph.First[Nodes[index]]).Exact : null;

    /// <summary>Of a pair of different nodes, whether the first is the one that steps back; neither does if both are founders.</summary>
    public bool FirstStepsBack(int first, int second) => !IsFounder[first] && (first > second || IsFounder[second]);

    /// <summary>The kinship that a keeper says two founders have; impossible if nothing is said.</summary>
    public Probability FoundersKinship(int one, int other)
    {
        var (late, early) = one > other ? (one, other) : (other, one);
        if (Graph.First[Nodes[late]] >= DescentGraph.None)
        {
            return Probability.Impossible;
        }

        var draw = Graph.DrawOf(Graph.First[Nodes[late]]);
        var place = Array.IndexOf(draw.From, Nodes[early]);
        return place < 0 ? Probability.Impossible : draw.Exact[place];
    }

    private static int[] Nearest(DescentGraph graph, IReadOnlyList<int> nodes, int most, out bool isComplete)
    {
        var all = ColleauPass.AncestorsOf(graph, nodes);
        isComplete = all.Length <= most;
        if (isComplete)
        {
            return all;
        }

        var found = new HashSet<int>(nodes);
        var generation = nodes.Distinct().ToList();
        while (generation.Count > 0)
        {
            var next = generation.SelectMany(node => ColleauPass.ParentsOf(graph, node)).Distinct().Where(node => !found.Contains(node)).ToList();
            if (found.Count + next.Count > most)
            {
                break;
            }

            found.UnionWith(next);
            generation = next;
        }

        return [.. found.Order()];
    }
}
