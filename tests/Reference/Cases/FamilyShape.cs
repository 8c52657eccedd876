using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Cases;

/// <summary>What makes a pedigree hard: loops and many mates.</summary>
internal static class FamilyShape
{
    /// <summary>The pairs that have young, in the order in which they first do.</summary>
    public static IReadOnlyList<(int Sire, int Dam)> Pairs(SamplePedigree family) =>
        [.. family.Sires.Zip(family.Dams).Where(p => p.First >= 0).Distinct()];

    /// <summary>How many independent cycles the graph of animals and pairs has: an edge joins a pair with each of its two and with each of its young.</summary>
    public static int Loops(SamplePedigree family) => Join(family).Loops;

    /// <summary>Whether every animal is kin, or kin by mating, of every other.</summary>
    public static bool IsOne(SamplePedigree family) => Join(family).Parts == 1;

    /// <summary>The most mates that one animal has.</summary>
    public static int MostMates(SamplePedigree family)
    {
        var pairs = Pairs(family);
        return pairs.Count == 0 ? 0 : Math.Max(pairs.GroupBy(p => p.Sire).Max(g => g.Count()), pairs.GroupBy(p => p.Dam).Max(g => g.Count()));
    }

    private static (int Loops, int Parts) Join(SamplePedigree family)
    {
        var part = Enumerable.Range(0, family.Count).ToArray();
        var loops = 0;
        foreach (var (sire, dam) in Pairs(family))
        {
            var young = Enumerable.Range(0, family.Count).Where(i => family.Sires[i] == sire && family.Dams[i] == dam);
            foreach (var animal in young.Append(dam))
            {
                var (a, b) = (Root(part, sire), Root(part, animal));
                loops += a == b ? 1 : 0;
                part[a] = b;
            }
        }

        return (loops, Enumerable.Range(0, family.Count).Count(i => part[i] == i));
    }

    private static int Root(int[] part, int at)
    {
        while (part[at] != at)
        {
            at = part[at];
        }

        return at;
    }
}
