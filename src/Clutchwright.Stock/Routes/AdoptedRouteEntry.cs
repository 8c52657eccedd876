namespace Clutchwright.Stock.Routes;

/// <summary>A route that a keeper adopts.</summary>
/// <param name="Want">What is to hatch in the end, as trade text.</param>
/// <param name="FirstYear">The year of its first season.</param>
/// <param name="LastYear">The year of the season by which it is to be there.</param>
/// <param name="Asked">How it was asked for: a JSON object, which the book keeps and does not read.</param>
/// <param name="Steps">The route as it was then: a JSON object, which the book keeps and does not read.</param>
public sealed record AdoptedRouteEntry(string Want, int FirstYear, int LastYear, string Asked, string Steps);
