namespace Clutchwright.Genetics.Loci;

/// <summary>Where a locus lies.</summary>
public abstract record Placement
{
    private Placement()
    {
    }

    /// <summary>On an autosome, independent of every other locus of the species.</summary>
    public sealed record Autosomal : Placement;

    /// <summary>On an autosome, in a linkage group, at a map position.</summary>
    /// <param name="Group">The id of the linkage group.</param>
    /// <param name="Position">The map position in centimorgans, from any origin.</param>
    public sealed record Linked(string Group, double Position) : Placement;

    /// <summary>On the sex chromosomes.</summary>
    /// <param name="Recombination">With the sex-determining region, in the sex that has two different sex chromosomes.</param>
    /// <param name="OtherSex">The fraction that counts between sex-linked loci in the other sex; <c>null</c>: the same.</param>
    /// <param name="Arm">On which side of the sex-determining region the locus lies: 1 or 2.</param>
    public sealed record SexLinked(RecombinationFraction Recombination, RecombinationFraction? OtherSex = null, int Arm = 1)
        : Placement;
}
