namespace Clutchwright.Planning.Schemes;

/// <summary>A genotype and the parents that its line has used up, a bit each; 0 where parents can be used at will.</summary>
internal readonly record struct Plant(int Used, int Genotype);

/// <summary>The plants at hand, taken in order of cost, kept by gamete: only those are of use as one parent of a cross that give a gamete
/// likelier than every cheaper plant that used the same parents.</summary>
/// <remarks>For two different parents the cost of a child falls with the cost of each parent and with the chance of each of their gametes, so
/// a plant that another beats in all of these can be replaced by it. Where each of the two can give both gametes, both
/// chances count. Where the one that beats it is the other parent, that one selfed is as good, so plants of one line must be free to self, unless lines
/// that share a parent never meet. A selfing pays for its one parent once and is tried for every plant.</remarks>
internal sealed class GameteFronts(SchemeProblem problem, Selfing selfing, SchemeCosts costs, Action<Plant, int, Plant, Plant> offer)
{
    private readonly record struct Single(int Gamete, int Cost, double Chance, int Genotype);

    private readonly record struct Double(int Cost, double Low, double High, Plant Plant);

    private sealed class Kept(int used, SchemeProblem problem)
    {
        // The alleles that the parents left to a mate have between them.
        private readonly int _ones = problem.Parents.Where((_, i) => ((used >> i) & 1) == 0).Aggregate(0, (all, p) => all | p.Low | p.High);
        private readonly int _zeros = problem.Parents.Where((_, i) => ((used >> i) & 1) == 0).Aggregate(0, (all, p) => all | ~p.Low | ~p.High);

        public int Used { get; } = used;

        public List<Single> Singles { get; } = [];

        public double[] Best { get; } = new double[problem.Loci.Haplotypes];

        public bool CouldMateGive(int first, int second) => ((first | second) & ~_ones) == 0 && (~(first & second) & ((1 << problem.Loci.Count) - 1) & ~_zeros) == 0;
    }

    private readonly Dictionary<int, Kept> _kept = [];
    private readonly Dictionary<int, List<Double>> _doubles = [];
    private readonly double[] _chances = new double[problem.Loci.Haplotypes];
    private readonly double _log = -Math.Log(1.0 - problem.Success);

    /// <summary>Adds the plant with the next higher cost and offers every child it can have with those before it and by selfing.</summary>
    /// <param name="plant">The plant.</param>
    /// <param name="cost">Its cost, not below that of any before.</param>
    public void Add(Plant plant, int cost)
    {
        if (!_kept.TryGetValue(plant.Used, out var kept))
        {
            _kept.Add(plant.Used, kept = new(plant.Used, problem));
        }

        var pair = HaplotypePair.At(plant.Genotype);
        var gametes = pair.Gametes();
        foreach (var gamete in gametes)
        {
            _chances[gamete] = problem.Loci.GameteChance(pair, gamete);
        }

        var own = costs.Of(plant.Used);
        var mates = _kept.Values.Where(k => (k.Used & plant.Used) == 0).ToArray();
        for (var i = 0; i < gametes.Length; i++)
        {
            AddSingle(plant, cost, gametes[i], kept, mates);
            for (var j = i; j < gametes.Length; j++)
            {
                var (low, high) = (Math.Min(gametes[i], gametes[j]), Math.Max(gametes[i], gametes[j]));
                var chance = _chances[low] * _chances[high];
                var child = Index(low, high);
                if (selfing == Selfing.AnyStep || child == problem.Target.Index)
                {
                    Offer(own, child, cost, i == j ? chance : 2.0 * chance, plant, plant);
                }

                if (i != j && kept.CouldMateGive(low, high))
                {
                    AddDouble(plant, cost, child, _chances[low], _chances[high], own);
                }
            }
        }
    }

    private void AddSingle(Plant plant, int cost, int gamete, Kept kept, Kept[] mates)
    {
        var chance = _chances[gamete];
        if (kept.Best[gamete] >= chance)
        {
            return;
        }

        kept.Best[gamete] = chance;
        kept.Singles.Add(new(gamete, cost, chance, plant.Genotype));
        foreach (var mate in mates)
        {
            var best = costs.Of(plant.Used | mate.Used);
            foreach (var single in mate.Singles)
            {
                var partner = new Plant(mate.Used, single.Genotype);
                if (partner != plant)
                {
                    Offer(best, Index(gamete, single.Gamete), cost + single.Cost, chance * single.Chance, plant, partner);
                }
            }
        }
    }

    private void AddDouble(Plant plant, int cost, int child, double low, double high, int[] own)
    {
        // Together, two plants give a child of two gametes no likelier than either gives the likelier of these.
        var most = plant.Used == 0 ? Math.Min(own[child], costs.Target) : costs.Target;
        if (IsTooDear(most - cost - problem.PerCrossing, Math.Max(low, high)))
        {
            return;
        }

        if (!_doubles.TryGetValue(child, out var front))
        {
            _doubles.Add(child, front = []);
        }

        foreach (var mate in front)
        {
            if (mate.Low >= low && mate.High >= high && mate.Plant.Used == plant.Used)
            {
                return;
            }
        }

        foreach (var mate in front)
        {
            if ((mate.Plant.Used & plant.Used) == 0)
            {
                Offer(
                    costs.Of(plant.Used | mate.Plant.Used), child, cost + mate.Cost, (low * mate.High) + (high * mate.Low), plant, mate.Plant);
            }
        }

        front.Add(new(cost, low, high, plant));
    }

    private void Offer(int[] best, int child, int parents, double chance, Plant first, Plant second)
    {
        var room = Math.Min(best[child], costs.Target) - parents - problem.PerCrossing;
        if (IsTooDear(room, chance))
        {
            return;
        }

        var offspring = problem.Offspring(chance);
        if (offspring <= problem.MostPlants && offspring < room)
        {
            best[child] = parents + problem.PerCrossing + offspring;
            if (child == problem.Target.Index)
            {
                costs.Target = Math.Min(costs.Target, best[child]);
            }

            offer(new(first.Used | second.Used, child), best[child], first, second);
        }
    }

    // Most crossings are far too dear, which a bound without logarithm tells: -ln(1 - p) <= p / (1 - p).
    private bool IsTooDear(int room, double chance) => room <= 1 || _log * (1.0 - chance) >= (room + 1.0) * chance;

    private static int Index(int a, int b) => a < b ? (b * (b + 1) / 2) + a : (a * (a + 1) / 2) + b;
}
