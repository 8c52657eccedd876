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
    private readonly Dictionary<string, int> _positions;

    private Pedigree(PedigreeAnimal[] animals, Dictionary<string, int> positions)
    {
        _animals = animals;
        Animals = animals.AsReadOnly();
        _positions = positions;
        _sires = new int[animals.Length];
        _dams = new int[animals.Length];
        for (var i = 0; i < animals.Length; i++)
        {
            _sires[i] = animals[i].Sire is { } sire ? positions[sire] : NotKnown;
            _dams[i] = animals[i].Dam is { } dam ? positions[dam] : NotKnown;
        }
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
        var given = animals.ToArray();
        var positions = new Dictionary<string, int>(given.Length, StringComparer.Ordinal);
        for (var i = 0; i < given.Length; i++)
        {
            if (!positions.TryAdd(given[i].Key, i))
            {
                throw PedigreeKeyException.Twice(given[i].Key);
            }
        }

        var isOrdered = true;
        for (var i = 0; i < given.Length; i++)
        {
            foreach (var parent in given[i].NamedParents())
            {
                isOrdered &= positions.TryGetValue(parent, out var position) ? position < i : throw PedigreeKeyException.Missing(given[i].Key, parent);
            }
        }

        return isOrdered ? new Pedigree(given, positions) : Ordered(given, positions);
    }

    /// <summary>Looks for an animal that is its own ancestor, without throwing.</summary>
    /// <param name="animals">The animals in any order; parents that are not listed are taken as founders, and of an animal
    /// listed twice the first entry counts.</param>
    /// <returns>The animals of one loop as in <see cref="PedigreeLoopException.Animals"/>; empty if there is none.</returns>
    public static IReadOnlyList<string> FindLoop(IEnumerable<PedigreeAnimal> animals)
    {
        ArgumentNullException.ThrowIfNull(animals);
        var given = new List<PedigreeAnimal>();
        var positions = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var animal in animals)
        {
            if (positions.TryAdd(animal.Key, given.Count))
            {
                given.Add(animal);
            }
        }

        var walk = new AncestorWalk([.. given], positions);
        for (var i = 0; i < given.Count; i++)
        {
            if (walk.Visit(i) is { } loop)
            {
                return loop;
            }
        }

        return [];
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

    private static Pedigree Ordered(PedigreeAnimal[] given, Dictionary<string, int> positions)
    {
        var walk = new AncestorWalk(given, positions);
        for (var i = 0; i < given.Length; i++)
        {
            if (walk.Visit(i) is { } loop)
            {
                throw new PedigreeLoopException(loop);
            }
        }

        PedigreeAnimal[] ordered = [.. walk.Ordered.Select(i => given[i])];
        for (var i = 0; i < ordered.Length; i++)
        {
            positions[ordered[i].Key] = i;
        }

        return new Pedigree(ordered, positions);
    }

    /// <summary>A walk up through the ancestors, deepest first. It keeps its own stack, so that a line of many thousand
    /// generations does not exhaust the thread's.</summary>
    private sealed class AncestorWalk(PedigreeAnimal[] animals, Dictionary<string, int> positions)
    {
        private readonly Mark[] _marks = new Mark[animals.Length];

        private enum Mark : byte
        {
            NotSeen,
            OnPath,
            Done,
        }

        public List<int> Ordered { get; } = new(animals.Length);

        public IReadOnlyList<string>? Visit(int start)
        {
            if (_marks[start] == Mark.Done)
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
                    _marks[step.Animal] = Mark.Done;
                    Ordered.Add(step.Animal);
                }
                else if (positions.TryGetValue(step.Parents.Current, out var parent))
                {
                    if (_marks[parent] == Mark.OnPath)
                    {
                        return [.. path.SkipWhile(s => s.Animal != parent).Select(s => animals[s.Animal].Key)];
                    }

                    if (_marks[parent] == Mark.NotSeen)
                    {
                        Enter(parent, path);
                    }
                }
            }

            return null;
        }

        private void Enter(int animal, List<Step> path)
        {
            _marks[animal] = Mark.OnPath;
            path.Add(new Step(animal, animals[animal].NamedParents().GetEnumerator()));
        }

        private sealed record Step(int Animal, IEnumerator<string> Parents);
    }
}
