using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Meiosis;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>Every gamete of a sire against every gamete of a dam, for a few linkage groups: a teaching aid.</summary>
/// <remarks>Unlike a <see cref="Cross"/> it multiplies everything out, so it is meant for one or two loci.</remarks>
public sealed class PunnettSquare
{
    private readonly Genotype[,] _cells;

    private PunnettSquare(
        IReadOnlyList<LinkageGroup> groups,
        IReadOnlyList<Weighted<IReadOnlyList<Gamete>>> sire,
        IReadOnlyList<Weighted<IReadOnlyList<Gamete>>> dam,
        Genotype[,] cells)
    {
        Groups = groups;
        SireGametes = sire;
        DamGametes = dam;
        _cells = cells;
    }

    /// <summary>Gets the linkage groups shown.</summary>
    public IReadOnlyList<LinkageGroup> Groups { get; }

    /// <summary>Gets what the sire can pass on, by the groups: the rows.</summary>
    public IReadOnlyList<Weighted<IReadOnlyList<Gamete>>> SireGametes { get; }

    /// <summary>Gets what the dam can pass on, by the groups: the columns.</summary>
    public IReadOnlyList<Weighted<IReadOnlyList<Gamete>>> DamGametes { get; }

    /// <summary>The offspring of a row and a column. Where no sex chromosomes are shown its sex means nothing.</summary>
    public Genotype this[int row, int column] => _cells[row, column];

    /// <summary>Makes the square of two certain parents.</summary>
    /// <param name="sire">The sire.</param>
    /// <param name="dam">The dam.</param>
    /// <param name="groups">The groups to show, at least one.</param>
    public static PunnettSquare Of(Genotype sire, Genotype dam, IReadOnlyList<LinkageGroup> groups)
    {
        var (rows, columns) = (Gametes(sire, groups), Gametes(dam, groups));
        var cells = new Genotype[rows.Count, columns.Count];
        for (var r = 0; r < rows.Count; r++)
        {
            for (var c = 0; c < columns.Count; c++)
            {
                cells[r, c] = Child(sire, groups, rows[r].Value, columns[c].Value);
            }
        }

        return new(groups, rows, columns, cells);
    }

    private static List<Weighted<IReadOnlyList<Gamete>>> Gametes(Genotype parent, IReadOnlyList<LinkageGroup> groups)
    {
        var result = new List<Weighted<IReadOnlyList<Gamete>>> { new([], Probability.Certain) };
        foreach (var group in groups)
        {
            var gametes = GameteFormation.Of(group, parent[group], parent.IsHeterogametic)
                .OrderByDescending(g => g.Value.Haplotype)
                .ThenBy(g => g.Value.CarriesUnshared)
                .ToArray();
            result = result
                .SelectMany(_ => gametes, (left, right) => new Weighted<IReadOnlyList<Gamete>>(
                    [.. left.Value, right.Value], left.Weight * right.Weight))
                .ToList();
        }

        return result;
    }

    private static Genotype Child(
        Genotype sire, IReadOnlyList<LinkageGroup> groups, IReadOnlyList<Gamete> fromSire, IReadOnlyList<Gamete> fromDam)
    {
        var heterogametic = sire.Species.SexSystem.Heterogametic();
        var deciding = heterogametic == Sex.Male ? fromSire : fromDam;
        var child = Genotype.Wild(
            sire.Species, deciding.Any(g => g.CarriesUnshared) ? heterogametic : heterogametic.Opposite());
        for (var i = 0; i < groups.Count; i++)
        {
            var (shared, unshared) = heterogametic == Sex.Male ? (fromDam[i], fromSire[i]) : (fromSire[i], fromDam[i]);
            child = child.With(groups[i], new(shared.Haplotype, unshared.Haplotype));
        }

        return child;
    }
}
