namespace Clutchwright.Desk.Sheets;

/// <summary>What a season came to.</summary>
/// <param name="Year">The year in which its clutches hatch.</param>
/// <param name="Pairings">The pairs that were put together or seen to lock.</param>
/// <param name="Clutches">The clutches.</param>
public sealed record SeasonSummary(int Year, IReadOnlyList<PastPairing> Pairings, IReadOnlyList<PastClutch> Clutches);

/// <summary>A pair of a season.</summary>
/// <param name="Sire">The male.</param>
/// <param name="Dam">The female.</param>
/// <param name="Together">How often they were put together.</param>
/// <param name="Locks">How often they were seen to lock.</param>
/// <param name="From">The first day, in words.</param>
/// <param name="To">The last day, in words.</param>
public sealed record PastPairing(string Sire, string Dam, int Together, int Locks, string From, string To);

/// <summary>A clutch of a season.</summary>
/// <param name="Sire">The sire, or the possible ones; empty: not known.</param>
/// <param name="Dam">The dam; empty: not known.</param>
/// <param name="Laid">When it was laid, in words; empty: not written down.</param>
/// <param name="Eggs">The eggs; <c>null</c>: not counted.</param>
/// <param name="Hatchlings">The young, in groups.</param>
public sealed record PastClutch(string Sire, string Dam, string Laid, int? Eggs, IReadOnlyList<PastYoung> Hatchlings)
{
    /// <summary>Gets the keeper's id of it; empty: it has none.</summary>
    public string Tag { get; init; } = string.Empty;

    /// <summary>Gets the slugs; <c>null</c>: not counted.</summary>
    public int? Slugs { get; init; }

    /// <summary>Gets how many young are in the book only as a number.</summary>
    public int Counted { get; init; }
}

/// <summary>A hatchling of a season.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Look">What it shows.</param>
/// <param name="Status">What became of it, as text: <c>Kept</c>, <c>HeldBack</c>, <c>ForSale</c>, <c>Sold</c>, <c>Given</c>, <c>Died</c>.</param>
/// <param name="Hatched">When, in words.</param>
public sealed record PastYoung(string Tag, string Look, string Status, string Hatched);
