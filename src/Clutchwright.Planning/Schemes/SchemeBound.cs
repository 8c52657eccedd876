namespace Clutchwright.Planning.Schemes;

/// <summary>A bound on what is still to pay: the dearest line of crossings that each follow on the one before, on the cheapest way.</summary>
/// <remarks>The cost of a genotype is that of its crossing and of the dearer of its parents, the other is for nothing; so a
/// plant that many share is never paid twice. In planning this is known as the maximum heuristic (docs/references.md [BonetGeffner2001]).</remarks>
internal sealed class SchemeBound(SchemeProblem problem)
{
    private readonly PriorityQueue<int, int> _queue = new();
    private readonly int[] _cost = new int[problem.Loci.Pairs];
    private readonly double[] _likeliest = new double[problem.Loci.Haplotypes];
    private readonly double[] _chances = new double[problem.Loci.Haplotypes];
    private readonly double _log = -Math.Log(1.0 - problem.Success);
    private readonly Dictionary<int, (int[] Gametes, double[] Chances)> _gametes = [];

    /// <summary>The bound from the parents alone.</summary>
    public int OfParents() => Of([.. problem.Parents.Select(p => (p.Index, 0))], SchemeCosts.Never);

    /// <summary>The bound from plants at hand, of which each has been had after so many generations.</summary>
    /// <param name="plants">Index of the genotype, and generation.</param>
    /// <param name="limit">A bound of this much is as good as any higher one.</param>
    /// <returns>What must still be paid; all generations, those past too, are in it.</returns>
    public int Of(IReadOnlyList<(int Genotype, int Generation)> plants, int limit)
    {
        Array.Fill(_cost, limit);
        Array.Clear(_likeliest);
        _queue.Clear();
        foreach (var (genotype, generation) in plants)
        {
            Lower(genotype, generation * problem.PerGeneration);
        }

        var target = problem.Target.Index;
        while (_queue.TryDequeue(out var genotype, out var cost))
        {
            if (genotype == target)
            {
                return cost;
            }

            if (cost == _cost[genotype])
            {
                Spread(genotype, cost + problem.PerCrossing + problem.PerGeneration);
            }
        }

        return limit;
    }

    private void Spread(int genotype, int cost)
    {
        var (gametes, chances) = GametesOf(genotype);
        for (var i = 0; i < gametes.Length; i++)
        {
            _chances[gametes[i]] = chances[i];
            _likeliest[gametes[i]] = Math.Max(_likeliest[gametes[i]], chances[i]);
        }

        for (var i = 0; i < gametes.Length; i++)
        {
            var one = gametes[i];
            for (var other = 0; other < _likeliest.Length; other++)
            {
                if (_likeliest[other] > 0.0)
                {
                    var (low, high) = (Math.Min(one, other), Math.Max(one, other));
                    var chance = chances[i] * _likeliest[other];
                    Offer((high * (high + 1) / 2) + low, cost, one == other ? chance : chance + (_chances[other] * _likeliest[one]));
                }
            }
        }

        foreach (var gamete in gametes)
        {
            _chances[gamete] = 0.0;
        }
    }

    private void Offer(int child, int cost, double chance)
    {
        var room = _cost[child] - cost;
        if (room > 1 && _log * (1.0 - chance) < (room + 1.0) * chance)
        {
            var offspring = problem.Offspring(chance);
            if (offspring < room && offspring <= problem.MostPlants)
            {
                Lower(child, cost + offspring);
            }
        }
    }

    private void Lower(int genotype, int cost)
    {
        if (cost < _cost[genotype])
        {
            _cost[genotype] = cost;
            _queue.Enqueue(genotype, cost);
        }
    }

    private (int[] Gametes, double[] Chances) GametesOf(int genotype)
    {
        if (!_gametes.TryGetValue(genotype, out var known))
        {
            var pair = HaplotypePair.At(genotype);
            var gametes = pair.Gametes();
            _gametes.Add(genotype, known = (gametes, [.. gametes.Select(g => problem.Loci.GameteChance(pair, g))]));
        }

        return known;
    }
}
