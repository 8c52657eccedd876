using System.Globalization;

namespace Clutchwright.Pedigrees.Charts;

/// <summary>The young of one pair, or of one dam and several possible sires, of which all named parents are drawn.</summary>
internal sealed class ChartFamily
{
    private ChartFamily(string key, int[] sires, int? dam)
    {
        Key = key;
        Sires = sires;
        Dam = dam;
    }

    /// <summary>What the young have in common; see <see cref="KeyOf"/>.</summary>
    public string Key { get; }

    /// <summary>The sire, or the possible ones; empty: not recorded.</summary>
    public int[] Sires { get; }

    public int? Dam { get; }

    public bool IsPossible => Sires.Length > 1;

    /// <summary>The young that are drawn, in order of hatching.</summary>
    public List<int> Young { get; } = [];

    /// <summary>How many more there are.</summary>
    public int Uncounted { get; private set; }

    /// <summary>The row of the pair; the young stand in the next.</summary>
    public int Row { get; set; }

    public IEnumerable<int> Parents => Dam is { } dam ? [.. Sires, dam] : Sires;

    /// <summary>What young of the same parents have in common; empty where no parent is named.</summary>
    public static string KeyOf(ChartKin kin, int animal)
    {
        var dam = kin.Pedigree.DamOf(animal);
        return kin.Sires[animal].Length == 0 && dam == Pedigree.NotKnown
            ? string.Empty
            : string.Create(CultureInfo.InvariantCulture, $"{string.Join(',', kin.Sires[animal])} {dam}");
    }

    /// <summary>The families, the oldest first young before the others.</summary>
    public static IReadOnlyList<ChartFamily> Of(ChartKin kin, ChartCut cut)
    {
        var families = new Dictionary<string, ChartFamily>(StringComparer.Ordinal);
        var ordered = new List<ChartFamily>();
        foreach (var animal in Enumerable.Range(0, kin.Count).OrderBy(kin.RankOf))
        {
            var key = KeyOf(kin, animal);
            if (key.Length == 0 || kin.ParentsOf(animal).Any(p => !cut.Drawn[p]))
            {
                continue;
            }

            if (!families.TryGetValue(key, out var family))
            {
                var dam = kin.Pedigree.DamOf(animal);
                family = new(key, kin.Sires[animal], dam == Pedigree.NotKnown ? null : dam);
                families.Add(key, family);
                ordered.Add(family);
            }

            if (cut.Drawn[animal])
            {
                family.Young.Add(animal);
            }
            else
            {
                family.Uncounted++;
            }
        }

        // A single animal's young by nobody knows whom are told at its symbol, if none of them is drawn.
        return [.. ordered.Where(f => f.Young.Count > 0 || f.Parents.Skip(1).Any())];
    }
}
