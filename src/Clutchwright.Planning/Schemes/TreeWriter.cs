namespace Clutchwright.Planning.Schemes;

/// <summary>Writes down the tree of crossings behind a plant.</summary>
internal sealed class TreeWriter(SchemeProblem problem, Plant[] parents, IReadOnlyList<Dictionary<Plant, (Plant First, Plant Second)>> producers)
{
    private readonly List<Crossing> _crossings = [];

    /// <summary>The scheme of a plant had after so many generations at most; one table of producers is for any number.</summary>
    public CrossingScheme Write(Plant plant, int generation)
    {
        _ = Make(plant, generation);
        return CrossingScheme.Of(problem, _crossings);
    }

    private int Make(Plant plant, int generation)
    {
        var parent = Array.IndexOf(parents, plant);
        if (parent >= 0)
        {
            return parent;
        }

        // A plant that is no cheaper with one generation more has its producers further down.
        (Plant First, Plant Second) made;
        while (!producers[generation].TryGetValue(plant, out made))
        {
            generation--;
        }

        var below = Math.Max(0, generation - 1);
        var first = Make(made.First, below);
        var second = made.First == made.Second ? first : Make(made.Second, below);
        var child = HaplotypePair.At(plant.Genotype);
        var chance = problem.Loci.ChildChance(HaplotypePair.At(made.First.Genotype), HaplotypePair.At(made.Second.Genotype), child);
        _crossings.Add(new(first, second, child, chance, problem.Offspring(chance)));
        return problem.Parents.Count + _crossings.Count - 1;
    }
}
