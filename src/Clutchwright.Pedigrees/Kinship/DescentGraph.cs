using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Kinship;

/// <summary>Whom each node draws its alleles from. A node is an animal, or the sire in doubt of one or several, or one strand of a
/// chromosome of an animal.</summary>
/// <remarks>Parents have smaller numbers than their offspring. The kinship of node <c>i</c> with any earlier node <c>j</c> is the weighted sum of its
/// parents' kinships with <c>j</c>; with itself it depends on the kind of node.</remarks>
internal sealed class DescentGraph
{
    public const int None = -1;

    private readonly List<int> _firsts = [];
    private readonly List<int> _seconds = [];
    private readonly List<Draw> _draws = [];
    private readonly Dictionary<int, Probability> _founderInbreeding = [];
    private int[]? _first;
    private int[]? _second;

    /// <summary>A node that draws from several others: one of them, by chance, or (a founder related to earlier founders) a share of each.</summary>
    /// <param name="From">The nodes drawn from.</param>
    /// <param name="Weights">The chance or share of each.</param>
    /// <param name="Rest">For a related founder, the part of its self-kinship that is its own; NaN for a choice.</param>
    /// <param name="Exact">For a choice, the chances; for a related founder, its kinship with each.</param>
    public sealed record Draw(int[] From, double[] Weights, double Rest, Probability[] Exact)
    {
        public bool IsChoice => double.IsNaN(Rest);
    }

    public int Count => _firsts.Count;

    /// <summary>Nodes from this one on are nobody's parents.</summary>
    public int ParentCount { get; private set; }

    /// <summary>The first parent; <see cref="None"/>; or -2 and less for a node with a <see cref="Draw"/>.</summary>
    public int[] First => _first ??= [.. _firsts];

    public int[] Second => _second ??= [.. _seconds];

    public Draw DrawOf(int first) => _draws[-2 - first];

    /// <summary>A founder's own inbreeding coefficient, if it is not 0.</summary>
    public Probability FounderInbreeding(int node) => _founderInbreeding.GetValueOrDefault(node);

    public int AddFounder(Probability inbreeding)
    {
        if (!inbreeding.IsImpossible)
        {
            _founderInbreeding.Add(Count, inbreeding);
        }

        return Add(None, None);
    }

    /// <summary>An offspring of two parents; the second may be <see cref="None"/>, the first too if the second is not.</summary>
    public int AddOffspring(int first, int second)
    {
        Use(first);
        Use(second);
        return first == None ? Add(second, None) : Add(first, second);
    }

    /// <summary>One of several nodes, by chance.</summary>
    public int AddChoice(int[] from, double[] weights, Probability[] exact) => AddDraw(new Draw(from, weights, double.NaN, exact));

    /// <summary>A founder related to earlier founders.</summary>
    public int AddRelatedFounder(int[] from, double[] weights, double rest, Probability inbreeding, Probability[] kinships)
    {
        _founderInbreeding.Add(Count, inbreeding);
        return AddDraw(new Draw(from, weights, rest, kinships));
    }

    private int AddDraw(Draw draw)
    {
        foreach (var node in draw.From)
        {
            Use(node);
        }

        _draws.Add(draw);
        return Add(-1 - _draws.Count, None);
    }

    private void Use(int node) => ParentCount = Math.Max(ParentCount, node + 1);

    private int Add(int first, int second)
    {
        _firsts.Add(first);
        _seconds.Add(second);
        return Count - 1;
    }
}
