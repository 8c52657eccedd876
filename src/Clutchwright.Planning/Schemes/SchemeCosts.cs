namespace Clutchwright.Planning.Schemes;

/// <summary>The lowest cost known of each genotype, for each set of parents used up in its line.</summary>
internal sealed class SchemeCosts(int genotypes)
{
    /// <summary>The cost of what cannot be had.</summary>
    public const int Never = int.MaxValue / 4;

    private readonly Dictionary<int, int[]> _costs = [];

    /// <summary>Gets or sets the lowest cost known of what is wanted: nothing dearer is of use.</summary>
    public int Target { get; set; } = Never;

    /// <summary>Gets the costs of all genotypes, by index, made from these parents; the caller lowers them.</summary>
    public int[] Of(int used)
    {
        if (!_costs.TryGetValue(used, out var costs))
        {
            costs = new int[genotypes];
            Array.Fill(costs, Never);
            _costs.Add(used, costs);
        }

        return costs;
    }

    /// <summary>Gets the lowest cost of a genotype whatever parents it uses, and the plant that has it.</summary>
    public (Plant Plant, int Cost) Cheapest(int genotype) => _costs
        .Select(c => (Plant: new Plant(c.Key, genotype), Cost: c.Value[genotype]))
        .OrderBy(c => c.Cost)
        .ThenBy(c => c.Plant.Used)
        .First();

    /// <summary>Lists every plant that can be had, cheapest first.</summary>
    public (Plant Plant, int Cost)[] InOrder() => _costs
        .SelectMany(c => c.Value.Select((cost, genotype) => (Plant: new Plant(c.Key, genotype), Cost: cost)))
        .Where(c => c.Cost < Never)
        .OrderBy(c => c.Cost)
        .ThenBy(c => c.Plant.Used)
        .ThenBy(c => c.Plant.Genotype)
        .ToArray();

    /// <summary>A copy that changes apart from this.</summary>
    public SchemeCosts Copy()
    {
        var copy = new SchemeCosts(genotypes) { Target = Target };
        foreach (var (used, costs) in _costs)
        {
            copy._costs.Add(used, [.. costs]);
        }

        return copy;
    }
}
