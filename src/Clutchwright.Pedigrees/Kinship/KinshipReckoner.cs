using System.Collections.Concurrent;

namespace Clutchwright.Pedigrees.Kinship;

/// <summary>How related the animals of a descent are.</summary>
/// <remarks>
/// Assumes diploid animals, an autosomal locus without selection, founders as the settings say, and of a sire in doubt his
/// chances: kinships are then expectations, and exact ones. All numbers have no unit. Cannot change and is safe to use from many threads;
/// the same input gives the same numbers to the last bit. Source: docs/references.md [Wright1922], [MeuwissenLuo1992], [Colleau2002].
/// </remarks>
public sealed class KinshipReckoner
{
    private readonly InbreedingSolver _solved;
    private readonly ConcurrentBag<AncestorTrace> _traces = [];

    private KinshipReckoner(Descent descent)
    {
        Descent = descent;
        _solved = InbreedingSolver.Solve(descent.Graph);
        var inbreeding = new double[descent.Count];
        for (var i = 0; i < inbreeding.Length; i++)
        {
            inbreeding[i] = _solved.Inbreeding[descent.NodeOf(i)];
        }

        Inbreeding = inbreeding.AsReadOnly();
    }

    /// <summary>The descent that was worked out.</summary>
    public Descent Descent { get; }

    /// <summary>By position, the inbreeding coefficient F of each animal: the chance that its two alleles at an autosomal locus are identical by
    /// descent, in [0, 1]; 0 for an animal with an unknown parent.</summary>
    public IReadOnlyList<double> Inbreeding { get; }

    /// <summary>By node, the part of its self-kinship that is its own.</summary>
    internal double[] Rest => _solved.Rest;

    /// <summary>Works out the inbreeding of all animals.</summary>
    /// <param name="descent">Who descends from whom.</param>
    /// <remarks>Cost: one walk over the ancestors for each full-sib family, eight families at a time; memory grows with the number of
    /// animals. A million animals of twenty shallow generations take a second, of sixty closed generations half a minute.</remarks>
    public static KinshipReckoner Of(Descent descent)
    {
        ArgumentNullException.ThrowIfNull(descent);
        return new KinshipReckoner(descent);
    }

    /// <summary>The kinship coefficient of two animals: the chance that an allele drawn from each is identical by descent. It is the
    /// inbreeding coefficient to be expected of their young.</summary>
    /// <param name="first">An animal's position.</param>
    /// <param name="second">An animal's position; of an animal with itself it is (1 + F) / 2.</param>
    /// <returns>A number in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such animal.</exception>
    /// <remarks>Cost: grows with the number of ancestors of the two.</remarks>
    public double Between(int first, int second)
    {
        var (one, other) = (Descent.NodeOf(first), Descent.NodeOf(second));
        return one == other ? _solved.SelfOf(one) : BetweenNodes(one, other);
    }

    /// <summary>The kinship of each of some animals with each of others, such as all males with all females of a season.</summary>
    /// <param name="rows">Positions of animals.</param>
    /// <param name="columns">Positions of animals.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such animal.</exception>
    /// <remarks>Cost: for each row one walk up through its ancestors and one down to the columns.</remarks>
    public KinshipTable Table(IReadOnlyList<int> rows, IReadOnlyList<int> columns)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(columns);
        var pass = new ColleauPass(Descent.Graph, _solved.Rest, [.. columns.Select(Descent.NodeOf)]);
        var values = new double[rows.Count][];
        for (var row = 0; row < rows.Count; row++)
        {
            values[row] = pass.Row(Descent.NodeOf(rows[row]));
        }

        return new KinshipTable([.. rows], [.. columns], values);
    }

    /// <summary>The kinship of every pair of some animals.</summary>
    /// <param name="animals">Positions of animals; meant for up to some five thousand (then 100 MB).</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such animal.</exception>
    /// <remarks>Cost: as a table of the animals with themselves; only one half is kept.</remarks>
    public KinshipMatrix Matrix(IReadOnlyList<int> animals)
    {
        ArgumentNullException.ThrowIfNull(animals);
        var pass = new ColleauPass(Descent.Graph, _solved.Rest, [.. animals.Select(Descent.NodeOf)]);
        var values = new double[animals.Count][];
        for (var row = 0; row < animals.Count; row++)
        {
            values[row] = pass.Row(Descent.NodeOf(animals[row]))[..(row + 1)];
        }

        return new KinshipMatrix([.. animals], values);
    }

    internal double InbreedingOfNode(int node) => _solved.Inbreeding[node];

    internal double BetweenNodes(int first, int second)
    {
        var trace = _traces.TryTake(out var free) ? free : new AncestorTrace(Descent.Graph);
        var kinship = trace.Kinship(first, second, _solved.Rest);
        _traces.Add(trace);
        return kinship;
    }
}
