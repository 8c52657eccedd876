using System.Globalization;
using System.Net;
using System.Text;
using Clutchwright.Desk.Charts;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Web.Kin;

/// <summary>Writes a chart as SVG.</summary>
/// <remarks>On a page the pen is the style sheet's, so that a chart is light, dark or printed as the page is, and every animal is a link.
/// A file holds its own pen, black on white, and no link.</remarks>
internal sealed class ChartSvg
{
    private const double ArrowLength = 13;

    private readonly ChartAnswer _chart;
    private readonly ChartPen _pen;
    private readonly StringBuilder _svg = new();

    private ChartSvg(ChartAnswer chart, ChartPen pen)
    {
        _chart = chart;
        _pen = pen;
    }

    private double Half => _chart.SymbolSize / 2;

    /// <summary>The chart for a page.</summary>
    public static string ForPage(ChartAnswer chart) => new ChartSvg(chart, new ChartPen.OfThePage()).Write();

    /// <summary>The chart as a file of its own.</summary>
    public static string ForFile(ChartAnswer chart) => new ChartSvg(chart, new ChartPen.OfAFile()).Write();

    /// <summary>A symbol for the key of a page.</summary>
    public static string Sample(Sex? sex, params double[] filled)
    {
        var line = new ChartSymbolLine(SymbolMeaning.Animal, 12, 12) { Sex = sex, Filled = filled };
        var chart = new ChartAnswer(null, null, 24, 24, 20, 24, [], [], [], [], [], 0);
        var svg = new ChartSvg(chart, new ChartPen.OfThePage());
        svg._svg.Append("<svg class=\"pedigree-sample\" width=\"24\" height=\"24\" viewBox=\"0 0 24 24\" aria-hidden=\"true\" focusable=\"false\">");
        svg.Outline(line);
        return svg._svg.Append("</svg>").ToString();
    }

    private string Write()
    {
        var (width, height) = (N(_chart.Width), N(_chart.Height));
        _svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" {_pen.Root} width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\" role=\"group\" aria-labelledby=\"chart-title chart-desc\">");
        _svg.Append(CultureInfo.InvariantCulture, $"<title id=\"chart-title\">{E(ChartText.Title(_chart))}</title><desc id=\"chart-desc\">{E(ChartText.Description(_chart))}</desc>");
        _svg.Append(_pen.Ground(width, height));
        foreach (var stroke in _chart.Strokes)
        {
            Stroke(stroke);
        }

        foreach (var symbol in _chart.Symbols)
        {
            Symbol(symbol);
        }

