namespace Clutchwright.Planning.Schemes;

/// <summary>The two haplotypes of a plant or animal over up to ten loci with two alleles each, phase known, parental origin not.</summary>
/// <remarks>A haplotype is a set of bits: bit i is 1 where the wanted allele stands at locus i, from 0. Equality and order are those of the
/// two haplotypes, the smaller first. <c>default</c> has no wanted allele.</remarks>
public readonly record struct HaplotypePair : IComparable<HaplotypePair>
{
    /// <summary>The most loci a scheme may have.</summary>
    public const int MostLoci = 10;

    private readonly ushort _low;
    private readonly ushort _high;

    /// <summary>Makes a pair of haplotypes, in any order.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A haplotype is negative or has bits beyond <see cref="MostLoci"/>.</exception>
    public HaplotypePair(int first, int second)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfNegative(second);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(first, 1 << MostLoci);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(second, 1 << MostLoci);
        _low = (ushort)Math.Min(first, second);
        _high = (ushort)Math.Max(first, second);
    }

    /// <summary>Gets the smaller haplotype.</summary>
    public int Low => _low;

    /// <summary>Gets the larger haplotype, or the same one.</summary>
    public int High => _high;

    /// <summary>Gets whether both haplotypes are the same.</summary>
    public bool IsHomozygous => _low == _high;

    /// <summary>Gets the place of this pair in the list of all, (0,0), (0,1), (1,1), (0,2), ...: from 0.</summary>
    internal int Index => (_high * (_high + 1) / 2) + _low;

    /// <summary>Says whether <paramref name="a"/> comes before <paramref name="b"/>.</summary>
    public static bool operator <(HaplotypePair a, HaplotypePair b) => a.CompareTo(b) < 0;

    /// <summary>Says whether <paramref name="a"/> comes after <paramref name="b"/>.</summary>
    public static bool operator >(HaplotypePair a, HaplotypePair b) => a.CompareTo(b) > 0;

    /// <summary>Says whether <paramref name="a"/> does not come after <paramref name="b"/>.</summary>
    public static bool operator <=(HaplotypePair a, HaplotypePair b) => a.CompareTo(b) <= 0;

    /// <summary>Says whether <paramref name="a"/> does not come before <paramref name="b"/>.</summary>
    public static bool operator >=(HaplotypePair a, HaplotypePair b) => a.CompareTo(b) >= 0;

    /// <summary>Reads a pair such as <c>1110/0001</c>, the first locus first.</summary>
    /// <exception cref="FormatException">The text is not two haplotypes of equal length, of 1 to <see cref="MostLoci"/> digits 0 and 1.</exception>
    public static HaplotypePair Parse(string text)
    {
        var parts = text.Split('/');
        return parts.Length == 2 && parts[0].Length == parts[1].Length && parts[0].Length is > 0 and <= MostLoci
            && parts.All(part => part.All(c => c is '0' or '1'))
            ? new(Bits(parts[0]), Bits(parts[1]))
            : throw new FormatException($"'{text}' is not a pair of haplotypes such as 1110/0001.");

        static int Bits(string part) => part.Select((c, i) => c == '1' ? 1 << i : 0).Sum();
    }

    /// <inheritdoc/>
    public int CompareTo(HaplotypePair other) => Index.CompareTo(other.Index);

    /// <summary>Writes the pair over <paramref name="loci"/> loci, the first locus first.</summary>
    public string ToString(int loci)
    {
        var (low, high) = (Low, High);
        return $"{Text(high)}/{Text(low)}";

        string Text(int bits) => string.Concat(Enumerable.Range(0, loci).Select(i => (bits >> i) & 1));
    }

    /// <summary>Writes the pair over as many loci as have the wanted allele.</summary>
    public override string ToString() => ToString(Math.Max(1, int.Log2(Math.Max(1, Low | High)) + 1));

    /// <summary>Every gamete the pair can give, each once.</summary>
    internal int[] Gametes()
    {
        var differ = Low ^ High;
        var gametes = new int[1 << int.PopCount(differ)];
        for (var (subset, i) = (differ, 0); i < gametes.Length; subset = (subset - 1) & differ, i++)
        {
            gametes[i] = (Low & ~differ) | subset;
        }

        return gametes;
    }

    internal static HaplotypePair At(int index)
    {
        var high = (int)((Math.Sqrt((8.0 * index) + 1.0) - 1.0) / 2.0);
        return new(index - (high * (high + 1) / 2), high);
    }
}
