using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Routes;

/// <summary>A route that the keeper has adopted.</summary>
/// <param name="Id">Its identity.</param>
/// <param name="Want">What is to hatch in the end, as trade text.</param>
/// <param name="FirstYear">The year of its first season.</param>
/// <param name="LastYear">The year of the season by which it is to be there.</param>
/// <param name="AdoptedOn">The day, in the keeper's time.</param>
/// <param name="Chance">Its chance when it was adopted.</param>
/// <param name="ChanceBySeason">The same by the end of each season, from <paramref name="FirstYear"/>.</param>
/// <param name="Steps">The pairings as they were planned then.</param>
/// <param name="Ending"><c>reached</c>, <c>given up</c>, or <c>null</c>: it is followed.</param>
public sealed record AdoptedRouteLine(
    Guid Id,
    string Want,
    int FirstYear,
    int LastYear,
    DateOnly AdoptedOn,
    double Chance,
    IReadOnlyList<double> ChanceBySeason,
    IReadOnlyList<AdoptedStep> Steps,
    string? Ending);

/// <summary>A pairing of an adopted route as it was planned.</summary>
/// <param name="Season">Counted from 1 at the adopting.</param>
/// <param name="Sire">The sire: its tag if it was kept then, and what it is.</param>
/// <param name="Dam">The dam.</param>
/// <param name="Keep">What was to be held back; none: the wanted hatches.</param>
public sealed record AdoptedStep(int Season, AdoptedParent Sire, AdoptedParent Dam, IReadOnlyList<string> Keep);

/// <summary>A parent in an adopted route.</summary>
/// <param name="Tag">Its tag; <c>null</c>: it was still to hatch or to be bought.</param>
/// <param name="Genotype">What it is at the genes that count.</param>
public sealed record AdoptedParent(string? Tag, string Genotype);

/// <summary>Where an adopted route stands, planned anew from the animals as they are now.</summary>
/// <param name="Route">The route as it was adopted.</param>
/// <param name="Question">What is asked now: the same with the seasons that are left; <c>null</c>: none is left.</param>
/// <param name="Number">The number of the route among those found now that goes on best with the one adopted; <c>null</c>: none was found.</param>
/// <param name="Year">The season at hand.</param>
/// <param name="There">Animals that are, or may be, what is wanted, the surest first.</param>
/// <param name="Keep">Young animals that the route as it stands needs.</param>
/// <param name="Asks">What the route asks of the season at hand, in sentences.</param>
/// <param name="IsInSeason">Whether the season that is kept asks just that.</param>
public sealed record RouteStanding(
    AdoptedRouteLine Route,
    RoutesQuestion? Question,
    int? Number,
    int Year,
    IReadOnlyList<(string Tag, Probability Chance)> There,
    IReadOnlyList<RouteKeep> Keep,
    IReadOnlyList<string> Asks,
    bool IsInSeason);

/// <summary>A young animal that a route needs.</summary>
/// <param name="Tags">Its tag; several where any one will do.</param>
/// <param name="Words">What it has to be.</param>
/// <param name="Ready">The season from now in which it can first be paired.</param>
public sealed record RouteKeep(IReadOnlyList<string> Tags, AnimalWords Words, int Ready);
