namespace Clutchwright.Pedigrees.Kinship;

/// <summary>Finds full sibs: their inbreeding is the same and is computed once.</summary>
internal static class Families
{
    /// <returns>By node, the first node with the same two parents, which may be itself; itself for a choice; -1 where nothing is to be traced.</returns>
    public static int[] Of(DescentGraph graph)
    {
        var families = new int[graph.Count];
        var known = new Dictionary<long, int>();
        for (var node = 0; node < families.Length; node++)
        {
            var first = graph.First[node];
            var second = graph.Second[node];
            if (first < DescentGraph.None)
            {
                families[node] = graph.DrawOf(first).IsChoice ? node : -1;
            }
            else if (second == DescentGraph.None)
            {
                families[node] = -1;
            }
            else
            {
                var pair = ((long)Math.Max(first, second) << 32) | (uint)Math.Min(first, second);
                if (!known.TryGetValue(pair, out var family))
                {
                    known.Add(pair, family = node);
                }

                families[node] = family;
            }
        }

        return families;
    }
}
