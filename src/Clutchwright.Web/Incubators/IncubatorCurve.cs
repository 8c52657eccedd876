using System.Globalization;
using System.Net;
using System.Text;
using Clutchwright.Desk.Incubators;
using Clutchwright.Web.Words;

namespace Clutchwright.Web.Incubators;

/// <summary>One figure of an incubator over time as a drawing, with its limits.</summary>
internal static class IncubatorCurve
{
    private const double Width = 360;
    private const double Height = 190;
    private const double Left = 42;
    private const double Right = 350;
    private const double Top = 12;
    private const double Bottom = 160;
    private const int MostPlaces = 300;

    /// <summary>Draws it.</summary>
    /// <param name="curve">In the unit it is to be shown in.</param>
    /// <param name="zone">The time zone of this place.</param>
    /// <param name="id">For its title.</param>
    /// <param name="title">What it shows.</param>
    public static string Of(Curve curve, TimeZoneInfo zone, string id, string title)
    {
        var (first, last) = (curve.Points[0].At, curve.Points[^1].At);
        if (last - first < TimeSpan.FromHours(2))
        {
            (first, last) = (first.AddHours(-1), last.AddHours(1));
        }

        var figures = Figures(curve);
        var x = new ChartScale(0.0, (last - first).TotalMinutes, Left, Right);
        var y = new ChartScale(figures[0], figures[^1], Bottom, Top);
        var svg = new StringBuilder();
        Add(svg, $"<svg class=\"time-chart\" viewBox=\"0 0 {ChartScale.N(Width)} {ChartScale.N(Height)}\" role=\"img\" aria-labelledby=\"{id}\"><title id=\"{id}\">{WebUtility.HtmlEncode(title)}</title>");
        foreach (var figure in figures)
        {
            var at = y.At(figure);
            Add(svg, $"<path class=\"rule\" d=\"M{ChartScale.N(Left)} {ChartScale.N(at)}H{ChartScale.N(Right)}\"/><text class=\"end\" x=\"{ChartScale.N(Left - 5)}\" y=\"{ChartScale.N(at + 4)}\">{figure.ToString("0.##", CultureInfo.CurrentCulture)}</text>");
        }

        foreach (var (at, words) in ChartScale.Times(TimeZoneInfo.ConvertTimeFromUtc(first, zone), TimeZoneInfo.ConvertTimeFromUtc(last, zone)))
        {
            var place = x.At((at - TimeZoneInfo.ConvertTimeFromUtc(first, zone)).TotalMinutes);
            Add(svg, $"<path class=\"tick\" d=\"M{ChartScale.N(place)} {ChartScale.N(Bottom)}v4\"/><text class=\"middle\" x=\"{ChartScale.N(Math.Clamp(place, Left + 8, Right - 14))}\" y=\"{ChartScale.N(Bottom + 17)}\">{WebUtility.HtmlEncode(words)}</text>");
        }

        foreach (var limit in new[] { curve.Lowest, curve.Highest }.OfType<double>())
        {
            Add(svg, $"<path class=\"limit\" d=\"M{ChartScale.N(Left)} {ChartScale.N(y.At(limit))}H{ChartScale.N(Right)}\"/>");
        }

        foreach (var run in Runs(curve.Points))
        {
            var places = Thin(run).Select(p => $"{ChartScale.N(x.At((p.At - first).TotalMinutes))} {ChartScale.N(y.At(p.Value))}").ToArray();
            Add(svg, $"<path class=\"line\" d=\"M{string.Join('L', places)}\"/>");
        }

        var isFew = curve.Points.Count <= 60;
        foreach (var point in curve.Points.Where(p => isFew))
        {
            var isOutside = point.Value < curve.Lowest || point.Value > curve.Highest;
            Add(svg, $"<circle class=\"{(isOutside ? "point outside" : "point")}\" cx=\"{ChartScale.N(x.At((point.At - first).TotalMinutes))}\" cy=\"{ChartScale.N(y.At(point.Value))}\" r=\"{(isOutside ? 3.5 : 2.2)}\"/>");
        }

        return svg.Append("</svg>").ToString();
    }

    private static IReadOnlyList<double> Figures(Curve curve)
    {
        double[] all = [curve.Least, curve.Most, .. new[] { curve.Lowest, curve.Highest }.OfType<double>()];
        var (least, most) = (all.Min(), all.Max());
        return most - least < 1.0 ? ChartScale.Round(least - 0.5, most + 0.5, 4) : ChartScale.Round(least, most, 4);
    }

    /// <summary>The stretches without a silence too long to draw a line over.</summary>
    private static IEnumerable<IReadOnlyList<CurvePoint>> Runs(IReadOnlyList<CurvePoint> points)
    {
        var run = new List<CurvePoint>();
        foreach (var point in points)
        {
            if (run.Count > 0 && point.At - run[^1].At > Curve.LongestStep)
            {
                yield return run;
                run = [];
            }

            run.Add(point);
        }

        yield return run;
    }

    /// <summary>Of so many readings that no screen shows them apart, the least and the most of each place.</summary>
    private static IEnumerable<CurvePoint> Thin(IReadOnlyList<CurvePoint> run) => run.Count <= 2 * MostPlaces
        ? run
        : run.Chunk((run.Count + MostPlaces - 1) / MostPlaces)
            .SelectMany(part => new[] { part.MinBy(p => p.Value), part.MaxBy(p => p.Value) }.OrderBy(p => p.At));

    private static void Add(StringBuilder svg, FormattableString markup) => svg.Append(markup.ToString(CultureInfo.InvariantCulture));
}
