using System.Globalization;
using System.Text;
using System.Net;
using Clutchwright.Desk.Condition;
using Clutchwright.Web.Words;

namespace Clutchwright.Web.Condition;

/// <summary>The masses of an animal over time as a drawing, with meals, refusals, sheds and eggs below.</summary>
internal static class MassCurve
{
    private const double Width = 360;
    private const double Height = 244;
    private const double Left = 44;
    private const double Right = 350;
    private const double Top = 12;
    private const double Bottom = 158;
    private const double Meals = 194;
    private const double Sheds = 213;
    private const double Eggs = 231;

    /// <summary>Draws it.</summary>
    /// <param name="answer">The animal.</param>
    /// <param name="from">The first day that is shown.</param>
    public static string Of(ConditionAnswer answer, DateOnly from)
    {
        Weighing[] weighings = [.. answer.Weighings.Where(w => w.Day >= from)];
        CareMark[] marks = [.. answer.Marks.Where(m => m.Day >= from)];
        var to = answer.Today;
        var days = Math.Max(14, to.DayNumber - from.DayNumber);
        var x = new ChartScale(0.0, days, Left, Right);
        var svg = new StringBuilder();
        Add(svg, $"<svg class=\"time-chart\" viewBox=\"0 0 {N(Width)} {N(Height)}\" role=\"img\" aria-labelledby=\"mass-title\"><title id=\"mass-title\">{WebUtility.HtmlEncode($"Masses of {answer.Tag} over time, with meals, refusals, sheds and eggs; the figures stand in the table below")}</title>");
        foreach (var (at, words) in ChartScale.Times(from.ToDateTime(default), to.ToDateTime(default)))
        {
            var place = x.At((at - from.ToDateTime(default)).TotalDays);
            Add(svg, $"<path class=\"rule\" d=\"M{N(place)} {N(Top)}V{N(Bottom)}\"/><text class=\"middle\" x=\"{N(Math.Clamp(place, Left + 10, Right - 14))}\" y=\"{N(Bottom + 15)}\">{WebUtility.HtmlEncode(words)}</text>");
        }

        if (weighings.Length > 0)
        {
            AddMasses(svg, answer, weighings, w => x.At(w.DayNumber - from.DayNumber));
        }

        Add(svg, $"<text class=\"end\" x=\"{N(Left - 5)}\" y=\"{N(Meals + 4)}\">meals</text><text class=\"end\" x=\"{N(Left - 5)}\" y=\"{N(Sheds + 4)}\">sheds</text>");
        Add(svg, $"<path class=\"rule\" d=\"M{N(Left)} {N(Meals + 9)}H{N(Right)}M{N(Left)} {N(Sheds + 8)}H{N(Right)}\"/>");
        var hasEggs = Array.Exists(marks, m => m.What == "laid");
        if (hasEggs)
        {
            Add(svg, $"<text class=\"end\" x=\"{N(Left - 5)}\" y=\"{N(Eggs + 4)}\">eggs</text>");
        }

        foreach (var mark in marks)
        {
            var at = N(x.At(mark.Day.DayNumber - from.DayNumber));
            svg.Append(mark.What switch
            {
                "meal" => $"<path class=\"meal\" d=\"M{at} {N(Meals - 6)}v12\"/>",
                "refused" => $"<circle class=\"refused\" cx=\"{at}\" cy=\"{N(Meals)}\" r=\"3\"/>",
                "shed" => $"<path class=\"shed\" d=\"M{at} {N(Sheds - 5)}l4 5l-4 5l-4 -5z\"/>",
                _ => $"<ellipse class=\"laid\" cx=\"{at}\" cy=\"{N(Eggs)}\" rx=\"3.6\" ry=\"5\"/>",
            });
        }

        return svg.Append("</svg>").ToString();
    }

    private static void AddMasses(StringBuilder svg, ConditionAnswer answer, Weighing[] weighings, Func<DateOnly, double> x)
    {
        var (least, most) = (weighings.Min(w => w.Grams), weighings.Max(w => w.Grams));
        var aim = answer.Aim is { IsReached: false } known && known.LeastGrams <= most * 1.6 ? known.LeastGrams : (double?)null;
        most = Math.Max(most, aim ?? most);
        var room = Math.Max(most * 0.04, (most - least) * 0.1);
        var figures = ChartScale.Round(Math.Max(0.0, least - room), most + room, 4);
        var y = new ChartScale(figures[0], figures[^1], Bottom, Top);
        foreach (var figure in figures)
        {
            Add(svg, $"<path class=\"rule\" d=\"M{N(Left)} {N(y.At(figure))}H{N(Right)}\"/><text class=\"end\" x=\"{N(Left - 5)}\" y=\"{N(y.At(figure) + 4)}\">{figure.ToString("N0", CultureInfo.CurrentCulture)}</text>");
        }

        Add(svg, $"<text class=\"end\" x=\"{N(Left - 5)}\" y=\"{N(Bottom + 15)}\">g</text>");
        if (aim is { } grams)
        {
            Add(svg, $"<path class=\"aim\" d=\"M{N(Left)} {N(y.At(grams))}H{N(Right)}\"/>");
        }

        if (weighings.Length > 1)
        {
            Add(svg, $"<path class=\"line\" d=\"M{string.Join('L', weighings.Select(w => $"{N(x(w.Day))} {N(y.At(w.Grams))}"))}\"/>");
        }

        foreach (var weighing in weighings)
        {
            Add(svg, $"<circle class=\"point\" cx=\"{N(x(weighing.Day))}\" cy=\"{N(y.At(weighing.Grams))}\" r=\"{(weighings.Length > 80 ? 1.6 : 2.6)}\"/>");
        }
    }

    private static string N(double number) => ChartScale.N(number);

    private static void Add(StringBuilder svg, FormattableString markup) => svg.Append(markup.ToString(CultureInfo.InvariantCulture));
}
