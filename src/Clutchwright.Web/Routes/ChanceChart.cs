using System.Globalization;
using System.Net;
using System.Text;
using Clutchwright.Desk.Routes;

namespace Clutchwright.Web.Routes;

/// <summary>The chance by season as a drawing: the route followed to the letter as a line, the programme planned anew with its band.</summary>
internal static class ChanceChart
{
    private const double Width = 360;
    private const double Height = 214;
    private const double Left = 40;
    private const double Right = 346;
    private const double Top = 12;
    private const double Bottom = 182;

    public static string Of(RouteWords route, ProgrammeOutlook? outlook)
    {
        var seasons = route.ChanceBySeason.Count;
        var svg = new StringBuilder();
        Add(svg, $"<svg class=\"chance-chart\" viewBox=\"0 0 {N(Width)} {N(Height)}\" role=\"img\" aria-labelledby=\"chance-title\"><title id=\"chance-title\">Chance by season; the figures stand in the table below</title>");
        for (var tenth = 0; tenth <= 10; tenth += 5)
        {
            var y = Y(tenth / 10.0);
            Add(svg, $"<path class=\"rule\" d=\"M{N(Left)} {N(y)}H{N(Right)}\"/><text class=\"end\" x=\"{N(Left - 6)}\" y=\"{N(y + 4)}\">{WebUtility.HtmlEncode(RouteText.Percent(tenth / 10.0))}</text>");
        }

        var every = seasons > 12 ? 2 : 1;
        for (var season = every; season <= seasons; season += every)
        {
            Add(svg, $"<text class=\"middle\" x=\"{N(X(season, seasons))}\" y=\"{N(Bottom + 15)}\">{season}</text>");
        }

        Add(svg, $"<text class=\"end\" x=\"{N(Right)}\" y=\"{N(Bottom + 29)}\">season</text>");
        if (outlook is not null)
        {
            var places = Enumerable.Range(0, outlook.ChanceBySeason.Count).ToArray();
            var above = places.Select(i => Point(i, seasons, outlook.ChanceBySeason[i] + outlook.StandardErrors[i]));
            var below = places.Reverse().Select(i => Point(i, seasons, outlook.ChanceBySeason[i] - outlook.StandardErrors[i]));
            Add(svg, $"<polygon class=\"band\" points=\"{string.Join(' ', above.Concat(below))}\"/>");
            Add(svg, $"<polyline class=\"anew\" points=\"{string.Join(' ', places.Select(i => Point(i, seasons, outlook.ChanceBySeason[i])))}\"/>");
        }

        Add(svg, $"<polyline class=\"letter\" points=\"{string.Join(' ', Enumerable.Range(0, seasons + 1).Select(i => Point(i, seasons, i == 0 ? 0.0 : route.ChanceBySeason[i - 1])))}\"/>");
        return svg.Append("</svg>").ToString();
    }

    private static string Point(int season, int seasons, double chance) => $"{N(X(season, seasons))},{N(Y(Math.Clamp(chance, 0.0, 1.0)))}";

    private static double X(int season, int seasons) => Left + ((Right - Left) * season / seasons);

    private static double Y(double chance) => Bottom - ((Bottom - Top) * chance);

    private static void Add(StringBuilder svg, FormattableString markup) => svg.Append(markup.ToString(CultureInfo.InvariantCulture));

    private static string N(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
