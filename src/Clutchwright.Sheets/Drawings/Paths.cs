namespace Clutchwright.Sheets.Drawings;

/// <summary>Paths of common shapes.</summary>
public static class Paths
{
    // How far the control points of a quarter circle lie from its ends, in radii.
    private const double Quarter = 0.5522847498;

    /// <summary>Straight lines from point to point.</summary>
    public static IReadOnlyList<PathStep> Lines(bool isClosed, params IReadOnlyList<(double X, double Y)> points)
    {
        var steps = points.Select((p, i) => new PathStep(i == 0 ? PathMove.Start : PathMove.Line, p.X, p.Y)).ToList();
        if (isClosed)
        {
            steps.Add(new(PathMove.Close));
        }

        return steps;
    }

    /// <summary>A rectangle.</summary>
    public static IReadOnlyList<PathStep> Box(double x, double y, double width, double height) =>
        Lines(isClosed: true, (x, y), (x + width, y), (x + width, y + height), (x, y + height));

    /// <summary>A circle.</summary>
    public static IReadOnlyList<PathStep> Circle(double x, double y, double radius)
    {
        var k = radius * Quarter;
        return
        [
            new(PathMove.Start, x - radius, y),
            Curve((x - radius, y - k), (x - k, y - radius), (x, y - radius)),
            Curve((x + k, y - radius), (x + radius, y - k), (x + radius, y)),
            Curve((x + radius, y + k), (x + k, y + radius), (x, y + radius)),
            Curve((x - k, y + radius), (x - radius, y + k), (x - radius, y)),
            new(PathMove.Close),
        ];
    }

    /// <summary>An egg in a box of the proportion 12 to 15: round below, narrower above.</summary>
    public static IReadOnlyList<PathStep> Egg(double x, double y, double width)
    {
        var s = width / 12.0;
        return
        [
            .. new PathStep[]
            {
                new(PathMove.Start, 6, 1.4),
                Curve((8.4, 1.4), (10.4, 5.3), (10.4, 8.6)),
                Curve((10.4, 11.7), (8.5, 13.6), (6, 13.6)),
                Curve((3.5, 13.6), (1.6, 11.7), (1.6, 8.6)),
                Curve((1.6, 5.3), (3.6, 1.4), (6, 1.4)),
                new(PathMove.Close),
            }.Select(p => p.Scaled(s).Moved(x, y)),
        ];
    }

    /// <summary>A curve to a point.</summary>
    public static PathStep Curve((double X, double Y) first, (double X, double Y) second, (double X, double Y) end) =>
        new(PathMove.Curve, end.X, end.Y) { First = first, Second = second };
}
