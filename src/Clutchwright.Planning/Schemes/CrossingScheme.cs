namespace Clutchwright.Planning.Schemes;

/// <summary>One crossing of a scheme, or a selfing where both parents are the same plant.</summary>
/// <param name="First">The first parent: below the number of the problem's parents one of these, else the child of the crossing with
/// this number less that of the parents.</param>
/// <param name="Second">The second parent, in the same way.</param>
/// <param name="Child">What is kept of the offspring.</param>
/// <param name="Chance">The chance of the child in one offspring, in (0, 1].</param>
/// <param name="Offspring">How many are raised.</param>
public sealed record Crossing(int First, int Second, HaplotypePair Child, double Chance, int Offspring);

/// <summary>Crossings in an order in which they can be made, the last gives what is wanted.</summary>
public sealed class CrossingScheme
{
    private CrossingScheme(IReadOnlyList<Crossing> crossings, int plants, int generations, int cost)
    {
        Crossings = crossings;
        Plants = plants;
        Generations = generations;
        Cost = cost;
    }

    /// <summary>Gets the crossings, each after those that make its parents.</summary>
    public IReadOnlyList<Crossing> Crossings { get; }

    /// <summary>Gets how many offspring are raised in all.</summary>
    public int Plants { get; }

    /// <summary>Gets how many generations pass: the longest line of crossings that follow on each other.</summary>
    public int Generations { get; }

    /// <summary>Gets the cost as the problem weighs it, in plants.</summary>
    public int Cost { get; }

    internal static CrossingScheme Of(SchemeProblem problem, IReadOnlyList<Crossing> crossings)
    {
        var parents = problem.Parents.Count;
        var generation = new int[parents + crossings.Count];
        for (var i = 0; i < crossings.Count; i++)
        {
            generation[parents + i] = 1 + Math.Max(generation[crossings[i].First], generation[crossings[i].Second]);
        }

        var plants = crossings.Sum(c => c.Offspring);
        var generations = generation[^1];
        return new(
            crossings,
            plants,
            generations,
            plants + (problem.PerCrossing * crossings.Count) + (problem.PerGeneration * generations));
    }
}
