using Clutchwright.Genetics.Loci;
using Clutchwright.Planning.Simulation;

namespace Clutchwright.Planning.Routes;

/// <summary>The tables from which tries draw clutches and young. Safe to use from many threads.</summary>
/// <remarks>Young are drawn by the states of the closed form: alleles that play no part count as wild, and any number of groups will do, where
/// <see cref="CompiledSpecies"/> draws whole genotypes of as many as fit into its word.</remarks>
internal sealed class RouteDraws
{
    private readonly RouteWorld _world;
    private readonly AliasTable?[][] _young;

    public RouteDraws(RouteWorld world)
    {
        _world = world;
        Clutches = ClutchSampler.Of(world.Problem.Settings.Clutch, world.Problem.Settings.Laying);
        _young = [.. world.Groups.Select(g => new AliasTable?[2 * g.Count(Sex.Male) * g.Count(Sex.Female)])];
    }

    public ClutchSampler Clutches { get; }

    /// <summary>Draws the state of young at a group that does not tell the sex; -1: its genotype does not let it hatch.</summary>
    public int State(int group, int sire, int dam, Sex sex, CountedRandom random)
    {
        var states = _world.Groups[group];
        var place = (((sire * states.Count(Sex.Female)) + dam) * 2) + GroupStates.Index(sex);

        // Two threads may make the same table at once; they are equal, so either will do.
        var drawn = (_young[group][place] ??= Table(states.Children(sire, dam, sex).ToArray())).Draw(random);
        return drawn < states.Count(sex) ? drawn : -1;
    }

    /// <summary>Draws the sex and the state of young at the sex chromosomes; <c>null</c>: its genotype does not let it hatch.</summary>
    public (Sex Sex, int State)? SexAndState(int group, int sire, int dam, CountedRandom random)
    {
        var states = _world.Groups[group];
        var place = ((sire * states.Count(Sex.Female)) + dam) * 2;
        var females = states.Count(Sex.Female);
        var drawn = (_young[group][place] ??= Table([.. states.Children(sire, dam, Sex.Female), .. states.Children(sire, dam, Sex.Male)])).Draw(random);
        return drawn < females ? (Sex.Female, drawn) : drawn < females + states.Count(Sex.Male) ? (Sex.Male, drawn - females) : null;
    }

    // The last outcome is that nothing hatches.
    private static AliasTable Table(double[] live) => AliasTable.Of([.. live, live.Sum() is var sum && sum > 1.0 - 1e-12 ? 0.0 : 1.0 - sum]);
}
