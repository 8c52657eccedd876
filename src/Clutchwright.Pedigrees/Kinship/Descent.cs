using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Kinship;

/// <summary>Who descends from whom, as numbers: what the questions of kinship are worked out on.</summary>
/// <remarks>Cannot change and is safe to read from many threads. Animals are named by their positions, from 0.</remarks>
public sealed class Descent
{
    private readonly int[] _nodes;

    internal Descent(DescentGraph graph, int[] nodes, Pedigree? pedigree)
    {
        Graph = graph;
        _nodes = nodes;
        Pedigree = pedigree;
        Animals = new int[graph.Count];
        Array.Fill(Animals, -1);
        for (var i = 0; i < nodes.Length; i++)
        {
            Animals[nodes[i]] = i;
        }
    }

    /// <summary>The pedigree it was made from; null if it was made from bare positions.</summary>
    public Pedigree? Pedigree { get; }

    /// <summary>How many animals there are.</summary>
    public int Count => _nodes.Length;

    internal DescentGraph Graph { get; }

    /// <summary>By node, the animal; -1 for a sire in doubt.</summary>
    internal int[] Animals { get; }

    /// <summary>Takes a pedigree.</summary>
    /// <param name="pedigree">The pedigree; positions are its own. An unknown parent counts as a founder of its own.</param>
    /// <param name="settings">What is known beyond it; null: nothing.</param>
    /// <exception cref="ArgumentException">The settings name an animal that is not in the pedigree or, for a founder's figures, no founder;
    /// chances of possible sires are not as many as these or do not sum to 1.</exception>
    /// <exception cref="ImpossibleKinshipException">No animals can have such kinships as are said of founders.</exception>
    /// <remarks>Cost: time and memory grow with the number of animals, and with the third power of the number of founders of given
    /// kinship.</remarks>
    public static Descent Of(Pedigree pedigree, KinshipSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(pedigree);
        return new DescentBuilder(pedigree, settings ?? KinshipSettings.Default).Build();
    }

    /// <summary>Takes parents by position; founders are unrelated and not inbred.</summary>
    /// <param name="sires">By animal, the position of the sire, less than its own; -1: not known.</param>
    /// <param name="dams">By animal, the position of the dam, less than its own; -1: not known.</param>
    /// <exception cref="ArgumentException">The lists are not of one length, or a parent does not come before its offspring.</exception>
    public static Descent OfParents(IReadOnlyList<int> sires, IReadOnlyList<int> dams)
    {
        ArgumentNullException.ThrowIfNull(sires);
        ArgumentNullException.ThrowIfNull(dams);
        if (sires.Count != dams.Count)
        {
            throw new ArgumentException($"There are {sires.Count} sires and {dams.Count} dams.", nameof(dams));
        }

        var isParent = new bool[sires.Count];
        for (var i = 0; i < sires.Count; i++)
        {
            if (sires[i] < -1 || sires[i] >= i || dams[i] < -1 || dams[i] >= i)
            {
                throw new ArgumentException($"A parent of animal {i} does not come before it.", sires[i] < -1 || sires[i] >= i ? nameof(sires) : nameof(dams));
            }

            Mark(sires[i]);
            Mark(dams[i]);
        }

        var graph = new DescentGraph();
        var nodes = new int[sires.Count];
        foreach (var parents in new[] { true, false })
        {
            for (var i = 0; i < nodes.Length; i++)
            {
                if (isParent[i] == parents)
                {
                    nodes[i] = sires[i] == -1 && dams[i] == -1
                        ? graph.AddFounder(Probability.Impossible)
                        : graph.AddOffspring(NodeOf(sires[i]), NodeOf(dams[i]));
                }
            }
        }

        return new Descent(graph, nodes, null);

        int NodeOf(int animal) => animal == -1 ? DescentGraph.None : nodes[animal];

        void Mark(int parent)
        {
            if (parent >= 0)
            {
                isParent[parent] = true;
            }
        }
    }

    /// <summary>The node of an animal.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such animal.</exception>
    internal int NodeOf(int animal)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(animal);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(animal, _nodes.Length);
        return _nodes[animal];
    }
}
