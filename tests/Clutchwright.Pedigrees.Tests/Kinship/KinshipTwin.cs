using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Tests.Kinship;

/// <summary>The slow twin, from the definition: of every way in which the sires in doubt can be settled, the table of kinships is
/// filled from the oldest animal down (Emik and Terrill 1949), and the tables are averaged.</summary>
internal static class KinshipTwin
{
    public static Fraction[,] Of(KinshipCase pedigree)
    {
        var mean = new Fraction[pedigree.Count, pedigree.Count];
        foreach (var (sires, chance) in Settled(pedigree))
        {
            var table = Table(sires, pedigree.Dams);
            for (var i = 0; i < pedigree.Count; i++)
            {
                for (var j = 0; j < pedigree.Count; j++)
                {
                    mean[i, j] += table[i, j] * chance;
                }
            }
        }

        return mean;
    }

    public static Fraction[,] Table(IReadOnlyList<int> sires, IReadOnlyList<int> dams)
    {
        var kinship = new Fraction[sires.Count, sires.Count];
        for (var i = 0; i < sires.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                kinship[i, j] = kinship[j, i] = (With(sires[i], j) + With(dams[i], j)) * Fraction.Half;
            }

            kinship[i, i] = (Fraction.One + (sires[i] < 0 || dams[i] < 0 ? Fraction.Zero : kinship[sires[i], dams[i]])) * Fraction.Half;
        }

        return kinship;

        Fraction With(int parent, int animal) => parent < 0 ? Fraction.Zero : kinship[parent, animal];
    }

    /// <summary>Every route between two animals, from Wright's definition: all lines up from each, in pairs that share nothing but their end.</summary>
    public static List<(int[] First, int[] Second)> Routes(IReadOnlyList<int> sires, IReadOnlyList<int> dams, int first, int second)
    {
        var routes = new List<(int[], int[])>();
        foreach (var up in Lines(first))
        {
            routes.AddRange(Lines(second).Where(down => down[^1] == up[^1] && up.Intersect(down).Count() == 1).Select(down => (up, down)));
        }

        return routes;

        IEnumerable<int[]> Lines(int from)
        {
            yield return [from];
            foreach (var parent in new[] { sires[from], dams[from] }.Where(p => p >= 0))
            {
                foreach (var line in Lines(parent))
                {
                    yield return [from, .. line];
                }
            }
        }
    }

    public static List<(int[] Sires, Fraction Chance)> Settled(KinshipCase pedigree)
    {
        List<(int[] Sires, Fraction Chance)> ways = [([.. pedigree.Sires], Fraction.One)];
        for (var i = 0; i < pedigree.Count; i++)
        {
            var possible = pedigree.Possible[i];
            if (possible.Length == 0)
            {
                continue;
            }

            var mate = pedigree.Clutches[i] < 0 ? -1 : Enumerable.Range(0, i).FirstOrDefault(j => pedigree.Clutches[j] == pedigree.Clutches[i], -1);
            var animal = i;
            ways = mate >= 0
                ? ways.ConvertAll(way => (With(way.Sires, animal, way.Sires[mate]), way.Chance))
                : [.. ways.SelectMany(way => possible.Select(p =>
                    (With(way.Sires, animal, p.Sire), way.Chance * new Fraction(p.Weight, possible.Sum(q => q.Weight)))))];
        }

        return ways;
    }

    private static int[] With(int[] sires, int animal, int sire)
    {
        var changed = (int[])sires.Clone();
        changed[animal] = sire;
        return changed;
    }
}
