using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Genetics.Wants;

/// <summary>What a keeper wants to hatch: any one of several alternatives.</summary>
/// <remarks>Every alternative fixes some loci and leaves the others free. Immutable.</remarks>
public sealed class Want
{
    /// <summary>The most alternatives a want may have: the chance of a union is summed over their subsets.</summary>
    public const int MostAlternatives = 10;

    /// <summary>Makes a want.</summary>
    /// <param name="alternatives">1 to <see cref="MostAlternatives"/> alternatives; they may overlap.</param>
    /// <exception cref="ArgumentException">There is none, or there are too many.</exception>
    public Want(IReadOnlyList<WantedGenotype> alternatives)
    {
        if (alternatives.Count is < 1 or > MostAlternatives)
        {
            throw new ArgumentException($"A want has 1 to {MostAlternatives} alternatives.", nameof(alternatives));
        }

        Alternatives = alternatives;
    }

    /// <summary>Gets the alternatives, any of which will do.</summary>
    public IReadOnlyList<WantedGenotype> Alternatives { get; }

    /// <summary>Gets the loci that any alternative fixes.</summary>
    public IEnumerable<Locus> Loci => Alternatives.SelectMany(a => a.Loci.Select(l => l.Locus)).Distinct();

    /// <summary>Says whether a genotype is wanted.</summary>
    public bool IsMetBy(Genotype genotype) => Alternatives.Any(a => a.IsMetBy(genotype));
}

/// <summary>One alternative of a want: conditions on loci that must all hold, and perhaps a sex.</summary>
public sealed class WantedGenotype
{
    /// <summary>Makes an alternative.</summary>
    /// <param name="sex">The sex wanted; <c>null</c>: either.</param>
    /// <param name="loci">Conditions, each at another locus; none: any animal (of the sex).</param>
    /// <exception cref="ArgumentException">A locus stands twice.</exception>
    public WantedGenotype(Sex? sex, IReadOnlyList<WantedPairs> loci)
    {
        if (loci.Select(l => l.Locus).Distinct().Count() != loci.Count)
        {
            throw new ArgumentException("A locus stands twice in one alternative.", nameof(loci));
        }

        Sex = sex;
        Loci = loci;
    }

    /// <summary>Gets the sex wanted; <c>null</c>: either.</summary>
    public Sex? Sex { get; }

    /// <summary>Gets the conditions.</summary>
    public IReadOnlyList<WantedPairs> Loci { get; }

    /// <summary>Says whether a genotype meets every condition.</summary>
    public bool IsMetBy(Genotype genotype) =>
        (Sex is null || Sex == genotype.Sex)
        && Loci.All(l =>
        {
            var (first, second) = genotype.AllelesAt(l.Locus);
            return l.Allows(first, second, Genotype.Ordered(l.Locus.Group, genotype.IsHeterogametic));
        });
}

/// <summary>The pairs of alleles that will do at one locus.</summary>
public sealed class WantedPairs
{
    private readonly bool[,] _pairs;
    private readonly bool _byStrand;

    private WantedPairs(Locus locus, bool[,] pairs, bool byStrand)
    {
        Locus = locus;
        _pairs = pairs;
        _byStrand = byStrand;
    }

    /// <summary>Gets the locus.</summary>
    public Locus Locus { get; }

    /// <summary>Pairs in either order.</summary>
    /// <param name="locus">The locus.</param>
    /// <param name="pairs">Allele indices, from 0.</param>
    public static WantedPairs Of(Locus locus, IEnumerable<(int First, int Second)> pairs)
    {
        var table = new bool[locus.Alleles.Count, locus.Alleles.Count];
        foreach (var (a, b) in pairs)
        {
            table[a, b] = table[b, a] = true;
        }

        return new(locus, table, byStrand: false);
    }

    /// <summary>Every pair that shows a given expression when it shows.</summary>
    public static WantedPairs Showing(Looks.Expression expression)
    {
        var locus = expression.Locus;
        var count = locus.Alleles.Count;
        return Of(locus, from a in Enumerable.Range(0, count)
                         from b in Enumerable.Range(a, count - a)
                         where locus.ExpressionOf(a, b) == expression
                         select (a, b));
    }

    /// <summary>One pair by sex chromosome; only an animal with two different ones can meet it.</summary>
    /// <param name="locus">A sex-linked locus.</param>
    /// <param name="onShared">The allele on X or Z.</param>
    /// <param name="onUnshared">The allele on Y or W.</param>
    /// <exception cref="ArgumentException">The locus is not sex-linked.</exception>
    public static WantedPairs ByStrand(Locus locus, int onShared, int onUnshared)
    {
        if (!locus.Group.IsSex)
        {
            throw new ArgumentException($"{locus.Id} is not sex-linked.", nameof(locus));
        }

        var table = new bool[locus.Alleles.Count, locus.Alleles.Count];
        table[onShared, onUnshared] = true;
        return new(locus, table, byStrand: true);
    }

    /// <summary>Says whether a pair of alleles will do.</summary>
    /// <param name="first">An allele index; that on X or Z if <paramref name="ordered"/>.</param>
    /// <param name="second">The other allele index.</param>
    /// <param name="ordered">Whether the two ride on two different sex chromosomes.</param>
    public bool Allows(int first, int second, bool ordered) => _pairs[first, second] && (ordered || !_byStrand);
}
