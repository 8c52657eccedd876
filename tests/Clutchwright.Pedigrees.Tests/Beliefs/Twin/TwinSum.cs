using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Tests.Beliefs.Twin;

/// <summary>The sum over every combination of what the animals of one kin may be at one group.</summary>
internal sealed class TwinSum
{
    private readonly List<TwinNode> _nodes;
    private readonly TwinGroup _group;
    private readonly double[]?[] _priors;
    private readonly double[][] _likelihoods;
    private readonly int[] _sires;
    private readonly int[] _dams;
    private readonly int[] _states;
    private readonly double[,][] _joint;

    public TwinSum(
        List<TwinNode> nodes, TwinGroup group, Func<TwinNode, double[]> prior, Func<TwinNode, double[]> likelihood, Dictionary<int, int> males, Func<TwinNode, bool> isCut)
    {
        (_nodes, _group) = (nodes, group);
        _priors = [.. nodes.Select(n => n.IsFounder || isCut(n) ? prior(n) : null)];
        _likelihoods = [.. nodes.Select(likelihood)];
        _sires = [.. nodes.Select(n => n.IsFounder ? -1 : nodes.IndexOf(n.Males[n.Choice < 0 ? 0 : males[n.Choice]]))];
        _dams = [.. nodes.Select(n => n.IsFounder ? -1 : nodes.IndexOf(n.Dam!))];
        _states = new int[nodes.Count];
        _joint = new double[nodes.Count, nodes.Count][];
        for (var i = 0; i < nodes.Count; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                _joint[i, j] = new double[group.States.Count * group.States.Count];
            }
        }

        Visit(0, 1.0);
        for (var i = 0; i < nodes.Count; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                Joint[(nodes[i], nodes[j])] = Table(_joint[i, j], isTurned: false);
                Joint[(nodes[j], nodes[i])] = Table(_joint[i, j], isTurned: i != j);
            }
        }
    }

    public TwinGroup Group => _group;

    public double Total { get; private set; }

    public Dictionary<(TwinNode First, TwinNode Second), double[,]> Joint { get; } = [];

    private void Visit(int at, double weight)
    {
        if (at == _nodes.Count)
        {
            Total += weight;
            for (var i = 0; i < at; i++)
            {
                for (var j = 0; j <= i; j++)
                {
                    _joint[i, j][(_states[i] * _group.States.Count) + _states[j]] += weight;
                }
            }

            return;
        }

        if (_priors[at] is { } prior)
        {
            for (var s = 0; s < prior.Length; s++)
            {
                Enter(at, s, weight * prior[s] * _likelihoods[at][s]);
            }

            return;
        }

        // One of the young that hatch, and are of the sex that is recorded.
        var sex = _nodes[at].Sex;
        var eggs = _group.Eggs(_states[_sires[at]], _states[_dams[at]]);
        var hatched = 0.0;
        foreach (var (child, chance) in eggs)
        {
            hatched += _group.IsOf(child, sex) ? chance * Lives(child, sex) : 0.0;
        }

        foreach (var (child, chance) in eggs)
        {
            if (_group.IsOf(child, sex) && hatched > 0.0)
            {
                Enter(at, child, weight * chance * Lives(child, sex) / hatched * _likelihoods[at][child]);
            }
        }
    }

    private void Enter(int at, int state, double weight)
    {
        if (weight > 0.0)
        {
            _states[at] = state;
            Visit(at + 1, weight);
        }
    }

    private double Lives(int state, Sex? sex) => _group.LivesKept(state, sex);

    private double[,] Table(double[] values, bool isTurned)
    {
        var n = _group.States.Count;
        var table = new double[n, n];
        for (var x = 0; x < n; x++)
        {
            for (var y = 0; y < n; y++)
            {
                table[isTurned ? y : x, isTurned ? x : y] = values[(x * n) + y];
            }
        }

        return table;
    }
}
