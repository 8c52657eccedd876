namespace Clutchwright.Planning.Routes;

/// <summary>A brother and a sister held back from one pairing, to be mated.</summary>
/// <param name="Brother">His class.</param>
/// <param name="Sister">Her class.</param>
/// <param name="Effort">What it takes to have them; ready are both.</param>
internal sealed record RouteCouple(int Brother, int Sister, RouteEffort Effort)
{
    /// <summary>The pairing they are from; null: the mating of a couple.</summary>
    public RoutePairing? From { get; init; }

    /// <summary>The mating of a couple they are from.</summary>
    public CouplePairing? FromCouple { get; init; }

    public bool IsRemoved { get; set; }
}

/// <summary>The mating of a couple.</summary>
/// <param name="Couple">The two.</param>
/// <param name="Seen">The chance per good egg of a hatchling that looks right.</param>
/// <param name="SeenSister">The same of the second animal held back, where a brother and a sister are.</param>
/// <param name="Trust">The chance that what looks right is right, of all held back from it together.</param>
internal sealed record CouplePairing(RouteCouple Couple, double Seen, double SeenSister, double Trust);

/// <summary>A way to the target: its last pairing.</summary>
/// <param name="Target">The target.</param>
/// <param name="From">The last pairing; null: it is that of a couple.</param>
/// <param name="FromCouple">The mating of a couple.</param>
/// <param name="Chance">By the end of each season.</param>
/// <param name="Pairings">Pairings on average.</param>
/// <param name="Raised">Animals held back.</param>
/// <param name="Cost">In the keeper's unit, prices and all.</param>
internal sealed record RouteFinish(
    RouteTarget Target, RoutePairing? From, CouplePairing? FromCouple, double[] Chance, double Pairings, int Raised, double Cost);
