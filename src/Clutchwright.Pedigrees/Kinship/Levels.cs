namespace Clutchwright.Pedigrees.Kinship;

/// <summary>The nodes by the length of their longest line of ancestors, so that each level needs only what lies in those before.</summary>
internal static class Levels
{
    /// <returns>The nodes in the order of their levels, then of their numbers; and where each level begins, with the end at last.</returns>
    public static (int[] Nodes, int[] Starts) Of(DescentGraph graph)
    {
        var level = new int[graph.Count];
        var sizes = new List<int>();
        for (var node = 0; node < level.Length; node++)
        {
            level[node] = 1 + LevelOfParents(graph, level, node);
            while (sizes.Count <= level[node])
            {
                sizes.Add(0);
            }

            sizes[level[node]]++;
        }

        var starts = new int[sizes.Count + 1];
        for (var i = 0; i < sizes.Count; i++)
        {
            starts[i + 1] = starts[i] + sizes[i];
        }

        var next = starts.ToArray();
        var nodes = new int[graph.Count];
        for (var node = 0; node < level.Length; node++)
        {
            nodes[next[level[node]]++] = node;
        }

        return (nodes, starts);
    }

    private static int LevelOfParents(DescentGraph graph, int[] level, int node)
    {
        var first = graph.First[node];
        var second = graph.Second[node];
        return first < DescentGraph.None
            ? graph.DrawOf(first).From.Max(from => level[from])
            : Math.Max(first == DescentGraph.None ? -1 : level[first], second == DescentGraph.None ? -1 : level[second]);
    }
}
