using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Seasons;

namespace Clutchwright.Stock.Routes;

/// <summary>A route that a keeper has made up their mind to follow. It changes only through the deeds.</summary>
public sealed class AdoptedRoute
{
    public const int MaxWantLength = 1_000;
    public const int MaxDocumentLength = 200_000;

    internal AdoptedRoute(AdoptedRouteId id, AdoptedRouteEntry entry, DateTime when)
    {
        AdoptedRouteId = id;
        AdoptedAt = when;
        (Want, FirstYear, LastYear, Asked, Steps) = (entry.Want.Trim(), entry.FirstYear, entry.LastYear, entry.Asked, entry.Steps);
    }

    internal AdoptedRoute(RouteSnapshot snapshot)
    {
        AdoptedRouteId = new(snapshot.Id);
        Take(snapshot);
    }

    private AdoptedRoute()
    {
    }

    public AdoptedRouteId AdoptedRouteId { get; private set; }

    /// <summary>Trade text.</summary>
    public string Want { get; private set; } = "";

    public int FirstYear { get; private set; }

    public int LastYear { get; private set; }

    /// <summary>A JSON object.</summary>
    public string Asked { get; private set; } = "{}";

    /// <summary>A JSON object.</summary>
    public string Steps { get; private set; } = "{}";

    /// <summary>UTC.</summary>
    public DateTime AdoptedAt { get; private set; }

    /// <summary>How it ended; null: it is followed.</summary>
    public RouteEnding? Ending { get; private set; }

    public Guid Version { get; private set; }

    public override string ToString() => $"The route to {Want}";

    internal static Problem? WhyNot(AdoptedRouteEntry entry) =>
        entry.Want.Trim() is not { Length: > 0 and <= MaxWantLength } want || !TextRules.IsPlainLine(want) ? new RouteProblem.WantInvalid(MaxWantLength)
        : entry.FirstYear < KeptSeason.FirstYear || entry.LastYear > KeptSeason.LastYear || entry.LastYear < entry.FirstYear
            ? new RouteProblem.SeasonsInvalid(entry.FirstYear, entry.LastYear)
        : entry.Asked.Length > MaxDocumentLength || entry.Steps.Length > MaxDocumentLength ? new RouteProblem.TooLong(MaxDocumentLength)
        : null;

    internal void End(RouteEnding ending) => Ending = ending;

    internal void NewVersion() => Version = Guid.CreateVersion7();

    internal void Take(RouteSnapshot snapshot)
    {
        (Want, FirstYear, LastYear) = (snapshot.Want, snapshot.FirstYear, snapshot.LastYear);
        (Asked, Steps) = (snapshot.Asked.GetRawText(), snapshot.Steps.GetRawText());
        (AdoptedAt, Ending) = (snapshot.AdoptedAt, snapshot.Ending);
    }
}
