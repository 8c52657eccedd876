using Clutchwright.Desk.Routes;

namespace Clutchwright.Web.Routes;

/// <summary>A pairing on the map.</summary>
/// <param name="Step">The place of the step in the route.</param>
/// <param name="X">Left edge.</param>
/// <param name="Y">Middle.</param>
internal readonly record struct MapCard(int Step, double X, double Y);

/// <summary>An animal held back, on the map.</summary>
/// <param name="Animal">The place of the animal in the route.</param>
/// <param name="X">Middle.</param>
/// <param name="Y">Middle.</param>
internal readonly record struct MapKept(int Animal, double X, double Y);

/// <summary>Where the parts of a route are drawn: seasons from left to right, held-back animals between the pairings.</summary>
internal sealed class RouteMap
{
    public const double CardWidth = 158;
    public const double CardHeight = 88;
    public const double Gap = 196;
    public const double Head = 34;
    public const double TargetWidth = 150;
    private const double Row = 112;
    private const double Edge = 8;

    private RouteMap(IReadOnlyList<int> seasons, MapCard[] cards, MapKept[] kept, double height)
    {
        Seasons = seasons;
        Cards = cards;
        Kept = kept;
        Width = XOf(seasons.Count - 1) + CardWidth + 66 + TargetWidth + Edge;
        Height = height;
    }

    /// <summary>Gets the seasons that begin a pairing.</summary>
    public IReadOnlyList<int> Seasons { get; }

    /// <summary>Gets the pairings, in the order of the route's steps.</summary>
    public IReadOnlyList<MapCard> Cards { get; }

    /// <summary>Gets the held-back animals.</summary>
    public IReadOnlyList<MapKept> Kept { get; }

    public double Width { get; }

    public double Height { get; }

    /// <summary>The left edge of a column.</summary>
    public static double XOf(int column) => Edge + (column * (CardWidth + Gap));

    public static RouteMap Of(RouteWords route)
    {
        int[] seasons = [.. route.Steps.Select(s => s.Season).Distinct().Order()];
        var cards = new MapCard[route.Steps.Count];
        var kept = new List<MapKept>();
        for (var column = 0; column < seasons.Length; column++)
        {
            var here = Enumerable.Range(0, cards.Length).Where(i => route.Steps[i].Season == seasons[column])
                .Select(i => (Step: i, Wish: Wish(route, i, kept))).OrderBy(c => c.Wish).ThenBy(c => c.Step).ToArray();
            var ys = Spread([.. here.Select((c, i) => c.Wish ?? ((i + 0.5) * Row))], CardHeight / 2);
            for (var i = 0; i < here.Length; i++)
            {
                cards[here[i].Step] = new(here[i].Step, XOf(column), ys[i]);
            }

            // The young of a pairing stand to its right, those of one pairing below one another.
            var young = here.SelectMany((c, i) => route.Steps[c.Step].Keep.Select((k, j) => (Animal: k, Wish: ys[i] + ((j - ((route.Steps[c.Step].Keep.Count - 1) / 2.0)) * Row)))).ToArray();
            var places = Spread([.. young.Select(y => y.Wish)], CardHeight / 2);
            kept.AddRange(young.Select((y, i) => new MapKept(y.Animal, XOf(column) + CardWidth + (Gap / 2), places[i])));
        }

        var height = cards.Select(c => c.Y).Concat(kept.Select(k => k.Y)).Max() + (Row / 2) + Head;
        return new(seasons, [.. cards.Select(c => c with { Y = c.Y + Head })], [.. kept.Select(k => k with { Y = k.Y + Head })], height);
    }

    // A pairing stands level with the animals it waits for.
    private static double? Wish(RouteWords route, int step, List<MapKept> kept)
    {
        double[] parents = [.. kept.Where(k => k.Animal == route.Steps[step].Sire || k.Animal == route.Steps[step].Dam).Select(k => k.Y)];
        return parents.Length == 0 ? null : parents.Average();
    }

    private static double[] Spread(double[] wishes, double top)
    {
        var places = (double[])wishes.Clone();
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = Math.Max(places[i], i == 0 ? top : places[i - 1] + Row);
        }

        return places;
    }
}
