using System.Collections.Frozen;

namespace Clutchwright.Pedigrees;

/// <summary>Who descends from whom: animals in an order in which every parent comes before its offspring.</summary>
/// <remarks>Cannot change and is safe to read from many threads. Positions count from 0 in the order of
/// <see cref="Animals"/>; -1 stands for a parent that is not known. Possible sires come before their possible offspring,
/// just as certain parents do. The order depends only on the order in which the animals were given.</remarks>
public sealed class Pedigree
{
    /// <summary>The position given for a parent that is not known.</summary>
    public const int NotKnown = -1;

    private readonly PedigreeAnimal[] _animals;
    private readonly int[] _sires;
    private readonly int[] _dams;
    private readonly FrozenDictionary<string, int> _positions;

    private Pedigree(PedigreeAnimal[] animals)
    {
        _animals = animals;
        Animals = animals.AsReadOnly();
        _positions = animals.Select((animal, position) => KeyValuePair.Create(animal.Key, position)).ToFrozenDictionary(StringComparer.Ordinal);
        _sires = [.. animals.Select(animal => animal.Sire is null ? NotKnown : _positions[animal.Sire])];
        _dams = [.. animals.Select(animal => animal.Dam is null ? NotKnown : _positions[animal.Dam])];
    }

    /// <summary>The animals, parents before offspring.</summary>
    public IReadOnlyList<PedigreeAnimal> Animals { get; }

    /// <summary>How many animals there are.</summary>
    public int Count => _animals.Length;

    /// <summary>Orders animals into a pedigree.</summary>
    /// <param name="animals">The animals in any order; every parent named must be among them.</param>
    /// <exception cref="PedigreeKeyException">An animal is listed twice, or a named parent is not listed.</exception>
    /// <exception cref="PedigreeLoopException">An animal is its own ancestor.</exception>
    /// <remarks>Cost: time and memory grow with the number of animals and of named parents.</remarks>
    public static Pedigree Of(IEnumerable<PedigreeAnimal> animals)
    {
        ArgumentNullException.ThrowIfNull(animals);
        var given = animals.ToList();
        var byKey = new Dictionary<string, PedigreeAnimal>(given.Count, StringComparer.Ordinal);
        foreach (var animal in given)
        {
            if (!byKey.TryAdd(animal.Key, animal))
            {
                throw PedigreeKeyException.Twice(animal.Key);
            }
        }

        foreach (var animal in given)
        {
            if (animal.NamedParents().FirstOrDefault(parent => !byKey.ContainsKey(parent)) is { } missing)
            {
                throw PedigreeKeyException.Missing(animal.Key, missing);
            }
        }

        var walk = new AncestorWalk(byKey);
        foreach (var animal in given)
        {
            if (walk.Visit(animal) is { } loop)
            {
                throw new PedigreeLoopException(loop);
            }
        }

        return new Pedigree([.. walk.Ordered]);
    }

    /// <summary>Looks for an animal that is its own ancestor, without throwing.</summary>
    /// <param name="animals">The animals in any order; parents that are not listed are taken as founders, and of an animal
    /// listed twice the first entry counts.</param>
    /// <returns>The animals of one loop as in <see cref="PedigreeLoopException.Animals"/>; empty if there is none.</returns>
    public static IReadOnlyList<string> FindLoop(IEnumerable<PedigreeAnimal> animals)
    {
        ArgumentNullException.ThrowIfNull(animals);
        var byKey = new Dictionary<string, PedigreeAnimal>(StringComparer.Ordinal);
        foreach (var animal in animals)
        {
            byKey.TryAdd(animal.Key, animal);
        }

        var walk = new AncestorWalk(byKey);
        return byKey.Values.Select(walk.Visit).FirstOrDefault(loop => loop is not null) ?? [];
    }

    /// <summary>The position of an animal.</summary>
    /// <exception cref="ArgumentException">The pedigree has no such animal.</exception>
    public int PositionOf(string key) => _positions.TryGetValue(key, out var position)
        ? position
        : throw new ArgumentException($"The pedigree has no animal {key}.", nameof(key));

    /// <summary>Whether the pedigree has an animal of this key.</summary>
    public bool Contains(string key) => _positions.ContainsKey(key);

    /// <summary>The position of an animal's certain sire, always less than its own; <see cref="NotKnown"/> if there is none.</summary>
    /// <param name="position">The animal's position.</param>
    public int SireOf(int position) => _sires[position];

    /// <summary>The position of an animal's dam, always less than its own; <see cref="NotKnown"/> if there is none.</summary>
    /// <param name="position">The animal's position.</param>
    public int DamOf(int position) => _dams[position];

    /// <summary>The positions of the males of which one is the sire, in the order given; empty if the sire is certain or
    /// nothing is known of him.</summary>
    /// <param name="position">The animal's position.</param>
    public IReadOnlyList<int> PossibleSiresOf(int position) => [.. _animals[position].PossibleSires.Select(key => _positions[key])];

    /// <summary>A walk up through the ancestors, deepest first. It keeps its own stack, so that a line of many thousand
    /// generations does not exhaust the thread's.</summary>
    private sealed class AncestorWalk(Dictionary<string, PedigreeAnimal> byKey)
    {
        private readonly HashSet<string> _done = new(StringComparer.Ordinal);
        private readonly HashSet<string> _onPath = new(StringComparer.Ordinal);

        public List<PedigreeAnimal> Ordered { get; } = [];

        public IReadOnlyList<string>? Visit(PedigreeAnimal start)
        {
            if (_done.Contains(start.Key))
            {
                return null;
            }

            var path = new List<Step>();
            Enter(start, path);
            while (path.Count > 0)
            {
                var step = path[^1];
                if (!step.Parents.MoveNext())
                {
                    path.RemoveAt(path.Count - 1);
                    _onPath.Remove(step.Animal.Key);
                    _done.Add(step.Animal.Key);
                    Ordered.Add(step.Animal);
                }
                else if (_onPath.Contains(step.Parents.Current))
                {
                    return [.. path.Select(s => s.Animal.Key).SkipWhile(key => !string.Equals(key, step.Parents.Current, StringComparison.Ordinal))];
                }
                else if (!_done.Contains(step.Parents.Current) && byKey.TryGetValue(step.Parents.Current, out var parent))
                {
                    Enter(parent, path);
                }
            }

            return null;
        }

        private void Enter(PedigreeAnimal animal, List<Step> path)
        {
            _onPath.Add(animal.Key);
            path.Add(new Step(animal, animal.NamedParents().GetEnumerator()));
        }

        private sealed record Step(PedigreeAnimal Animal, IEnumerator<string> Parents);
    }
}
