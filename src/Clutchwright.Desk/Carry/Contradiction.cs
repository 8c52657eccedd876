using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Carry;

/// <summary>Records that cannot all be true, with what may have gone wrong.</summary>
/// <param name="Loci">The names of the loci at which they clash.</param>
/// <param name="Animals">The tags of the animals concerned.</param>
/// <param name="Records">The records, in words.</param>
/// <param name="Causes">What may have gone wrong, the most probable first.</param>
public sealed record Contradiction(
    IReadOnlyList<string> Loci, IReadOnlyList<string> Animals, IReadOnlyList<string> Records, IReadOnlyList<CauseLine> Causes)
{
    /// <summary>Gets whether the book is so large that the causes were weighed among the animals nearest to the clash alone.</summary>
    public bool IsNearOnly { get; init; }

    /// <summary>Gets what may have gone wrong too but could not be weighed, in sentences: the kin that it would change is too entangled to be reckoned, only sampled.</summary>
    public IReadOnlyList<string> NotWeighed { get; init; } = [];

    /// <summary>Gets whether the chances of the causes are exact; otherwise some rest on sampled beliefs.</summary>
    public bool IsExact { get; init; } = true;

    /// <summary>Gets what is to be said of causes that could not be weighed; <c>null</c>: nothing.</summary>
    public string? NotWeighedText => NotWeighed.Count == 0
        ? null
        : $"Not weighed, since the kin concerned is too entangled to be reckoned exactly and was sampled: {string.Join(" ", NotWeighed.Take(MostNamed))}"
            + (NotWeighed.Count > MostNamed ? $" And {NotWeighed.Count - MostNamed:N0} more." : string.Empty);

    private const int MostNamed = 4;
}

/// <summary>Something that may have gone wrong.</summary>
/// <param name="Kind">As text, for example <c>Misread</c>, <c>OtherSire</c>.</param>
/// <param name="Animal">The tag of the animal it is about, or of one of the clutch.</param>
/// <param name="Other">The tag of the other sire or hatchling, if any.</param>
/// <param name="Text">What went wrong, in a sentence.</param>
/// <param name="Check">What to check, in a sentence.</param>
/// <param name="Chance">How probable it is among the causes weighed.</param>
/// <param name="Log10Factor">The base-10 logarithm of its Bayes factor.</param>
/// <param name="PriorRate">How probable it is before any record is read.</param>
public sealed record CauseLine(
    string Kind, string Animal, string? Other, string Text, string Check, Probability Chance, double Log10Factor, double PriorRate);