        return _svg.Append("</svg>").ToString();
    }

    private void Stroke(ChartStroke stroke)
    {
        var path = new StringBuilder();
        for (var i = 0; i < stroke.Points.Count; i++)
        {
            var before = i == 0 ? "M" : stroke.Use == StrokeUse.Again ? (i == 1 ? "C" : " ") : "L";
            path.Append(CultureInfo.InvariantCulture, $"{before}{N(stroke.Points[i].X)} {N(stroke.Points[i].Y)}");
        }

        var use = stroke.Use == StrokeUse.Again ? "again" : stroke.IsDashed ? "line possible" : "line";
        if (stroke.IsDouble)
        {
            // One broad line with the ground's colour on top of it leaves two.
            _svg.Append(CultureInfo.InvariantCulture, $"<path {_pen.Of(stroke.IsDashed ? "kin possible" : "kin")} d=\"{path}\"/><path {_pen.Of("between")} d=\"{path}\"/>");
        }
        else
        {
            _svg.Append(CultureInfo.InvariantCulture, $"<path {_pen.Of(use)} d=\"{path}\"/>");
        }
    }

    private void Symbol(ChartSymbolLine symbol)
    {
        if (symbol.Tag is { } tag)
        {
            More(symbol, tag);
            var opened = _pen.IsLinked;
            _svg.Append(opened
                ? $"<a class=\"who{(symbol.IsAskedAbout ? " asked" : "")}{(symbol.IsHere ? "" : " away")}\" href=\"{E(Links.Animal(tag))}\">"
                : "<g>");
            _svg.Append(CultureInfo.InvariantCulture, $"<title>{E(symbol.Description)}</title>");
            if (opened)
            {
                _svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"reach\" x=\"{N(symbol.X - (_chart.LabelWidth / 2))}\" y=\"{N(symbol.Y - Half - 3)}\" width=\"{N(_chart.LabelWidth)}\" height=\"{N(_chart.SymbolSize + 8 + (symbol.Label.Count * 13.5))}\" rx=\"2\"/>");
            }

            Outline(symbol);
            if (symbol.IsAskedAbout)
            {
                Arrow(symbol);
            }

            Label(symbol);
            _svg.Append(opened ? "</a>" : "</g>");
            return;
        }

        _svg.Append(CultureInfo.InvariantCulture, $"<g role=\"img\" aria-label=\"{E(symbol.Description)}\"><title>{E(symbol.Description)}</title>");
        if (symbol.Meaning == SymbolMeaning.SeveralYoung)
        {
            Outline(symbol);
            Text("count", symbol.X, symbol.Y + 4.2, symbol.Young.ToString(CultureInfo.InvariantCulture));
        }
        else
        {
            _svg.Append(CultureInfo.InvariantCulture, $"<circle {_pen.Of("unknown")} cx=\"{N(symbol.X)}\" cy=\"{N(symbol.Y)}\" r=\"8\"/>");
            Text("query", symbol.X, symbol.Y + 4.2, "?");
        }

        _svg.Append("</g>");
    }

    private void Outline(ChartSymbolLine symbol)
    {
        var away = symbol.Meaning == SymbolMeaning.Again ? " twice" : symbol.IsHere ? string.Empty : " away";
        _svg.Append(CultureInfo.InvariantCulture, $"<path {_pen.Of("paper")} d=\"{Shape(symbol, Half)}\"/>");
        var band = 2 * Half / Math.Max(1, symbol.Filled.Count);
        for (var i = 0; i < symbol.Filled.Count; i++)
        {
            if (symbol.Filled[i] > 0)
            {
                _svg.Append(CultureInfo.InvariantCulture, $"<path {_pen.Of("filled" + away)} d=\"{BandShape.Of(symbol.Sex, symbol.X, symbol.Y, Half, (i * band) - Half, ((i + 1) * band) - Half, symbol.Filled[i])}\"/>");
            }
        }

        _svg.Append(CultureInfo.InvariantCulture, $"<path {_pen.Of((symbol.IsAskedAbout ? "outline asked" : "outline") + away)} d=\"{Shape(symbol, Half)}\"/>");
        if (symbol.IsDead)
        {
            _svg.Append(CultureInfo.InvariantCulture, $"<path {_pen.Of("line")} d=\"M{N(symbol.X - Half - 4)} {N(symbol.Y + Half + 4)}L{N(symbol.X + Half + 4)} {N(symbol.Y - Half - 4)}\"/>");
        }
    }

    private static string Shape(ChartSymbolLine symbol, double half)
    {
        var (x, y) = (symbol.X, symbol.Y);
        return (symbol.Meaning == SymbolMeaning.SeveralYoung ? null : symbol.Sex) switch
        {
            Sex.Male => $"M{N(x - half)} {N(y - half)}H{N(x + half)}V{N(y + half)}H{N(x - half)}Z",
            Sex.Female => $"M{N(x - half)} {N(y)}A{N(half)} {N(half)} 0 1 1 {N(x + half)} {N(y)}A{N(half)} {N(half)} 0 1 1 {N(x - half)} {N(y)}Z",
            _ => $"M{N(x)} {N(y - half)}L{N(x + half)} {N(y)}L{N(x)} {N(y + half)}L{N(x - half)} {N(y)}Z",
        };
    }

    private void Arrow(ChartSymbolLine symbol)
    {
        var (x, y) = (symbol.X - Half - 4, symbol.Y + 7);
        _svg.Append(CultureInfo.InvariantCulture, $"<path {_pen.Of("arrow")} d=\"M{N(x - ArrowLength)} {N(y + ArrowLength)}L{N(x)} {N(y)}M{N(x - 7)} {N(y + 1)}L{N(x)} {N(y)}L{N(x - 1)} {N(y + 7)}\"/>");
    }

    // What lies beyond the chart: above its parents, below its young. Each leads to the chart around the animal.
    private void More(ChartSymbolLine symbol, string tag)
    {
        if (symbol.HasMoreParents)
        {
            Beyond($"Chart of {tag}, with its parents", () => _svg.Append(CultureInfo.InvariantCulture, $"<path {_pen.Of("more")} d=\"M{N(symbol.X)} {N(symbol.Y - Half)}v-11m-4 4l4 -4l4 4\"/>"), symbol.X - 12, symbol.Y - Half - 19);
        }

        if (symbol.MoreYoung > 0)
        {
            Beyond($"Chart of {tag}, with {symbol.MoreYoung} more young", () => Text("beyond", symbol.X + Half + 5, symbol.Y + Half + 1, $"+{symbol.MoreYoung.ToString(CultureInfo.InvariantCulture)}"), symbol.X + Half, symbol.Y + 2);
        }

        void Beyond(string words, Action draw, double left, double top)
        {
            if (_pen.IsLinked)
            {
                _svg.Append(CultureInfo.InvariantCulture, $"<a class=\"beyond\" href=\"{E(Links.Kin(tag))}\"><title>{E(words)}</title><rect class=\"reach\" x=\"{N(left)}\" y=\"{N(top)}\" width=\"24\" height=\"19\"/>");
            }

            draw();
            _svg.Append(_pen.IsLinked ? "</a>" : string.Empty);
        }
    }

    private void Label(ChartSymbolLine symbol)
    {
        for (var i = 0; i < symbol.Label.Count; i++)
        {
            var line = symbol.Label[i];
            var use = line.Style switch
            {
                LabelStyle.Tag => "tag",
                LabelStyle.Name => "name",
                LabelStyle.Seen => "seen",
                LabelStyle.Carried => "carried",
            };
            Text(use, symbol.X, symbol.Y + Half + 14.5 + (i * 13.5), line.Text);
        }
    }

    private void Text(string use, double x, double y, string text) =>
        _svg.Append(CultureInfo.InvariantCulture, $"<text {_pen.Of(use)} x=\"{N(x)}\" y=\"{N(y)}\">{E(text)}</text>");

    private static string N(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    private static string E(string text) => WebUtility.HtmlEncode(text);
}
