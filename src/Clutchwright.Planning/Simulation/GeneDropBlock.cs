namespace Clutchwright.Planning.Simulation;

/// <summary>256 replicates of a gene drop, a bit each: bit b of word w is replicate 64 w + b of the block, and 1 where the marked allele is.</summary>
public sealed class GeneDropBlock
{
    /// <summary>How many replicates a block has.</summary>
    public const int Replicates = 256;

    private const int Words = Replicates / 64;

    private readonly ulong[] _alleles;
    private readonly ulong[] _strands;
    private readonly int _animals;

    internal GeneDropBlock(int animals, int loci)
    {
        _animals = animals;
        _alleles = new ulong[(long)animals * loci * 2 * Words];
        _strands = new ulong[animals * 2 * Words];
    }

    /// <summary>Gets the number of the block, from 0.</summary>
    public int Number { get; internal set; }

    internal Span<ulong> Strands => _strands;

    /// <summary>The alleles that an animal has of its sire, four words.</summary>
    /// <param name="animal">The animal's position.</param>
    /// <param name="locus">The locus' place in the list.</param>
    public ReadOnlySpan<ulong> OfSire(int animal, int locus) => AllelesOf(locus).Slice(animal * 2 * Words, Words);

    /// <summary>The alleles that an animal has of its dam, four words.</summary>
    /// <param name="animal">The animal's position.</param>
    /// <param name="locus">The locus' place in the list.</param>
    public ReadOnlySpan<ulong> OfDam(int animal, int locus) => AllelesOf(locus).Slice((animal * 2 * Words) + Words, Words);

    /// <summary>In how many of the 256 replicates an animal has no, one and two copies.</summary>
    /// <param name="animal">The animal's position.</param>
    /// <param name="locus">The locus' place in the list.</param>
    public (int None, int One, int Two) Copies(int animal, int locus)
    {
        var sire = OfSire(animal, locus);
        var dam = OfDam(animal, locus);
        var (one, two) = (0, 0);
        for (var word = 0; word < Words; word++)
        {
            one += (int)ulong.PopCount(sire[word] ^ dam[word]);
            two += (int)ulong.PopCount(sire[word] & dam[word]);
        }

        return (Replicates - one - two, one, two);
    }

    internal Span<ulong> AllelesOf(int locus) => _alleles.AsSpan(locus * _animals * 2 * Words, _animals * 2 * Words);
}
