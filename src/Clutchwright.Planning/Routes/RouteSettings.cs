using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>What a route is reckoned with: time, clutches, room, rearing and cost. Immutable.</summary>
/// <remarks>See docs/model/routes.md. Costs are in a unit of the keeper's own.</remarks>
public sealed record RouteSettings
{
    /// <summary>The longest horizon, in seasons.</summary>
    public const int MostSeasons = 20;

    /// <summary>Gets the horizon: how many breeding seasons may be used, 1 to <see cref="MostSeasons"/>.</summary>
    public int Seasons { get; init; } = 8;

    /// <summary>Gets how many seasons after hatching a male first sires a clutch, from 1.</summary>
    public int MaleMaturity { get; init; } = 2;

    /// <summary>Gets how many seasons after hatching a female first lays, from 1.</summary>
    public int FemaleMaturity { get; init; } = 3;

    /// <summary>Gets the good eggs one paired female gives in a season; that she may not lay at all belongs in it.</summary>
    public GoodEggs Clutch { get; init; } = GoodEggs.Exactly(6);

    /// <summary>Gets the chance that a paired female lays, in (0, 1]: it turns pairings into clutches where clutches are counted.</summary>
    public double Laying { get; init; } = 1.0;

    /// <summary>Gets the chance that a held-back hatchling lives and breeds, in (0, 1].</summary>
    public double Rearing { get; init; } = 1.0;

    /// <summary>Gets how many equal females of the stock may be paired for one step in the same season, from 1.</summary>
    public int MostDams { get; init; } = 3;

    /// <summary>Gets how many animals may be held back in all; <c>null</c>: no limit.</summary>
    public int? MostRaised { get; init; }

    /// <summary>Gets the cost of a clutch.</summary>
    public double ClutchCost { get; init; } = 1.0;

    /// <summary>Gets the cost of raising one held-back animal until it breeds.</summary>
    public double RearingCost { get; init; } = 1.0;

    /// <summary>Gets the dangers that the keeper has lifted: pairings that can give them are not left out.</summary>
    public IReadOnlySet<Danger> Lifted { get; init; } = new HashSet<Danger>();

    /// <summary>The seasons until one of a sex breeds.</summary>
    internal int AgeOf(Sex sex) => sex == Sex.Male ? MaleMaturity : FemaleMaturity;

    /// <summary>The seasons until the sooner sex breeds.</summary>
    internal int LeastAge => Math.Min(MaleMaturity, FemaleMaturity);

    /// <summary>A step that gives what is held back from it less often than about once in a hundred seasons is not taken.</summary>
    internal double LeastSeen => 0.01 / Math.Max(Clutch.Mean, 0.01);

    /// <summary>The cost of a pairing: that of a clutch, where she lays.</summary>
    internal double PairingCost => ClutchCost * Laying;
}
