using Clutchwright.Pedigrees.Networks;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>The tables of the groups put together as one network, cut into parts that have nothing to do with each other.</summary>
internal sealed class NetworkAssembly
{
    private readonly PedigreeFrame _frame;
    private readonly List<int> _counts = [];
    private readonly List<int> _groups = [];
    private readonly List<int> _nodes = [];
    private readonly List<Factor> _factors = [];
    private readonly List<int> _factorGroups = [];
    private readonly Dictionary<(int Node, int Index), (int Variable, int Factor)> _doubts = [];
    private readonly int[] _choices;
    private int[] _component = [];
    private int _adding;

    /// <summary>Starts without any group.</summary>
    public NetworkAssembly(PedigreeFrame frame, int groupCount)
    {
        _frame = frame;
        Variables = new int[groupCount][];
        _choices = new int[frame.ChoiceCount];
        Array.Fill(_choices, -1);
    }

    /// <summary>Gets the variable of each node by group; -1 where the node can be one thing only.</summary>
    public int[][] Variables { get; }

    /// <summary>Gets the logarithm of what is constant, by group.</summary>
    public double LogConstant { get; private set; }

    /// <summary>Gets a node at which what is fixed is not possible; -1 where none was met.</summary>
    public int FailedAt { get; private set; } = -1;

    /// <summary>Adds a group that has been reduced.</summary>
    /// <returns>Whether what is fixed there is possible.</returns>
    public bool Add(GroupNetwork network, GroupModel model, IReadOnlyList<DoubtedRecord> doubted)
    {
        var group = _adding = network.Space.Group.Index;
        var variables = new int[_frame.Count];
        Array.Fill(variables, -1);
        Variables[group] = variables;
        for (var node = 0; node < _frame.Count; node++)
        {
            if (network.States[node].Length > 1)
            {
                variables[node] = NewVariable(network.States[node].Length, group, node);
            }
        }

        var tables = new FamilyTables(network, model, _frame.Sexes);
        for (var node = 0; node < _frame.Count; node++)
        {
            if (network.Dams[node] == PedigreeFrame.None)
            {
                Put(node, [variables[node]], tables.Founder(node));
            }
            else if (network.PossibleSires[node].Length == 0)
            {
                var (sire, dam) = (network.Sires[node], network.Dams[node]);
                Put(node, [variables[sire], variables[dam], variables[node]], tables.Trio(sire, dam, node));
            }
            else
            {
                AddChoice(network, tables, variables, node, group);
            }
        }

        foreach (var doubt in doubted)
        {
            if (!_doubts.TryGetValue((doubt.Node, doubt.Index), out var known))
            {
                known = (NewVariable(2, group, doubt.Node), _factors.Count);
                _doubts.Add((doubt.Node, doubt.Index), known);
                Put(doubt.Node, [known.Variable], [doubt.Right, doubt.Wrong]);
            }
            else if (doubt.IsStart)
            {
                _factors[known.Factor] = new([known.Variable], [doubt.Right, doubt.Wrong]);
            }

            var states = network.States[doubt.Node];
            Put(doubt.Node, [variables[doubt.Node], known.Variable], [.. states.SelectMany(s => new[] { doubt.IfRight[s], doubt.IfWrong[s] })]);
        }

        return !double.IsNegativeInfinity(LogConstant);
    }

    /// <summary>Cuts the network into parts.</summary>
    public List<NetworkPart> Parts()
    {
        var parent = Enumerable.Range(0, _counts.Count).ToArray();
        foreach (var factor in _factors)
        {
            for (var i = 1; i < factor.Variables.Length; i++)
            {
                parent[Root(factor.Variables[i])] = Root(factor.Variables[0]);
            }
        }

        var parts = new List<NetworkPart>();
        _component = new int[_counts.Count];
        var local = new int[_counts.Count];
        var partOf = new Dictionary<int, int>();
        for (var v = 0; v < _counts.Count; v++)
        {
            var root = Root(v);
            if (!partOf.TryGetValue(root, out var part))
            {
                partOf.Add(root, part = parts.Count);
                parts.Add(new NetworkPart());
            }

            _component[v] = part;
            local[v] = parts[part].Add(v, _counts[v], _groups[v]);
        }

        for (var f = 0; f < _factors.Count; f++)
        {
            // A choice or a doubt reaches into groups in which all else is fixed.
            var (factor, part) = (_factors[f], parts[_component[_factors[f].Variables[0]]]);
            part.Factors.Add(new(Array.ConvertAll(factor.Variables, v => local[v]), factor.Values));
            part.Groups.Add(_factorGroups[f]);
        }

        Local = local;
        return parts;

        int Root(int v)
        {
            while (parent[v] != v)
            {
                v = parent[v] = parent[parent[v]];
            }

            return v;
        }
    }

    /// <summary>Gets the number of each variable inside its part.</summary>
    public int[] Local { get; private set; } = [];

    /// <summary>A node that a variable belongs to.</summary>
    public int NodeOf(int variable) => _nodes[variable];

    /// <summary>The part a variable is in.</summary>
    public int PartOf(int variable) => _component[variable];

    // Which male is the sire is one choice for all groups and the whole clutch; what he passes on stands between him and the young.
    private void AddChoice(GroupNetwork network, FamilyTables tables, int[] variables, int node, int group)
    {
        var males = network.PossibleSires[node];
        var choice = _choices[_frame.Choices[node]];
        if (choice < 0)
        {
            _choices[_frame.Choices[node]] = choice = NewVariable(males.Length, group, node);
            Put(node, [choice], [.. _frame.ChoiceWeights[_frame.Choices[node]]]);
        }

        var dam = network.Dams[node];
        var gametes = tables.GametesOf(males);
        var passed = gametes.Length > 1 ? NewVariable(gametes.Length, group, node) : -1;
        for (var k = 0; k < males.Length; k++)
        {
            Put(node, [choice, variables[males[k]], passed], tables.Passed(males.Length, k, males[k], gametes));
            if (tables.NeedsScaling(node))
            {
                Put(node, [choice, variables[males[k]], variables[dam]], tables.Scaling(males.Length, k, males[k], dam, node));
            }
        }

        Put(node, [passed, variables[dam], variables[node]], tables.FromGamete(gametes, dam, node));
    }

    private int NewVariable(int count, int group, int node)
    {
        _nodes.Add(node);
        _counts.Add(count);
        _groups.Add(group);
        return _counts.Count - 1;
    }

    // Variables of one state only are left out: they do not change how the entries are counted.
    private void Put(int node, int[] variables, double[] values)
    {
        var live = Array.FindAll(variables, v => v >= 0);
        if (live.Length == 0)
        {
            LogConstant += Math.Log(values[0]);
            FailedAt = values[0] == 0.0 ? node : FailedAt;
        }
        else
        {
            _factors.Add(new(live, values));
            _factorGroups.Add(_adding);
        }
    }
}
