using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>An animal, or several young of which only what they look like was kept, with all that is recorded of it.</summary>
/// <param name="Key">The animal's key, unlike every other's.</param>
/// <param name="Sex">The sex; <c>null</c>: not known.</param>
/// <param name="Observations">What is recorded of it, in order: of words about a founder the first are taken as the starting point.</param>
public sealed record RecordedAnimal(string Key, Sex? Sex, IReadOnlyList<Observation> Observations)
{
    /// <summary>Gets the key of the sire; <c>null</c>: not known, or one of <see cref="PossibleSires"/>.</summary>
    public string? Sire { get; init; }

    /// <summary>Gets the key of the dam; <c>null</c>: not known.</summary>
    public string? Dam { get; init; }

    /// <summary>Gets the keys of the males of which one is the sire; empty where <see cref="Sire"/> is known or nothing is.</summary>
    public IReadOnlyList<string> PossibleSires { get; init; } = [];

    /// <summary>Gets the chances of <see cref="PossibleSires"/>, in their order and in sum 1; empty: each is as likely as another.</summary>
    public IReadOnlyList<Probability> SireWeights { get; init; } = [];

    /// <summary>Gets the clutch: animals of one clutch have one sire, even where it is not known which (as long as the same are possible, with the same chances); <c>null</c>: none recorded.</summary>
    public string? Clutch { get; init; }

    /// <summary>Gets the day it hatched; <c>null</c>: not known. It tells which hatchlings can have been taken for each other, and nothing else.</summary>
    public DateOnly? Hatched { get; init; }

    /// <summary>Gets how many young this stands for: more than 1 where only a count was kept ("4 normal"). They can have no young of their own.</summary>
    public int Count { get; init; } = 1;
}
