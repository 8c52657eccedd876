using System.Globalization;
using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Words;
using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Routes;

/// <summary>What a keeper asks of the routes, as the address holds it.</summary>
public sealed record RouteForm
{
    /// <summary>The most seasons that can be asked for.</summary>
    public const int MostSeasons = 20;

    private const int MostBought = 40;

    public string Want { get; init; } = string.Empty;

    public string? Seasons { get; init; }

    /// <summary>Gets the animals that could be bought, one a line.</summary>
    public IReadOnlyList<string> Buy { get; init; } = [];

    public string? Rearing { get; init; }

    public string? Space { get; init; }

    public string? Dams { get; init; }

    public string? MostInbreeding { get; init; }

    public string? ClutchCost { get; init; }

    public string? AnimalCost { get; init; }

    public string? BoughtCost { get; init; }

    public bool Purchases { get; init; }

    /// <summary>Gets the number of the route that is shown; <c>null</c>: not said.</summary>
    public int? Route { get; init; }

    /// <summary>Gets the adopted route of which it is asked how it stands.</summary>
    public Guid? For { get; init; }

    /// <summary>Gets whether the form says more than what is wanted and by when.</summary>
    public bool SaysMore => Buy.Count > 0 || Purchases
        || new[] { Rearing, Space, Dams, MostInbreeding, ClutchCost, AnimalCost, BoughtCost }.Any(t => t is not null);

    public static RouteForm Read(IQueryCollection query) => new()
    {
        Want = Text(query, "want") ?? string.Empty,
        Seasons = Text(query, "seasons"),
        Buy = [.. query["buy"].OfType<string>().SelectMany(b => b.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)).Take(MostBought)],
        Rearing = Text(query, "rearing"),
        Space = Text(query, "space"),
        Dams = Text(query, "dams"),
        MostInbreeding = Text(query, "most-inbreeding"),
        ClutchCost = Text(query, "clutch-cost"),
        AnimalCost = Text(query, "animal-cost"),
        BoughtCost = Text(query, "bought-cost"),
        Purchases = Text(query, "purchases") is not null,
        Route = int.TryParse(Text(query, "route"), NumberStyles.None, CultureInfo.InvariantCulture, out var route) ? Math.Max(1, route) : null,
        For = Guid.TryParse(Text(query, "for"), out var id) ? id : null,
    };

    /// <summary>The form of an adopted route, as it is asked now.</summary>
    public static RouteForm Of(Guid id, RoutesQuestion question) => new()
    {
        For = id,
        Want = question.Want,
        Seasons = Links.Number(question.Seasons),
        Buy = question.Buy,
        Rearing = Written(question.Rearing * 100.0),
        Space = question.MostRaised is { } space ? Links.Number(space) : null,
        Dams = Links.Number(question.MostDams),
        MostInbreeding = question.MostInbreeding is { } most ? Written(most * 100.0) : null,
        ClutchCost = Written(question.Costs.Clutch),
        AnimalCost = Written(question.Costs.Animal),
        BoughtCost = Written(question.Costs.Bought),
    };

    /// <summary>The address that asks this, without the route that is shown.</summary>
    public string Question() => Link(("route", null));

    /// <summary>The address that asks this.</summary>
    /// <param name="more">What else it says.</param>
    public string Link(params IEnumerable<(string Name, string? Value)> more) => For is { } id ? Links.With("/route", [("for", id.ToString("N")), .. more]) : Links.With(
        "/route",
        [
            ("want", Want), ("seasons", Seasons), ("buy", Buy.Count == 0 ? null : string.Join('\n', Buy)), ("rearing", Rearing), ("space", Space), ("dams", Dams),
            ("most-inbreeding", MostInbreeding), ("clutch-cost", ClutchCost), ("animal-cost", AnimalCost), ("bought-cost", BoughtCost),
            ("purchases", Purchases ? "yes" : null), .. more,
        ]);

    /// <summary>The address that shows one of the routes.</summary>
    public string ToRoute(int number) => $"{Link(("route", number == 1 && For is null ? null : Links.Number(number)))}#route";

    /// <summary>The question, without what in the address cannot be read.</summary>
    /// <param name="problems">Takes what cannot be read.</param>
    internal RoutesQuestion ToQuestion(List<AskedWrongly> problems) => new(Want)
    {
        Seasons = Whole(Seasons, "seasons", 1, MostSeasons, problems) ?? 8,
        Buy = Buy,
        Rearing = Share(Rearing, "rearing", allowsZero: false, problems) ?? 0.95,
        MostRaised = Whole(Space, "space", 0, 10_000, problems),
        MostDams = Whole(Dams, "dams", 1, 10, problems) ?? 3,
        MostInbreeding = Share(MostInbreeding, "most-inbreeding", allowsZero: true, problems),
        Costs = (Cost(ClutchCost, "clutch-cost", problems), Cost(AnimalCost, "animal-cost", problems), Cost(BoughtCost, "bought-cost", problems)),
        WithPurchases = Purchases,
    };

    private static string? Text(IQueryCollection query, string name)
    {
        var text = query[name].ToString().Trim();
        return text.Length == 0 ? null : text;
    }

    private static int? Whole(string? text, string where, int least, int most, List<AskedWrongly> problems)
    {
        if (text is null)
        {
            return null;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most)
        {
            return number;
        }

        problems.Add(new AskedWrongly(where, $"Give a whole number from {least} to {most}, not “{text}”."));
        return null;
    }

    // 95, 95% and 0.95 say the same.
    private static double? Share(string? text, string where, bool allowsZero, List<AskedWrongly> problems)
    {
        if (text is null)
        {
            return null;
        }

        if (Number(text.TrimEnd('%', ' ')) is { } number && number <= 100.0 && (number > 0.0 || allowsZero))
        {
            return number > 1.0 || text.EndsWith('%') ? number / 100.0 : number;
        }

        problems.Add(new AskedWrongly(where, $"Give a share in percent, {(allowsZero ? "from 0 to 100" : "above 0 and up to 100")}, not “{text}”."));
        return null;
    }

    private static string Written(double number) => Math.Round(number, 9).ToString("0.#########", CultureInfo.InvariantCulture);

    private static double Cost(string? text, string where, List<AskedWrongly> problems)
    {
        if (text is null)
        {
            return 1.0;
        }

        if (Number(text) is { } cost)
        {
            return cost;
        }

        problems.Add(new AskedWrongly(where, $"Give a cost of 0 or more, in any unit of your own, not “{text}”."));
        return 1.0;
    }

    private static double? Number(string text) =>
        double.TryParse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;
}
