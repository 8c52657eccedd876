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

    /// <summary>How many sisters alike are held back, to be paired in the same season.</summary>
    public int Copies { get; init; } = 1;

    /// <summary>Gets what it takes to have it.</summary>
    public required RouteEffort Effort { get; init; }

    public bool IsRemoved { get; set; }

    /// <summary>How much it promises: its chance of being ready, summed over the seasons.</summary>
    public double Promise => Effort.Promise;

    /// <summary>Whether this is at least as good as another of the same class on every count.</summary>
    public bool Dominates(RouteLabel other, RouteStakes stakes) => Copies >= other.Copies && Effort.Dominates(other.Effort, stakes);
}

/// <summary>What a way takes up to an animal, or to a couple, and when it is ready.</summary>
internal sealed class RouteEffort
{
    /// <param name="ready">The chance that an animal which looks right can be paired in season t or before; index 0 is unused.</param>
    /// <param name="trust">The chance that every animal held back is what it is taken for, and lives; founders aside.</param>
    /// <param name="pairings">Pairings on average, each going on until it succeeds.</param>
    /// <param name="raised">Animals held back.</param>
    /// <param name="cost">Pairings and animals held back in the keeper's unit.</param>
    /// <param name="stakes">The founders whose doubt or price it bears.</param>
    /// <param name="doubt">The chance that these are what they are taken for.</param>
    /// <param name="price">Their prices.</param>
    /// <param name="uses">The females of the stock needed at one time.</param>
    public RouteEffort(
        double[] ready, double trust, double pairings, int raised, double cost, int[] stakes, double doubt, double price, (int Kind, int Count)[] uses)
    {
        (Ready, Trust, Pairings, Raised, Cost, Stakes, Doubt, Price, Uses) = (ready, trust, pairings, raised, cost, stakes, doubt, price, uses);
        First = 1;
        while (First < ready.Length && ready[First] <= 0.0)
        {
            First++;
        }
    }

    public double[] Ready { get; }

    public double Trust { get; }

    public double Pairings { get; }

    public int Raised { get; }

    public double Cost { get; }

    public int[] Stakes { get; }

    public double Doubt { get; }

    public double Price { get; }

    public (int Kind, int Count)[] Uses { get; }

    /// <summary>The first season in which it can be paired.</summary>
    public int First { get; }

    public double Promise => Trust * Doubt * Ready.Sum();

    public double FullCost => Cost + Price;

    /// <summary>A step more: something held back of what these give.</summary>
    /// <param name="ready">When it is ready.</param>
    /// <param name="trust">The trust of all steps.</param>
    /// <param name="pairings">Pairings of this step.</param>
    /// <param name="raised">Animals held back from it.</param>
    /// <param name="cost">The cost of it.</param>
    public RouteEffort Next(double[] ready, double trust, double pairings, int raised, double cost) =>
        new(ready, trust, Pairings + pairings, Raised + raised, Cost + cost, Stakes, Doubt, Price, Uses);

    /// <summary>Whether this is at least as good on every count, whatever it is joined with.</summary>
    public bool Dominates(RouteEffort other, RouteStakes stakes)
    {
        if (Raised > other.Raised || Cost > other.FullCost + 1e-9 || First > other.First)
        {
            return false;
        }

        // At worst the other's founders are staked already, and this one's are not.
        var (trust, price) = Stakes.Length == 0 ? (1.0, 0.0) : stakes.Beyond(Stakes, other.Stakes);
        if (Cost + price > other.Cost + 1e-9)
        {
            return false;
        }

        trust *= Trust;
        for (var t = Ready.Length - 1; t >= other.First; t--)
        {
            if (trust * Ready[t] < (other.Trust * other.Ready[t]) - 1e-12)
            {
                return false;
            }
        }

        return DamUse.IsWithin(Uses, other.Uses);
    }
}

/// <summary>Founders that are alike in all that counts.</summary>
/// <param name="Number">Their place among all types.</param>
/// <param name="Sex">Their sex.</param>
/// <param name="Class">The class they are taken for.</param>
/// <param name="Trust">The chance that one is of it.</param>
/// <param name="ReadySeason">The first season in which they can breed.</param>
/// <param name="Price">The price of one; <c>null</c>: owned.</param>
/// <param name="Animals">Their places in the problem's list.</param>
internal sealed record FounderType(int Number, Sex Sex, int Class, double Trust, int ReadySeason, double? Price, IReadOnlyList<int> Animals)
{
    /// <summary>Of females the kinds they are counted among.</summary>
    public IReadOnlyList<int> Kinds { get; init; } = [];
}

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
