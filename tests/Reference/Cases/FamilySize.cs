namespace Clutchwright.Reference.Tests.Cases;

/// <summary>How large and how inbred a random family is.</summary>
internal sealed record FamilySize(int Fewest, int Most, int MostFounders, int MostYoung, int FewestLoops, int MostLoops)
{
    /// <summary>So small that every genotype of every animal can be written out.</summary>
    public static FamilySize Tiny { get; } = new(4, 7, 4, 3, 0, 8);

    /// <summary>The same for two linked loci or many alleles.</summary>
    public static FamilySize Least { get; } = new(3, 5, 3, 3, 0, 8);

    /// <summary>A family of some size, inbred at random.</summary>
    public static FamilySize Middle { get; } = new(10, 30, 8, 4, 0, 4);

    /// <summary>A family with many loops.</summary>
    public static FamilySize Looped { get; } = new(16, 24, 5, 3, 5, 8);
}
