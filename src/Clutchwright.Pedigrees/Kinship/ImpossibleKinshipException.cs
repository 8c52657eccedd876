namespace Clutchwright.Pedigrees.Kinship;

/// <summary>Kinships are said of founders that no animals can have together.</summary>
public sealed class ImpossibleKinshipException : Exception
{
    internal ImpossibleKinshipException(string founder)
        : base($"No animals can have such kinships: {founder} fits with no way the others are related; founders closely related to one and the same are related to each other.") =>
        Founder = founder;

    /// <summary>The key of the first founder, in the order of the pedigree, whose kinships with those before it cannot be.</summary>
    public string Founder { get; }
}
