using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees;

namespace Clutchwright.Desk.Kin;

/// <summary>What one animal is to another, by the parents that are certain, where there is a short word for it.</summary>
internal static class RelationWords
{
    private const int Farthest = 4;

    /// <summary>What the second is to the first, by positions.</summary>
    /// <param name="pedigree">The pedigree.</param>
    /// <param name="first">The one.</param>
    /// <param name="second">The other.</param>
    /// <param name="sex">The other's sex.</param>
    public static string? Of(Pedigree pedigree, int first, int second, Sex? sex)
    {
        if (first == second)
        {
            return "itself";
        }

        var (ofFirst, ofSecond) = (Ancestors(pedigree, first), Ancestors(pedigree, second));
        var shared = ofFirst.Keys.Where(ofSecond.ContainsKey).Select(a => (Up: ofFirst[a], Down: ofSecond[a])).ToList();
        if (shared.Count == 0)
        {
            return null;
        }

        var nearest = shared.MinBy(s => (s.Up + s.Down, Math.Max(s.Up, s.Down)));
        var isFull = shared.Count(s => s == nearest) > 1;
        return Word(nearest.Up, nearest.Down, isFull, sex);
    }

    /// <summary>A sibling by the same possible sires: of one clutch, or perhaps by another of them.</summary>
    public static string Sibling(bool isClutch, Sex? sex) => $"{(isClutch ? "full" : "full or half")} {By(sex, "brother", "sister", "sibling")}";

    private static string? Word(int up, int down, bool isFull, Sex? sex) => (up, down) switch
    {
        (1, 0) => By(sex, "sire", "dam", "parent"),
        (0, 1) => By(sex, "son", "daughter", "young"),
        ( > 1, 0) => Great(up - 2) + By(sex, "grandsire", "granddam", "grandparent"),
        (0, > 1) => Great(down - 2) + By(sex, "grandson", "granddaughter", "grandyoung"),
        (1, 1) => $"{(isFull ? "full" : "half")} {By(sex, "brother", "sister", "sibling")}",
        ( > 1, 1) => Half(isFull) + Great(up - 2) + By(sex, "uncle", "aunt", "uncle or aunt"),
        (1, > 1) => Half(isFull) + Great(down - 2) + By(sex, "nephew", "niece", "nephew or niece"),
        (2, 2) => Half(isFull) + "first cousin",
        (3, 3) => Half(isFull) + "second cousin",
        (2, 3) or (3, 2) => Half(isFull) + "first cousin once removed",
        _ => null,
    };

    private static string Half(bool isFull) => isFull ? string.Empty : "half ";

    private static string Great(int times) => string.Concat(Enumerable.Repeat("great-", times));

    private static string By(Sex? sex, string male, string female, string unknown) => sex switch
    {
        Sex.Male => male,
        Sex.Female => female,
        null => unknown,
    };

    /// <summary>The animal and its ancestors, by the fewest generations between.</summary>
    private static Dictionary<int, int> Ancestors(Pedigree pedigree, int animal)
    {
        var found = new Dictionary<int, int> { [animal] = 0 };
        int[] generation = [animal];
        for (var distance = 1; distance <= Farthest && generation.Length > 0; distance++)
        {
            generation = [.. generation.SelectMany(a => new[] { pedigree.SireOf(a), pedigree.DamOf(a) }).Where(p => p >= 0 && found.TryAdd(p, distance))];
        }

        return found;
    }
}
