namespace Clutchwright.Planning.Routes;

/// <summary>The founders whose doubt or price a way bears: each counts once, in however many pairings it serves.</summary>
/// <remarks>A set is a sorted list of the founder types' numbers.</remarks>
internal sealed class RouteStakes(IReadOnlyList<FounderType> types)
{
    public static readonly int[] None = [];

    /// <summary>The stakes of a founder alone.</summary>
    public static int[] Of(FounderType type) => type is { Trust: >= 1.0, Price: null } ? None : [type.Number];

    /// <summary>The chance that all of them are what they are taken for.</summary>
    public double Trust(int[] set)
    {
        var trust = 1.0;
        foreach (var number in set)
        {
            trust *= types[number].Trust;
        }

        return trust;
    }

    /// <summary>What they cost.</summary>
    public double Price(int[] set)
    {
        var price = 0.0;
        foreach (var number in set)
        {
            price += types[number].Price ?? 0.0;
        }

        return price;
    }

    /// <summary>The trust and the price of those of the first set that the second lacks.</summary>
    public (double Trust, double Price) Beyond(int[] one, int[] other)
    {
        var (trust, price) = (1.0, 0.0);
        foreach (var number in one)
        {
            if (Array.BinarySearch(other, number) < 0)
            {
                trust *= types[number].Trust;
                price += types[number].Price ?? 0.0;
            }
        }

        return (trust, price);
    }

    public static int[] Union(int[] one, int[] other)
    {
        if (one.Length == 0 || ReferenceEquals(one, other))
        {
            return other;
        }

        if (other.Length == 0)
        {
            return one;
        }

        int[] all = [.. one.Union(other).Order()];
        return all.Length == one.Length ? one : all;
    }
}
