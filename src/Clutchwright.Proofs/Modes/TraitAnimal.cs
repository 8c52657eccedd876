using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Proofs.Modes;

/// <summary>An animal of a pedigree in which a trait was looked for.</summary>
/// <param name="Key">Its key, unlike every other's.</param>
/// <param name="Sex">Its sex; <c>null</c>: not known.</param>
/// <param name="Look">What it shows of the trait; <c>null</c>: not looked at.</param>
public sealed record TraitAnimal(string Key, Sex? Sex, TraitLook? Look)
{
    /// <summary>Gets the key of the sire; <c>null</c>: not known.</summary>
    public string? Sire { get; init; }

    /// <summary>Gets the key of the dam; <c>null</c>: not known.</summary>
    public string? Dam { get; init; }

    /// <summary>Gets the males of which one is the sire; empty where <see cref="Sire"/> is known or nothing is.</summary>
    public IReadOnlyList<string> PossibleSires { get; init; } = [];

    /// <summary>Gets the chances of <see cref="PossibleSires"/>, in their order and in sum 1; empty: each is as likely as another.</summary>
    public IReadOnlyList<Probability> SireWeights { get; init; } = [];

    /// <summary>Gets the clutch: animals of one clutch have one sire; <c>null</c>: none recorded.</summary>
    public string? Clutch { get; init; }

    /// <summary>Gets what it shows of a second trait, where one is asked about; an animal that shows both at one locus is their compound.</summary>
    public TraitLook OtherLook { get; init; }

    /// <summary>Gets whether neither parent is recorded.</summary>
    internal bool IsFounder => Sire is null && Dam is null && PossibleSires.Count == 0;
}
