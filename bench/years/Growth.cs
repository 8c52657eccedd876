using System.Globalization;
using System.Text;

namespace Clutchwright.Years;

/// <summary>How time and memory grow with the years kept: the picture of bench/README.md.</summary>
/// <remarks>All as shares of their goals, so that they stand on one axis.</remarks>
internal static class Growth
{
    private static readonly (string Words, string Colour, Func<Measured, double> Share)[] Series =
    [
        ("slowest page of 300 ms", "#9b2d30", m => m.Pages.Max(p => p.Median) / Measured.MostMilliseconds),
        ("median page of 300 ms", "#8a5a1c", m => m.Pages.Select(p => p.Median).Order().ElementAt(m.Pages.Count / 2) / Measured.MostMilliseconds),
        ("start of 3 s", "#2f5d50", m => m.StartSeconds / 3.0),
        ("backup of 10 s", "#3d5a80", m => m.BackupSeconds / 10.0),
        ("memory of 500 MB", "#5b4a72", m => m.Megabytes / 500.0),
    ];

    public static string Draw(IReadOnlyList<Measured> all)
    {
        var svg = new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 760 470\" font-family=\"Georgia, serif\" font-size=\"14\" role=\"img\" aria-label=\"Slowest and median page, start, backup and memory as shares of their goals, against the years kept\">\n<rect width=\"760\" height=\"470\" fill=\"#fbf8f1\"/>\n");
        foreach (var years in all.Select(m => m.Years))
        {
            svg.Append(CultureInfo.InvariantCulture, $"<line x1=\"{X(years):0.0}\" y1=\"30\" x2=\"{X(years):0.0}\" y2=\"410\" stroke=\"#d8d0bd\"/><text x=\"{X(years):0.0}\" y=\"430\" text-anchor=\"middle\" fill=\"#3b3a36\">{years}</text>\n");
        }

        foreach (var share in new[] { 0.01, 0.03, 0.1, 0.3, 1.0, 3.0 })
        {
            var isGoal = share == 1.0;
            svg.Append(CultureInfo.InvariantCulture, $"<line x1=\"80\" y1=\"{Y(share):0.0}\" x2=\"560\" y2=\"{Y(share):0.0}\" stroke=\"{(isGoal ? "#3b3a36" : "#d8d0bd")}\"/><text x=\"72\" y=\"{Y(share) + 5:0.0}\" text-anchor=\"end\" fill=\"#3b3a36\">{(isGoal ? "goal" : $"{share * 100:0} %")}</text>\n");
        }

        var labels = new List<(double Y, string Text)>();
        foreach (var (words, colour, share) in Series)
        {
            var points = all.Select(m => (X: X(m.Years), Y: Y(share(m)))).ToArray();
            svg.Append(CultureInfo.InvariantCulture, $"<polyline points=\"{string.Join(' ', points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:0.0},{p.Y:0.0}")))}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"2.2\"/>\n");
            foreach (var (x, y) in points)
            {
                svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{x:0.0}\" cy=\"{y:0.0}\" r=\"3.2\" fill=\"{colour}\"/>\n");
            }

            labels.Add((points[^1].Y + 5.0, $"fill=\"{colour}\">{words}</text>\n"));
        }

        // From the top down, none over another.
        var least = 0.0;
        foreach (var (y, text) in labels.OrderBy(l => l.Y))
        {
            least = Math.Max(least, y);
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"572\" y=\"{least:0.0}\" {text}");
            least += 18;
        }

        return svg.Append("<text x=\"320\" y=\"455\" text-anchor=\"middle\" fill=\"#3b3a36\">years in the book</text>\n</svg>\n").ToString();
    }

    private static double X(double years) => 100.0 + (440.0 * Math.Log10(years));

    private static double Y(double share) => 60.0 + (138.0 * (Math.Log10(3.0) - Math.Log10(Math.Max(share, 0.009))));
}
