namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Parents with all their young together.</summary>
/// <param name="Sires">The sire, or those of which one is.</param>
/// <param name="Dam">The dam.</param>
internal sealed record Family(int[] Sires, int Dam)
{
    /// <summary>Gets the young.</summary>
    public List<int> Young { get; } = [];
}

/// <summary>The families of a pedigree, and those that each node belongs to.</summary>
internal sealed class FamilyIndex
{
    private FamilyIndex(List<Family> families, List<int>[] ofNode)
    {
        Families = families;
        OfNode = ofNode;
    }

    /// <summary>Gets the families, in the order of their first young.</summary>
    public IReadOnlyList<Family> Families { get; }

    /// <summary>Gets for each node the places of its families.</summary>
    public IReadOnlyList<int>[] OfNode { get; }

    /// <summary>Puts families together; young of several possible sires are families of their own.</summary>
    public static FamilyIndex Of(int[] sires, int[] dams, int[][] possibleSires)
    {
        var byPair = new Dictionary<(int, int), Family>();
        var families = new List<Family>();
        for (var node = 0; node < dams.Length; node++)
        {
            if (dams[node] == PedigreeFrame.None)
            {
                continue;
            }

            if (possibleSires[node].Length > 0)
            {
                families.Add(new(possibleSires[node], dams[node]) { Young = { node } });
            }
            else if (byPair.TryGetValue((sires[node], dams[node]), out var family))
            {
                family.Young.Add(node);
            }
            else
            {
                byPair.Add((sires[node], dams[node]), family = new([sires[node]], dams[node]) { Young = { node } });
                families.Add(family);
            }
        }

        var ofNode = new List<int>[dams.Length];
        for (var node = 0; node < ofNode.Length; node++)
        {
            ofNode[node] = [];
        }

        for (var f = 0; f < families.Count; f++)
        {
            foreach (var node in families[f].Young.Concat(families[f].Sires).Append(families[f].Dam))
            {
                ofNode[node].Add(f);
            }
        }

        return new(families, ofNode);
    }
}
