using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs.Explanations;

/// <summary>Something that may be true of an animal's genotype at one linkage group.</summary>
public abstract record GenotypeClaim
{
    private GenotypeClaim()
    {
    }

    /// <summary>Gets the linkage group that decides it.</summary>
    public abstract LinkageGroup Group { get; }

    /// <summary>Gets the allele it is about; <c>null</c> where it is about a whole diplotype.</summary>
    public virtual Allele? About => null;

    /// <summary>Whether it is true of an animal.</summary>
    /// <param name="diplotype">What the animal has at <see cref="Group"/>; on two different sex chromosomes in order.</param>
    /// <param name="isOrdered">Whether the two chromosomes are two different sex chromosomes.</param>
    public abstract bool Holds(Diplotype diplotype, bool isOrdered);

    /// <summary>It carries an allele, in one copy or two.</summary>
    /// <param name="Allele">The allele.</param>
    public sealed record Carries(Allele Allele) : GenotypeClaim
    {
        /// <inheritdoc/>
        public override LinkageGroup Group => Allele.Locus.Group;

        /// <inheritdoc/>
        public override Allele? About => Allele;

        /// <inheritdoc/>
        public override bool Holds(Diplotype diplotype, bool isOrdered) =>
            Allele.Locus.PairOf(diplotype) is var (a, b) && (a == Allele.Index || b == Allele.Index);
    }

    /// <summary>It has two copies of an allele.</summary>
    /// <param name="Allele">The allele.</param>
    public sealed record IsHomozygous(Allele Allele) : GenotypeClaim
    {
        /// <inheritdoc/>
        public override LinkageGroup Group => Allele.Locus.Group;

        /// <inheritdoc/>
        public override Allele? About => Allele;

        /// <inheritdoc/>
        public override bool Holds(Diplotype diplotype, bool isOrdered) =>
            Allele.Locus.PairOf(diplotype) is var (a, b) && a == Allele.Index && b == Allele.Index;
    }

    /// <summary>It has an allele on the sex chromosome that only one sex has (Y, W).</summary>
    /// <param name="Allele">An allele on the sex chromosomes.</param>
    public sealed record RidesOnUnshared(Allele Allele) : GenotypeClaim
    {
        /// <inheritdoc/>
        public override LinkageGroup Group => Allele.Locus.Group;

        /// <inheritdoc/>
        public override Allele? About => Allele;

        /// <inheritdoc/>
        public override bool Holds(Diplotype diplotype, bool isOrdered) => isOrdered && Allele.Locus.PairOf(diplotype).Second == Allele.Index;
    }

    /// <summary>It is of one diplotype.</summary>
    /// <param name="Group">The group.</param>
    /// <param name="Diplotype">The diplotype; on two different sex chromosomes in order.</param>
    public sealed record IsOf(LinkageGroup Group, Diplotype Diplotype) : GenotypeClaim
    {
        /// <inheritdoc/>
        public override LinkageGroup Group { get; } = Group;

        /// <inheritdoc/>
        public override bool Holds(Diplotype diplotype, bool isOrdered) => isOrdered
            ? diplotype == Diplotype
            : Diplotype.Unordered(diplotype.First, diplotype.Second) == Diplotype.Unordered(Diplotype.First, Diplotype.Second);
    }
}
