namespace Clutchwright.Desk.Season;

/// <summary>What the book keeps of a season.</summary>
/// <param name="Year">The year in which its clutches hatch.</param>
/// <param name="Version">Says which state of the season this is, for keeping it again; <c>null</c>: nothing is kept.</param>
/// <param name="Goals">The goals file: JSON, as docs/how-to/season.md describes it; <c>null</c>: nothing is kept.</param>
/// <param name="Years">The years of all seasons kept, the latest first.</param>
/// <param name="Notes">What to mind.</param>
public sealed record SeasonKept(int Year, Guid? Version, string? Goals, IReadOnlyList<int> Years, IReadOnlyList<string> Notes);
