namespace Clutchwright.Pedigrees.Beliefs.Contradictions;

/// <summary>What may have gone wrong where records cannot all be true.</summary>
/// <param name="Causes">The causes that could be weighed, the most probable first; those that are impossible are left out.</param>
/// <param name="NotWeighed">Causes of which nobody can say how probable they make the records: the part of the network that they change is so large that it can only be
/// sampled, and a sample gives no probability of all records.</param>
/// <param name="IsExact">Whether all factors are exact; otherwise those of wrong records rest on sampled beliefs.</param>
/// <param name="IsNearOnly">Whether the book is so large that only the animals nearest to the clash were looked at.</param>
public sealed record ClashCauses(IReadOnlyList<ClashCause> Causes, IReadOnlyList<UnweighedCause> NotWeighed, bool IsExact, bool IsNearOnly)
{
    /// <summary>Up to so many animals a book is looked at whole; of a larger one only the animals nearest to the clash are.</summary>
    public const int WholeBook = 400;

    /// <summary>Weighs the causes of a contradiction.</summary>
    /// <param name="beliefs">The beliefs of the whole record.</param>
    /// <param name="clash">One of its <see cref="PedigreeBeliefs.Clashes"/>.</param>
    /// <param name="rates">How often records are wrong.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentOutOfRangeException">A rate is out of range.</exception>
    /// <remarks>All linkage groups together. Cost: the parts of the network that a cause changes are reckoned anew for every other sire and for the likeliest exchanges of
    /// hatchlings. Source: docs/model/contradictions.md.</remarks>
    public static ClashCauses Of(PedigreeBeliefs beliefs, ClashingRecords clash, CauseRates rates, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(beliefs);
        ArgumentNullException.ThrowIfNull(clash);
        ArgumentNullException.ThrowIfNull(rates);
        return new CauseSearch(beliefs, clash, rates, cancel).Find();
    }
}

/// <summary>Something that may have gone wrong and that could not be weighed.</summary>
/// <param name="Kind">What went wrong.</param>
/// <param name="Animal">The animal concerned, or one of the clutch.</param>
/// <param name="Clutch">The keys of the clutch whose parentage is another; empty where it is about one hatchling.</param>
/// <param name="Other">The other sire, or the hatchling it was taken for; <c>null</c>: none that is recorded.</param>
/// <param name="PriorRate">How probable this is before any record is read.</param>
public sealed record UnweighedCause(CauseKind Kind, string Animal, IReadOnlyList<string> Clutch, string? Other, double PriorRate);
