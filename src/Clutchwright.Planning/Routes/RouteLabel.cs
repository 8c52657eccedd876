using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>One way to have an animal of a class: a founder, or a hatchling held back from a pairing of two labels.</summary>
internal sealed class RouteLabel
{
    public required Sex Sex { get; init; }

    public required int Class { get; init; }

    /// <summary>The founder's type; null: held back.</summary>
    public FounderType? Founder { get; init; }

    /// <summary>The pairing it is held back from.</summary>
    public RoutePairing? From { get; init; }

    /// <summary>The mating of a couple it is held back from.</summary>
    public CouplePairing? FromCouple { get; init; }

    /// <summary>The chance that an animal which looks right can be paired in season t or before; index 0 is unused.</summary>
    public required double[] Ready { get; init; }

    /// <summary>The chance that every animal held back and every founder up to this one is what it is taken for.</summary>
    public required double Trust { get; init; }

    /// <summary>Pairings expected, all up to this one.</summary>
    public required double Pairings { get; init; }

    /// <summary>Animals held back, all up to this one.</summary>
    public required int Raised { get; init; }

    /// <summary>The prices of the animals bought.</summary>
    public required double Price { get; init; }

    /// <summary>The round of the search in which it was found.</summary>
    public int Round { get; init; }

    /// <summary>How many sisters alike are held back, to be paired in the same season.</summary>
    public int Copies { get; init; } = 1;

    /// <summary>The females of the stock needed at one time.</summary>
    public (int Kind, int Count)[] Uses { get; init; } = DamUse.None;

    public bool IsRemoved { get; set; }

    /// <summary>How much it promises: its chance of being ready, summed over the seasons.</summary>
    public double Promise => Trust * Ready.Sum();

    /// <summary>Whether this is at least as good as another of the same class on every count.</summary>
    public bool Dominates(RouteLabel other)
    {
        if (Copies < other.Copies || Pairings > other.Pairings + 1e-9 || Raised > other.Raised || Price > other.Price + 1e-9)
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

/// <summary>Founders that are alike in all that counts.</summary>
/// <param name="Sex">Their sex.</param>
/// <param name="Class">The class they are taken for.</param>
/// <param name="Trust">The chance that one is of it.</param>
/// <param name="ReadySeason">The first season in which they can breed.</param>
/// <param name="Price">The price of one; <c>null</c>: owned.</param>
/// <param name="Animals">Their places in the problem's list.</param>
internal sealed record FounderType(Sex Sex, int Class, double Trust, int ReadySeason, double? Price, IReadOnlyList<int> Animals);

/// <summary>A pairing of two labels, tried every season from when both are ready until what is wanted of it is held back.</summary>
internal sealed class RoutePairing
{
    public required RouteLabel Sire { get; init; }

    public required RouteLabel Dam { get; init; }

    /// <summary>How many equal females are paired in one season.</summary>
    public required int Dams { get; init; }

    /// <summary>The chance per good egg of a hatchling that looks right: a son, a daughter, or the target.</summary>
    public required double Seen { get; init; }

    /// <summary>The same of the second animal held back, where a brother and a sister are.</summary>
    public double SeenSister { get; init; }

    /// <summary>The chance that what looks right is right, of all animals held back from it together.</summary>
    public required double Trust { get; init; }

    public bool IsCouple { get; init; }
}
