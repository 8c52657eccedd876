using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Charts;

/// <summary>The filled part of a band of a symbol, cut to the symbol's outline.</summary>
public static class BandOutline
{
    private const int Steps = 24;

    /// <summary>The corners of the part.</summary>
    /// <param name="sex">The outline: square, circle, or a diamond.</param>
    /// <param name="x">The middle of the symbol.</param>
    /// <param name="y">The middle of the symbol.</param>
    /// <param name="half">Half the symbol's size.</param>
    /// <param name="top">Where the band begins, from the middle.</param>
    /// <param name="bottom">Where it ends, from the middle.</param>
    /// <param name="share">The share of the symbol's width that is filled, from the left.</param>
    public static IReadOnlyList<ChartSpot> Of(Sex? sex, double x, double y, double half, double top, double bottom, double share)
    {
        var end = (share * 2 * half) - half;
        var points = new List<(double X, double Y)>();
        var heights = Enumerable.Range(0, Steps + 1).Select(i => top + ((bottom - top) * i / Steps)).ToArray();
        points.AddRange(heights.Select(h => (-Reach(sex, half, h), h)));
        points.AddRange(heights.Reverse().Select(h => (Math.Max(-Reach(sex, half, h), Math.Min(end, Reach(sex, half, h))), h)));
        if (sex == Sex.Male)
        {
            points = [(-half, top), (-half, bottom), (end, bottom), (end, top)];
        }

        return [.. points.Select(p => new ChartSpot(x + p.X, y + p.Y))];
    }

    // How far the outline reaches to the side at a height.
    private static double Reach(Sex? sex, double half, double height) => sex switch
    {
        Sex.Male => half,
        Sex.Female => Math.Sqrt(Math.Max(0, (half * half) - (height * height))),
        _ => half - Math.Abs(height),
    };
}
