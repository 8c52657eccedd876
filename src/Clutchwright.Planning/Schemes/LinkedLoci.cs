using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Schemes;

/// <summary>The loci of a crossing scheme in the order of the map, with how often each two recombine.</summary>
/// <remarks>A gamete's chance is 1/2 times, for each two neighbouring heterozygous loci, r or 1 - r: crossings-over without interference.
/// Immutable.</remarks>
public sealed class LinkedLoci
{
    private readonly double[,] _recombination;

    private LinkedLoci(double[,] recombination) => _recombination = recombination;

    /// <summary>Gets how many loci there are, 1 to <see cref="HaplotypePair.MostLoci"/>.</summary>
    public int Count => _recombination.GetLength(0);

    /// <summary>Gets how many haplotypes there are: 2 to the number of loci.</summary>
    internal int Haplotypes => 1 << Count;

    /// <summary>Gets how many pairs of haplotypes there are.</summary>
    internal int Pairs => Haplotypes * (Haplotypes + 1) / 2;

    /// <summary>Loci of which the fraction of each neighbouring two is known.</summary>
    /// <param name="fractions">Entry i: between locus i and locus i + 1. Other pairs follow without interference (docs/references.md
    /// [Haldane1919]).</param>
    /// <exception cref="ArgumentException">There are more than <see cref="HaplotypePair.MostLoci"/> loci.</exception>
    public static LinkedLoci Neighbours(IReadOnlyList<RecombinationFraction> fractions)
    {
        var count = Checked(fractions.Count + 1, nameof(fractions));
        var table = new double[count, count];
        for (var i = 0; i < count; i++)
        {
            var together = 1.0;
            for (var j = i + 1; j < count; j++)
            {
                together *= 1.0 - (2.0 * fractions[j - 1].Value);
                table[i, j] = table[j, i] = j == i + 1 ? fractions[i].Value : (1.0 - together) / 2.0;
            }
        }

        return new(table);
    }

    /// <summary>Loci of which the fraction of each two was measured.</summary>
    /// <param name="fraction">The fraction between two loci by their places, the smaller first; asked for each pair once.</param>
    /// <param name="count">How many loci.</param>
    /// <remarks>The fractions need not fit one map: of a heterozygote only those of its neighbouring heterozygous loci are used.</remarks>
    /// <exception cref="ArgumentException"><paramref name="count"/> is below 1 or above <see cref="HaplotypePair.MostLoci"/>.</exception>
    public static LinkedLoci Pairwise(int count, Func<int, int, RecombinationFraction> fraction)
    {
        var table = new double[Checked(count, nameof(count)), count];
        for (var i = 0; i < count; i++)
        {
            for (var j = i + 1; j < count; j++)
            {
                table[i, j] = table[j, i] = fraction(i, j).Value;
            }
        }

        return new(table);
    }

    /// <summary>The chance that a gamete of <paramref name="parent"/> is <paramref name="gamete"/>.</summary>
    /// <returns>In [0, 1].</returns>
    public double GameteChance(HaplotypePair parent, int gamete)
    {
        var differ = parent.Low ^ parent.High;
        if (((gamete ^ parent.Low) & ~differ) != 0)
        {
            return 0.0;
        }

        var fromHigh = (gamete ^ parent.Low) & differ;
        var (chance, last) = (1.0, -1);
        for (var locus = 0; locus < Count; locus++)
        {
            if (((differ >> locus) & 1) == 0)
            {
                continue;
            }

            var r = last < 0 ? 0.5 : _recombination[last, locus];
            chance *= last < 0 || ((fromHigh >> last) & 1) != ((fromHigh >> locus) & 1) ? r : 1.0 - r;
            last = locus;
        }

        return chance;
    }

    /// <summary>The chance that a cross of two gives a child of one genotype; both may be the same plant (a selfing).</summary>
    /// <returns>In [0, 1].</returns>
    public double ChildChance(HaplotypePair first, HaplotypePair second, HaplotypePair child)
    {
        var chance = GameteChance(first, child.Low) * GameteChance(second, child.High);
        return child.IsHomozygous ? chance : chance + (GameteChance(first, child.High) * GameteChance(second, child.Low));
    }

    private static int Checked(int count, string name) => count is >= 1 and <= HaplotypePair.MostLoci
        ? count
        : throw new ArgumentException($"A scheme has 1 to {HaplotypePair.MostLoci} loci, not {count}.", name);
}
