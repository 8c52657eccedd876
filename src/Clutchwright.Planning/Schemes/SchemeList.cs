namespace Clutchwright.Planning.Schemes;

/// <summary>A list of genotypes to make, in this order, the wanted one last; each from the best two plants before it.</summary>
internal sealed class SchemeList
{
    /// <summary>The most genotypes a list holds.</summary>
    public const int Most = 32;

    private const int Dear = 1 << 28;
    private const int MostKept = 1 << 14;

    private readonly SchemeProblem _problem;
    private readonly int _parents;
    private readonly Plant[] _plants;
    private readonly double[] _first;
    private readonly double[] _second;
    private readonly int[] _place;
    private readonly Dictionary<int, double[]> _gametes = [];
    private readonly Dictionary<double, int> _offspring = [];

    public SchemeList(SchemeProblem problem)
    {
        _problem = problem;
        _parents = problem.Parents.Count;
        _plants = new Plant[_parents + Most];
        (_first, _second, _place) = (new double[_plants.Length], new double[_plants.Length], new int[_plants.Length]);
        for (var i = 0; i < _parents; i++)
        {
            _plants[i] = new(problem.Parents[i], GametesOf(problem.Parents[i]));
        }
    }

    /// <summary>How many genotypes are made.</summary>
    public int Count { get; private set; }

    /// <summary>A plant at a place: first the parents, then the genotypes made.</summary>
    public HaplotypePair this[int place] => _plants[place].Pair;

    /// <summary>How many plants there are, parents and made.</summary>
    public int Places => _parents + Count;

    public void Insert(int place, HaplotypePair pair)
    {
        Array.Copy(_plants, place, _plants, place + 1, Places - place);
        _plants[place] = new(pair, GametesOf(pair));
        Count++;
    }

    public void RemoveAt(int place)
    {
        Array.Copy(_plants, place + 1, _plants, place, Places - place - 1);
        Count--;
    }

    public void Replace(int place, HaplotypePair pair) => _plants[place] = new(pair, GametesOf(pair));

    public void Move(int from, int to)
    {
        var plant = _plants[from];
        if (from < to)
        {
            Array.Copy(_plants, from + 1, _plants, from, to - from);
        }
        else
        {
            Array.Copy(_plants, to, _plants, to + 1, from - to);
        }

        _plants[to] = plant;
    }

    /// <summary>Becomes the same as another list; crossings before <paramref name="from"/> are the same already.</summary>
    public void CopyFrom(SchemeList other, int from)
    {
        Array.Copy(other._plants, from, _plants, from, other.Places - from);
        Count = other.Count;
    }

    /// <summary>Finds the best parents for each genotype from a place on, those before being known, and the cost of all.</summary>
    /// <param name="from">The first place that changed.</param>
    /// <param name="limit">What is dearer than this is of no interest.</param>
    /// <returns>The cost; some number above <paramref name="limit"/> where it is above, or where a genotype cannot be made.</returns>
    public double Cost(int from, double limit)
    {
        long cost = 0;
        for (var place = _parents; place < Places; place++)
        {
            if (place >= from && !FindParents(place))
            {
                return Dear;
            }

            cost += _plants[place].Offspring + _problem.PerCrossing;
            if (cost > limit)
            {
                return Dear;
            }
        }

        return cost + ((long)_problem.PerGeneration * _plants[Places - 1].Generation);
    }

    /// <summary>The scheme, without the genotypes that nothing needs.</summary>
    public CrossingScheme ToScheme()
    {
        var needed = new bool[Places];
        needed[^1] = true;
        for (var place = Places - 1; place >= _parents; place--)
        {
            if (needed[place])
            {
                needed[_plants[place].First] = needed[_plants[place].Second] = true;
            }
        }

        var number = Enumerable.Range(0, Places).ToArray();
        var crossings = new List<Crossing>();
        for (var place = _parents; place < Places; place++)
        {
            if (needed[place])
            {
                number[place] = _parents + crossings.Count;
                var plant = _plants[place];
                crossings.Add(new(
                    number[plant.First],
                    number[plant.Second],
                    plant.Pair,
                    _problem.Loci.ChildChance(this[plant.First], this[plant.Second], plant.Pair),
                    plant.Offspring));
            }
        }

        return CrossingScheme.Of(_problem, crossings);
    }

    private bool FindParents(int place)
    {
        ref var plant = ref _plants[place];
        var (low, high) = (plant.Pair.Low, plant.Pair.High);
        var able = 0;
        for (var i = 0; i < place; i++)
        {
            var gametes = _plants[i].Gametes;
            if (gametes[low] > 0.0 || gametes[high] > 0.0)
            {
                (_first[able], _second[able], _place[able]) = (gametes[low], gametes[high], i);
                able++;
            }
        }

        // Of two ways of the same number of plants the one of fewer generations: generations are counted only where they cost.
        var (best, bestChance) = (long.MaxValue, 0.0);
        for (var i = 0; i < able; i++)
        {
            for (var j = i; j < able; j++)
            {
                var chance = low == high ? _first[i] * _first[j] : (_first[i] * _second[j]) + (_second[i] * _first[j]);
                if (chance <= 0.0 || (_problem.PerGeneration == 0 && chance <= bestChance))
                {
                    continue;
                }

                var (one, other) = (_place[i], _place[j]);
                var generation = 1 + Math.Max(_plants[one].Generation, _plants[other].Generation);
                var score = _problem.PerGeneration == 0 ? 0 : OffspringFor(chance) + ((long)_problem.PerGeneration * generation);
                if (score < best || _problem.PerGeneration == 0)
                {
                    (best, bestChance) = (score, chance);
                    (plant.First, plant.Second, plant.Generation) = (one, other, generation);
                }
            }
        }

        plant.Offspring = bestChance > 0.0 ? OffspringFor(bestChance) : Dear;
        return plant.Offspring <= _problem.MostPlants;
    }

    private int OffspringFor(double chance)
    {
        if (!_offspring.TryGetValue(chance, out var offspring))
        {
            if (_offspring.Count >= 16 * MostKept)
            {
                _offspring.Clear();
            }

            _offspring.Add(chance, offspring = _problem.Offspring(chance));
        }

        return offspring;
    }

    private double[] GametesOf(HaplotypePair pair)
    {
        if (!_gametes.TryGetValue(pair.Index, out var chances))
        {
            if (_gametes.Count >= MostKept)
            {
                _gametes.Clear();
            }

            _gametes.Add(pair.Index, chances = new double[_problem.Loci.Haplotypes]);
            foreach (var gamete in pair.Gametes())
            {
                chances[gamete] = _problem.Loci.GameteChance(pair, gamete);
            }
        }

        return chances;
    }

    private struct Plant(HaplotypePair pair, double[] gametes)
    {
        public readonly HaplotypePair Pair = pair;
        public readonly double[] Gametes = gametes;
        public int First;
        public int Second;
        public int Offspring;
        public int Generation;
    }
}
