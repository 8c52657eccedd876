namespace Clutchwright.Planning.Schemes;

/// <summary>The cheapest schemes in the shape of a tree: the child of a crossing is parent once, and a plant that is wanted twice is made twice.</summary>
/// <remarks>The cost of a plant is the cost of its parents (of a selfing, its one parent) and of the crossing, so plants can be settled
/// from the cheapest up (docs/references.md [Knuth1977]); parents are kept by gamete (<see cref="GameteFronts"/>). Where generations cost,
/// the table is made for 1, 2, ... generations.</remarks>
public static class TreeSchemes
{
    /// <summary>The most parents of which each may be used only once.</summary>
    public const int MostParentsOnce = 11;

    /// <summary>Finds the cheapest scheme in which each parent, too, is used once at most: the published form.</summary>
    /// <returns>The scheme, exact; <c>null</c> where none gives the target within the most plants a crossing may raise. Of equal ones the
    /// same is given every time.</returns>
    /// <remarks>Cost: O(6^n) steps for n parents of a locus each; seconds for 8 loci. Source: docs/references.md [Servin2004].</remarks>
    /// <param name="problem">The problem.</param>
    /// <param name="selfing">Where selfings may stand; the published trees have one at the end.</param>
    /// <exception cref="ArgumentException">There are more than <see cref="MostParentsOnce"/> parents.</exception>
    public static CrossingScheme? ParentsOnce(SchemeProblem problem, Selfing selfing) => problem.Parents.Count <= MostParentsOnce
        ? Best(problem, selfing, i => 1 << i)
        : throw new ArgumentException($"Parents used once are at most {MostParentsOnce}, not {problem.Parents.Count}.", nameof(problem));

    /// <summary>Finds the cheapest scheme in which a parent can be used again and again.</summary>
    /// <returns>As <see cref="ParentsOnce"/>; selfings may stand anywhere.</returns>
    /// <remarks>Cost: O(5^n) steps for n loci; about a second for 8.</remarks>
    public static CrossingScheme? ParentsAtWill(SchemeProblem problem) => Best(problem, Selfing.AnyStep, _ => 0);

    private static CrossingScheme? Best(SchemeProblem problem, Selfing selfing, Func<int, int> used)
    {
        var parents = problem.Parents.Select((p, i) => new Plant(used(i), p.Index)).ToArray();
        var costs = new SchemeCosts(problem.Loci.Pairs);
        foreach (var parent in parents)
        {
            costs.Of(parent.Used)[parent.Genotype] = 0;
        }

        return problem.PerGeneration == 0 ? Settled(problem, selfing, parents, costs) : ByGenerations(problem, selfing, parents, costs);
    }

    private static CrossingScheme? Settled(SchemeProblem problem, Selfing selfing, Plant[] parents, SchemeCosts costs)
    {
        var target = problem.Target.Index;
        var producers = new Dictionary<Plant, (Plant First, Plant Second)>();
        var queue = new PriorityQueue<Plant, (int Cost, int Used, int Genotype)>();
        foreach (var parent in parents)
        {
            queue.Enqueue(parent, (0, parent.Used, parent.Genotype));
        }

        var fronts = new GameteFronts(problem, selfing, costs, (child, cost, first, second) =>
        {
            producers[child] = (first, second);
            queue.Enqueue(child, (cost, child.Used, child.Genotype));
        });
        while (queue.TryDequeue(out var plant, out var key))
        {
            if (plant.Genotype == target)
            {
                return new TreeWriter(problem, parents, [producers]).Write(plant, 0);
            }

            if (key.Cost == costs.Of(plant.Used)[plant.Genotype])
            {
                fronts.Add(plant, key.Cost);
            }
        }

        return null;
    }

    private static CrossingScheme? ByGenerations(SchemeProblem problem, Selfing selfing, Plant[] parents, SchemeCosts costs)
    {
        var producers = new List<Dictionary<Plant, (Plant First, Plant Second)>> { new() };
        var (best, bestAt, bestPlant) = (SchemeCosts.Never, 0, default(Plant));
        while (true)
        {
            var (plant, cost) = costs.Cheapest(problem.Target.Index);
            if (cost + (problem.PerGeneration * (producers.Count - 1)) < best)
            {
                (best, bestAt, bestPlant) = (cost + (problem.PerGeneration * (producers.Count - 1)), producers.Count - 1, plant);
            }

            var next = costs.Copy();
            var made = new Dictionary<Plant, (Plant First, Plant Second)>();
            var fronts = new GameteFronts(problem, selfing, next, (child, _, first, second) => made[child] = (first, second));
            foreach (var (known, knownCost) in costs.InOrder())
            {
                fronts.Add(known, knownCost);
            }

            if (made.Count == 0 || problem.PerGeneration * producers.Count >= best)
            {
                return best < SchemeCosts.Never ? new TreeWriter(problem, parents, producers).Write(bestPlant, bestAt) : null;
            }

            producers.Add(made);
            costs = next;
        }
    }
}
