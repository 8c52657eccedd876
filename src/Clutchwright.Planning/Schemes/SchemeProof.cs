namespace Clutchwright.Planning.Schemes;

/// <summary>Branch and bound over the sets of genotypes made: proves the best scheme of small problems.</summary>
/// <remarks>A set grows by one genotype at a time, each from the cheapest two plants there are (where generations cost, for each number of
/// generations). A cross of two homozygous plants is a sure thing and is made just before the first that needs it; the two or three together are one
/// step. Of the orders of one set only that is looked at in which no two neighbouring steps could stand the other way round, the
/// second having the lower index and no need of the first. What is left to pay is bounded by <see cref="SchemeBound"/>.</remarks>
internal sealed class SchemeProof
{
    /// <summary>With more loci there are too many sets for any proof to end.</summary>
    public const int MostLoci = 4;

    private readonly SchemeProblem _problem;
    private readonly SchemeBound _bound;
    private readonly JunctionBound _junctions;
    private readonly CancellationToken _cancel;
    private readonly List<(int Genotype, int Generation)> _plants;
    private readonly List<Crossing> _crossings = [];
    private readonly int _generations;
    private int _left;

    /// <summary>Prepares a proof that nothing is cheaper than a scheme, or the finding of what is.</summary>
    public SchemeProof(SchemeProblem problem, CrossingScheme best, int steps, CancellationToken cancel)
    {
        _problem = problem;
        _bound = new(problem);
        _junctions = new(problem);
        _cancel = cancel;
        _left = steps;
        _plants = [.. problem.Parents.Select(p => (p.Index, 0))];
        _generations = problem.PerGeneration == 0 ? 1 : (best.Cost / (problem.PerGeneration + problem.PerCrossing + 1)) + 1;
        Best = best;
    }

    /// <summary>The best scheme known.</summary>
    public CrossingScheme Best { get; private set; }

    /// <summary>Looks at everything that could be cheaper.</summary>
    /// <returns>Whether it came to an end, so that <see cref="Best"/> is the cheapest there is.</returns>
    public bool Run()
    {
        var ways = new Way[_problem.Loci.Pairs * _generations];
        for (var i = 0; i < _plants.Count; i++)
        {
            AddWays(ways, i);
        }

        var joined = _problem.Parents.Aggregate(0, (all, p) => all | _junctions.JoinedBy(p));
        return Branch(ways, new(0, -1, joined, _plants.Count, 0));
    }

    private readonly record struct Way(int Offspring, int First, int Second);

    // What was paid; the genotype of the last step and the place of its first plant; neighbours joined; sure plants made that nothing uses yet.
    private readonly record struct Stand(int Spent, int Last, int Joined, int From, int Unused);

    private bool Branch(Way[] ways, Stand stand)
    {
        var next = new List<(int Bound, int Genotype, int Generation, Way Way)>();
        for (var place = 0; place < ways.Length; place++)
        {
            var (genotype, generation, way) = (place / _generations, (place % _generations) + 1, ways[place]);
            if (way.Offspring == 0 || _plants.Exists(p => p.Genotype == genotype))
            {
                continue;
            }

            var paid = stand.Spent + way.Offspring + _problem.PerCrossing;
            if (genotype == _problem.Target.Index)
            {
                Take(genotype, way);
                continue;
            }

            var rest = _junctions.Of(stand.Joined | _junctions.JoinedBy(HaplotypePair.At(genotype)));
            if (!MayFollow(stand, genotype, way) || paid + _problem.PerCrossing + Math.Max(1, rest) >= Best.Cost)
            {
                continue;
            }

            if (_left-- <= 0)
            {
                return false;
            }

            _plants.Add((genotype, generation));
            var bound = paid + _bound.Of(_plants, Best.Cost - paid);
            _plants.RemoveAt(_plants.Count - 1);
            if (bound < Best.Cost)
            {
                next.Add((bound, genotype, generation, way));
            }
        }

        _cancel.ThrowIfCancellationRequested();
        foreach (var (bound, genotype, generation, way) in next.OrderBy(n => n.Bound).ThenBy(n => n.Genotype))
        {
            if (bound >= Best.Cost)
            {
                break;
            }

            var more = (Way[])ways.Clone();
            _plants.Add((genotype, _problem.PerGeneration == 0 ? 0 : generation));
            _crossings.Add(Crossed(genotype, way));
            AddWays(more, _plants.Count - 1);
            var (paid, joined) = (stand.Spent + way.Offspring + _problem.PerCrossing, stand.Joined | _junctions.JoinedBy(HaplotypePair.At(genotype)));
            var isDone = Branch(more, IsSure(way)
                ? new(paid, stand.Last, joined, stand.From, stand.Unused + 1)
                : new(paid, genotype, joined, _plants.Count - 1 - stand.Unused, 0));
            _plants.RemoveAt(_plants.Count - 1);
            _crossings.RemoveAt(_crossings.Count - 1);
            if (!isDone)
            {
                return false;
            }
        }

        return true;
    }

    private bool IsSure(Way way) => PairAt(way.First).IsHomozygous && PairAt(way.Second).IsHomozygous;

    private bool MayFollow(Stand stand, int genotype, Way way)
    {
        var unused = _plants.Count - stand.Unused;
        if (IsSure(way))
        {
            return stand.Unused == 0 || (stand.Unused == 1 && genotype > _plants[^1].Genotype);
        }

        for (var place = unused; place < _plants.Count; place++)
        {
            if (way.First != place && way.Second != place)
            {
                return false;
            }
        }

        return stand.Last < genotype || NeedsLast(way.First) || NeedsLast(way.Second);

        bool NeedsLast(int place) => place < unused
            ? place >= stand.From
            : _crossings[place - _problem.Parents.Count] is var sure && (NeedsLast(sure.First) || NeedsLast(sure.Second));
    }

    private void Take(int genotype, Way way)
    {
        var scheme = CrossingScheme.Of(_problem, [.. _crossings, Crossed(genotype, way)]);
        if (scheme.Cost < Best.Cost)
        {
            Best = scheme;
        }
    }

    private Crossing Crossed(int genotype, Way way)
    {
        var child = HaplotypePair.At(genotype);
        var chance = _problem.Loci.ChildChance(PairAt(way.First), PairAt(way.Second), child);
        return new(way.First, way.Second, child, chance, way.Offspring);
    }

    private HaplotypePair PairAt(int place) => HaplotypePair.At(_plants[place].Genotype);

    // Every child of the plant at a place with itself and those before it, where that is the cheapest way to the child.
    private void AddWays(Way[] ways, int place)
    {
        var pair = PairAt(place);
        for (var other = 0; other <= place; other++)
        {
            var mate = PairAt(other);
            var generation = _problem.PerGeneration == 0 ? 0 : Math.Max(_plants[place].Generation, _plants[other].Generation);
            if (generation >= _generations)
            {
                continue;
            }

            foreach (var one in pair.Gametes())
            {
                foreach (var two in mate.Gametes())
                {
                    var child = new HaplotypePair(one, two);
                    var offspring = _problem.Offspring(_problem.Loci.ChildChance(pair, mate, child));
                    ref var way = ref ways[(child.Index * _generations) + generation];
                    if (offspring <= _problem.MostPlants && (way.Offspring == 0 || offspring < way.Offspring))
                    {
                        way = new(offspring, place, other);
                    }
                }
            }
        }
    }
}
