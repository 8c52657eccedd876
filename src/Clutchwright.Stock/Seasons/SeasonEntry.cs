namespace Clutchwright.Stock.Seasons;

/// <summary>What is to be kept of a season.</summary>
/// <param name="Year">The year by which the season is called: the one in which its clutches hatch.</param>
/// <param name="Version">The <see cref="KeptSeason.Version"/> that the keeper saw; <c>null</c>: none was kept.</param>
/// <param name="Goals">What is wanted, the limits and the keeper's own choices: a JSON object. The book keeps it and does not read it.</param>
/// <param name="Animals">The animals that <paramref name="Goals"/> names, each by every name it has there.</param>
public sealed record SeasonEntry(int Year, Guid? Version, string Goals, IReadOnlyList<NamedAnimal> Animals);
