using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Kinship;

/// <summary>Makes the graph of a pedigree: parents first, so that the arrays of ancestors are short, then those without young.</summary>
internal sealed class DescentBuilder
{
    private readonly Pedigree _pedigree;
    private readonly KinshipSettings _settings;
    private readonly DescentGraph _graph = new();
    private readonly int[] _nodes;
    private readonly bool[] _isParent;
    private readonly Dictionary<string, int> _choices = new(StringComparer.Ordinal);
    private readonly FounderBlock _founders;

    public DescentBuilder(Pedigree pedigree, KinshipSettings settings)
    {
        _pedigree = pedigree;
        _settings = settings;
        _nodes = new int[pedigree.Count];
        _isParent = new bool[pedigree.Count];
        _founders = FounderBlock.Of(pedigree, settings);
        foreach (var key in settings.SireWeights.Keys.Concat(settings.Clutches.Keys))
        {
            _ = pedigree.PositionOf(key);
        }
    }

    public Descent Build()
    {
        for (var i = 0; i < _nodes.Length; i++)
        {
            Mark(_pedigree.SireOf(i));
            Mark(_pedigree.DamOf(i));
            foreach (var sire in Candidates(i))
            {
                Mark(sire);
            }

            _isParent[i] |= _founders.IsRelated(i);
        }

        var animals = Enumerable.Range(0, _nodes.Length);
        foreach (var parent in animals.Where(i => _isParent[i]))
        {
            Add(parent);
        }

        // Before the animals without young, so that these are the last.
        var rest = animals.Where(i => !_isParent[i]).ToArray();
        var sires = Array.ConvertAll(rest, SireNode);
        for (var i = 0; i < rest.Length; i++)
        {
            Add(rest[i], sires[i]);
        }

        return new Descent(_graph, _nodes, _pedigree);
    }

    private void Mark(int parent)
    {
        if (parent >= 0)
        {
            _isParent[parent] = true;
        }
    }

    private void Add(int animal) => Add(animal, SireNode(animal));

    private void Add(int animal, int sire)
    {
        var dam = _pedigree.DamOf(animal) is >= 0 and var known ? _nodes[known] : DescentGraph.None;
        _nodes[animal] = (sire, dam) is (DescentGraph.None, DescentGraph.None)
            ? _founders.AddTo(_graph, animal, _nodes)
            : _graph.AddOffspring(sire, dam);
    }

    private int[] Candidates(int animal) =>
        _pedigree.Animals[animal].PossibleSires.Count == 0 ? [] : [.. _pedigree.PossibleSiresOf(animal)];

    private int SireNode(int animal)
    {
        var sire = _pedigree.SireOf(animal);
        if (sire >= 0)
        {
            return _nodes[sire];
        }

        var candidates = Candidates(animal);
        if (candidates.Length == 0)
        {
            return DescentGraph.None;
        }

        var key = _pedigree.Animals[animal].Key;
        var weights = Weights(key, candidates.Length);
        if (_settings.Clutches.GetValueOrDefault(key) is { } clutch)
        {
            // Lengths first: no two clutches can be mistaken for one.
            var doubt = $"{clutch.Length}:{clutch}:{string.Join(',', candidates)}:{string.Join(',', weights)}";
            if (!_choices.TryGetValue(doubt, out var node))
            {
                _choices.Add(doubt, node = AddChoice(candidates, weights));
            }

            return node;
        }

        return AddChoice(candidates, weights);
    }

    private int AddChoice(int[] candidates, Probability[] weights) => candidates.Length == 1
        ? _nodes[candidates[0]]
        : _graph.AddChoice(Array.ConvertAll(candidates, i => _nodes[i]), Array.ConvertAll(weights, w => w.Value), weights);

    private Probability[] Weights(string key, int count)
    {
        if (_settings.SireWeights.GetValueOrDefault(key) is not { } given)
        {
            return [.. Enumerable.Repeat(Probability.Ratio(1, count), count)];
        }

        if (given.Count != count || Math.Abs(given.Sum(w => w.Value) - 1.0) > Probability.RoundingTolerance)
        {
            throw new ArgumentException($"The chances of the {count} possible sires of {key} are not {count} numbers that sum to 1.", nameof(key));
        }

        return [.. given];
    }
}
