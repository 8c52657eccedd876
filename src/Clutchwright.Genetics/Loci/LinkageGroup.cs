namespace Clutchwright.Genetics.Loci;

/// <summary>Loci that are not inherited independently of each other: one free locus alone, the loci of a stretch of
/// an autosome in map order, or all loci of the sex chromosomes together with the sex-determining region.</summary>
/// <remarks>
/// A haplotype of the group (one allele at each of its loci, in order) is coded as one whole number, the first locus
/// counting fastest; 0 is all wild.
/// </remarks>
public sealed class LinkageGroup
{
    private readonly int[] _strides;

    internal LinkageGroup(
        int index,
        string id,
        bool isSex,
        IReadOnlyList<Locus> loci,
        IReadOnlyList<RecombinationFraction> intervals,
        IReadOnlyList<RecombinationFraction> otherSexIntervals,
        int sexRegion,
        SexSystem sexSystem)
    {
        Index = index;
        Id = id;
        IsSex = isSex;
        Loci = loci;
        Intervals = intervals;
        OtherSexIntervals = otherSexIntervals;
        SexRegion = sexRegion;
        SexSystem = sexSystem;
        _strides = new int[loci.Count + 1];
        _strides[0] = 1;
        for (var i = 0; i < loci.Count; i++)
        {
            _strides[i + 1] = _strides[i] * loci[i].Alleles.Count;
            loci[i].PlaceIn(this, i);
        }
    }

    /// <summary>Gets the place in <see cref="Species.Groups"/>, from 0.</summary>
    public int Index { get; }

    /// <summary>Gets the id: the locus' own for a free locus, the group's otherwise, <c>sex</c> for the sex chromosomes.</summary>
    public string Id { get; }

    /// <summary>Gets whether this is the sex chromosomes.</summary>
    public bool IsSex { get; }

    /// <summary>Gets the loci in map order; empty for the sex chromosomes of a species without sex-linked loci.</summary>
    public IReadOnlyList<Locus> Loci { get; }

    /// <summary>Gets how many haplotypes there are: codes run from 0 to this less 1.</summary>
    public int HaplotypeCount => _strides[^1];

    /// <summary>Gets the recombination fractions between neighbours. On the sex chromosomes these are of the sex with two different
    /// ones, and the sex-determining region stands among the loci as a further place.</summary>
    internal IReadOnlyList<RecombinationFraction> Intervals { get; }

    /// <summary>Gets the same for the sex with two like sex chromosomes.</summary>
    internal IReadOnlyList<RecombinationFraction> OtherSexIntervals { get; }

    /// <summary>Gets the name of the sex chromosome that both sexes have.</summary>
    internal string SharedChromosome => SexSystem.Shared();

    /// <summary>Gets the name of the sex chromosome that one sex has.</summary>
    internal string UnsharedChromosome => SexSystem.Unshared();

    /// <summary>Gets the species' sex system.</summary>
    internal SexSystem SexSystem { get; }

    /// <summary>Gets how many loci lie before the sex-determining region in the map order.</summary>
    internal int SexRegion { get; }

    /// <summary>The index of the allele that a haplotype has at one of the group's loci.</summary>
    /// <param name="haplotype">The haplotype's code.</param>
    /// <param name="indexInGroup">The locus' place in <see cref="Loci"/>.</param>
    public int AlleleAt(int haplotype, int indexInGroup) =>
        haplotype / _strides[indexInGroup] % Loci[indexInGroup].Alleles.Count;

    /// <summary>The code of the haplotype that has an allele at one locus and is otherwise as <paramref name="haplotype"/>.</summary>
    /// <param name="haplotype">The haplotype's code.</param>
    /// <param name="indexInGroup">The locus' place in <see cref="Loci"/>.</param>
    /// <param name="allele">The index of the new allele.</param>
    public int With(int haplotype, int indexInGroup, int allele) =>
        haplotype + ((allele - AlleleAt(haplotype, indexInGroup)) * _strides[indexInGroup]);

    /// <inheritdoc/>
    public override string ToString() => Id;
}
