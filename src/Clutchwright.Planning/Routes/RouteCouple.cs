namespace Clutchwright.Planning.Routes;

/// <summary>A brother and a sister held back from one pairing, to be mated.</summary>
/// <param name="Brother">His class.</param>
/// <param name="Sister">Her class.</param>
/// <param name="Ready">The chance that both can be paired in season t or before.</param>
/// <param name="Trust">The chance that every animal up to them is what it is taken for.</param>
/// <param name="Pairings">Pairings expected.</param>
/// <param name="Raised">Animals held back.</param>
/// <param name="Price">Prices paid.</param>
/// <param name="Round">The round of the search.</param>
internal sealed record RouteCouple(int Brother, int Sister, double[] Ready, double Trust, double Pairings, int Raised, double Price, int Round)
{
    public required RoutePairing From { get; init; }

    public (int Kind, int Count)[] Uses { get; init; } = DamUse.None;

    public bool Dominates(RouteCouple other)
    {
        if (Pairings > other.Pairings + 1e-9 || Raised > other.Raised || Price > other.Price + 1e-9)
        {
            return false;
        }

        for (var t = 1; t < Ready.Length; t++)
        {
            if (Trust * Ready[t] < (other.Trust * other.Ready[t]) - 1e-12)
            {
                return false;
            }
        }

        return DamUse.IsWithin(Uses, other.Uses);
    }
}

/// <summary>The mating of a couple.</summary>
/// <param name="Couple">The two.</param>
/// <param name="Seen">The chance per good egg of a hatchling that looks right.</param>
/// <param name="Trust">The chance that it is.</param>
internal sealed record CouplePairing(RouteCouple Couple, double Seen, double Trust);

/// <summary>A way to the target: its last pairing.</summary>
internal sealed record RouteFinish(RouteTarget Target, RoutePairing? From, CouplePairing? FromCouple, double Trust, double Pairings, int Raised, double Price)
{
    public double[] Chance { get; init; } = [];

    public int Round { get; init; }

    public bool Dominates(RouteFinish other)
    {
        if (Pairings > other.Pairings + 1e-9 || Raised > other.Raised || Price > other.Price + 1e-9)
        {
            return false;
        }

        for (var t = 1; t < Chance.Length; t++)
        {
            if (Chance[t] < other.Chance[t] - 1e-12)
            {
                return false;
            }
        }

        return true;
    }
}
