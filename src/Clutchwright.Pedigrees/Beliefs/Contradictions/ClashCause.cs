using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs.Contradictions;

/// <summary>Something that may have gone wrong where records cannot all be true.</summary>
/// <param name="Kind">What went wrong.</param>
/// <param name="Animal">The animal whose record is wrong, or one of the clutch concerned.</param>
/// <param name="Record">The record that is wrong; <c>null</c> where it is about parentage or a hatchling.</param>
/// <param name="Clutch">The keys of the clutch whose parentage is another; empty where it is about one record or one hatchling.</param>
/// <param name="Other">The other sire, or the hatchling it was taken for; <c>null</c>: none that is recorded.</param>
/// <param name="PriorRate">How probable this is before any record is read.</param>
/// <param name="Log10Factor">The base-10 logarithm of how many times likelier all records are under this cause than with every animal in its place and records
/// misread at the stated rate.</param>
/// <param name="Posterior">Its share among all causes listed: prior rate times factor, scaled to a sum of 1.</param>
public sealed record ClashCause(
    CauseKind Kind,
    string Animal,
    RecordPlace? Record,
    IReadOnlyList<string> Clutch,
    string? Other,
    double PriorRate,
    double Log10Factor,
    Probability Posterior);

/// <summary>What may have gone wrong.</summary>
public enum CauseKind
{
    /// <summary>A look was misread or entered wrongly.</summary>
    Misread = 1,

    /// <summary>What a seller or breeder said is not so.</summary>
    WrongWords = 2,

    /// <summary>The clutch is of a male that is not recorded.</summary>
    UnknownSire = 3,

    /// <summary>The clutch is of another male of the stock.</summary>
    OtherSire = 4,

    /// <summary>The clutch is of sperm the dam kept from the sire of an earlier clutch.</summary>
    StoredSperm = 5,

    /// <summary>The clutch is of the dam alone.</summary>
    Parthenogenesis = 6,

    /// <summary>The hatchling was exchanged with one of another clutch.</summary>
    Swapped = 7,

    /// <summary>The animal is of neither parent recorded.</summary>
    UnknownOrigin = 8,
}
