namespace Clutchwright.Pedigrees.Kinship;

/// <summary>Where the genes of a group come from: each founder's expected share, and how many founders that amounts to.</summary>
/// <remarks>A sire in doubt passes on the shares of his candidates by their chances. That founders may be related or inbred is left
/// out of account. Cannot change. Source: docs/references.md [Lacy1989], [BoichardMaignelVerrier1997].</remarks>
public sealed class FounderContributions
{
    private readonly DescentGraph _graph;
    private readonly Descent _descent;
    private readonly int[] _group;
    private readonly int[] _nodes;
    private readonly (int Parent, double Share)[][] _parents;

    private FounderContributions(Descent descent, IReadOnlyList<int> group)
    {
        _descent = descent;
        _graph = descent.Graph;
        _group = [.. group.Select(descent.NodeOf)];
        _nodes = ColleauPass.AncestorsOf(_graph, _group);
        _parents = Array.ConvertAll(_nodes, ParentsOf);
        var shares = Up([]);
        Founders =
        [
            .. _nodes
                .Where(IsFounder)
                .Select(node => new AncestorShare(descent.Animals[node], shares[node]))
                .OrderByDescending(share => share.Share)
                .ThenBy(share => share.Animal),
        ];
        var unknown = _nodes.Where(IsHalfKnown).Select(node => shares[node] / 2.0).ToArray();
        UnknownShare = unknown.Sum();
        var squares = Founders.Sum(f => f.Share * f.Share) + unknown.Sum(share => share * share);
        EffectiveFounders = squares > 0.0 ? 1.0 / squares : 0.0;
    }

    /// <summary>The founders, that with the greatest share first. With <see cref="UnknownShare"/> the shares sum to 1.</summary>
    public IReadOnlyList<AncestorShare> Founders { get; }

    /// <summary>The share that comes through unknown parents of animals whose other parent is known.</summary>
    public double UnknownShare { get; }

    /// <summary>The effective number of founders: as many founders of equal shares would give the same chance that two alleles come from one
    /// founder; 1 over the sum of squared shares, where each unknown parent counts as one founder more. 0 for an empty group.</summary>
    public double EffectiveFounders { get; }

    /// <summary>Works out the shares of a group's founders.</summary>
    /// <param name="descent">Who descends from whom.</param>
    /// <param name="group">Positions of the animals of the group; one named twice counts twice.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such animal.</exception>
    /// <remarks>Cost: grows with the number of ancestors.</remarks>
    public static FounderContributions Of(Descent descent, IReadOnlyList<int> group)
    {
        ArgumentNullException.ThrowIfNull(descent);
        ArgumentNullException.ThrowIfNull(group);
        return new FounderContributions(descent, group);
    }

    /// <summary>The ancestors, founders or not, that together explain the group: each with its marginal share, what it adds to those before it.</summary>
    /// <returns>The greatest first; the effective number of ancestors is 1 over the sum of their squared shares (with unknown parents as in
    /// <see cref="EffectiveFounders"/>), as a rule not more than that of founders. It counts narrow passes that founders do not show.</returns>
    /// <remarks>Cost: one walk up and one down through the ancestors for each ancestor found; meant for a stock, not for a studbook.</remarks>
    public (IReadOnlyList<AncestorShare> Ancestors, double EffectiveAncestors) MajorAncestors()
    {
        const double Nothing = 1e-12;
        var found = new List<AncestorShare>();
        var chosen = new HashSet<int>();
        var squares = 0.0;
        while (_group.Length > 0)
        {
            var shares = Up(chosen);
            var explained = Down(chosen);
            var (best, most) = (-1, Nothing);
            foreach (var node in _nodes)
            {
                var marginal = shares[node] * (1.0 - explained[node]);
                if (_descent.Animals[node] >= 0 && !chosen.Contains(node) && marginal > most + Nothing)
                {
                    (best, most) = (node, marginal);
                }
            }

            if (best < 0)
            {
                squares += _nodes.Where(node => IsHalfKnown(node) && !chosen.Contains(node)).Sum(node => shares[node] * shares[node] / 4.0);
                break;
            }

            chosen.Add(best);
            squares += most * most;
            found.Add(new AncestorShare(_descent.Animals[best], most));
        }

        return (found, squares > 0.0 ? 1.0 / squares : 0.0);
    }

    private bool IsFounder(int node) =>
        _graph.First[node] == DescentGraph.None || (_graph.First[node] < DescentGraph.None && !_graph.DrawOf(_graph.First[node]).IsChoice);

    private bool IsHalfKnown(int node) => _graph.First[node] >= 0 && _graph.Second[node] == DescentGraph.None;

    private (int Parent, double Share)[] ParentsOf(int node)
    {
        if (IsFounder(node))
        {
            return [];
        }

        var parents = ColleauPass.ParentsOf(_graph, node);
        var weights = _graph.First[node] < DescentGraph.None ? _graph.DrawOf(_graph.First[node]).Weights : null;
        return [.. parents.Select((parent, i) => (parent, weights?[i] ?? 0.5))];
    }

    /// <summary>By node, the share of the group's alleles that pass through it, without those that reach it only through a node at which to stop.</summary>
    private double[] Up(HashSet<int> stopAt)
    {
        var shares = new double[_graph.Count];
        foreach (var node in _group)
        {
            shares[node] += 1.0 / _group.Length;
        }

        for (var i = _nodes.Length - 1; i >= 0; i--)
        {
            if (stopAt.Count == 0 || !stopAt.Contains(_nodes[i]))
            {
                foreach (var (parent, share) in _parents[i])
                {
                    shares[parent] += shares[_nodes[i]] * share;
                }
            }
        }

        return shares;
    }

    /// <summary>By node, the share of its own alleles that come from the chosen.</summary>
    private double[] Down(HashSet<int> chosen)
    {
        var explained = new double[_graph.Count];
        for (var i = 0; i < _nodes.Length; i++)
        {
            foreach (var (parent, share) in _parents[i])
            {
                explained[_nodes[i]] += explained[parent] * share;
            }

            if (chosen.Contains(_nodes[i]))
            {
                explained[_nodes[i]] = 1.0;
            }
        }

        return explained;
    }
}

/// <summary>An ancestor's share in the alleles of a group.</summary>
/// <param name="Animal">The ancestor's position.</param>
/// <param name="Share">The expected share, in [0, 1].</param>
public sealed record AncestorShare(int Animal, double Share);
