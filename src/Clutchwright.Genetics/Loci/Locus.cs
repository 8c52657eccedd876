using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Loci;

/// <summary>A place on a chromosome, with the wild allele and one or more mutant alleles, and what each pair of them shows.</summary>
public sealed class Locus
{
    private readonly Expression[,] _fullExpressions;
    private readonly Weighted<Expression>[,][] _expressions;

    internal Locus(int index, LocusDefinition definition)
    {
        Index = index;
        Id = definition.Id;
        Name = definition.Name;
        Placement = definition.Placement;
        Alleles = [new Allele(this, 0, null), .. definition.Alleles.Select((a, i) => new Allele(this, i + 1, a))];
        (Expressions, _fullExpressions, _expressions) = ExpressionTable.Of(this, definition);
    }

    /// <summary>Gets the place in <see cref="Species.Loci"/>, from 0.</summary>
    public int Index { get; }

    /// <summary>Gets the id, unique among the loci of the species.</summary>
    public string Id { get; }

    /// <summary>Gets the name for people.</summary>
    public string Name { get; }

    /// <summary>Gets where the locus lies.</summary>
    public Placement Placement { get; }

    /// <summary>Gets the alleles; index 0 is the wild allele.</summary>
    public IReadOnlyList<Allele> Alleles { get; }

    /// <summary>Gets what the locus can show; index 0 is the wild expression.</summary>
    public IReadOnlyList<Expression> Expressions { get; }

    /// <summary>Gets the linkage group the locus belongs to.</summary>
    public LinkageGroup Group { get; private set; } = null!;

    /// <summary>Gets the place in <see cref="LinkageGroup.Loci"/>, from 0.</summary>
    public int IndexInGroup { get; private set; }

    /// <summary>The indices of the two alleles that a diplotype of <see cref="Group"/> has at this locus, in the diplotype's order.</summary>
    public (int First, int Second) PairOf(Diplotype diplotype) =>
        (Group.AlleleAt(diplotype.First, IndexInGroup), Group.AlleleAt(diplotype.Second, IndexInGroup));

    /// <summary>The form a pair of alleles takes when it shows; order does not matter.</summary>
    /// <param name="first">An allele's index, from 0.</param>
    /// <param name="second">The other allele's index, from 0.</param>
    public Expression ExpressionOf(int first, int second) => _fullExpressions[first, second];

    /// <summary>What a pair of alleles shows, with its chances where penetrance is below 1; order does not matter.</summary>
    /// <param name="first">An allele's index, from 0.</param>
    /// <param name="second">The other allele's index, from 0.</param>
    public IReadOnlyList<Weighted<Expression>> ExpressionsOf(int first, int second) => _expressions[first, second];

    /// <inheritdoc/>
    public override string ToString() => Id;

    internal void PlaceIn(LinkageGroup group, int indexInGroup)
    {
        Group = group;
        IndexInGroup = indexInGroup;
    }
}
