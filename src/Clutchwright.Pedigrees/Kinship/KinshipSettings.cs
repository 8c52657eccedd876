using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Kinship;

/// <summary>What is known beyond the pedigree itself, by the animals' keys.</summary>
/// <remarks>Cannot change. What is not said: founders are unrelated and not inbred, of several possible sires each is as likely as the
/// next, and each animal's sire is in doubt for itself.</remarks>
public sealed class KinshipSettings
{
    /// <summary>Gets the settings that say nothing.</summary>
    public static KinshipSettings Default { get; } = new();

    /// <summary>Gets the chances of an animal's possible sires, in the order of <see cref="PedigreeAnimal.PossibleSires"/>; they sum to 1.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<Probability>> SireWeights { get; init; } =
        new Dictionary<string, IReadOnlyList<Probability>>(StringComparer.Ordinal);

    /// <summary>Gets a name of the clutch of an animal whose sire is in doubt: animals of one clutch have one sire, whoever he is.</summary>
    /// <remarks>Only animals of the same possible sires with the same chances are ever taken together.</remarks>
    public IReadOnlyDictionary<string, string> Clutches { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Gets the inbreeding coefficients of founders, in [0, 1].</summary>
    public IReadOnlyDictionary<string, Probability> FounderInbreeding { get; init; } = new Dictionary<string, Probability>(StringComparer.Ordinal);

    /// <summary>Gets the kinship of pairs of founders.</summary>
    public IReadOnlyList<FounderKinship> FounderKinships { get; init; } = [];
}

/// <summary>How related two founders are taken to be.</summary>
/// <param name="First">One founder's key.</param>
/// <param name="Second">The other's.</param>
/// <param name="Kinship">The chance that an allele drawn from each is identical by descent, in [0, 1]; 1/4 for full sibs.</param>
public sealed record FounderKinship(string First, string Second, Probability Kinship);
