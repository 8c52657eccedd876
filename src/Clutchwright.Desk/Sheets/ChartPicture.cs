using System.Globalization;
using Clutchwright.Desk.Charts;
using Clutchwright.Genetics.Loci;
using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Fonts;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Desk.Sheets;

/// <summary>Draws a pedigree for paper: the same strokes and symbols as on the screen, black on white.</summary>
internal sealed class ChartPicture
{
    // CSS pixels to points.
    private const double Point = 0.75;
    private const double Thin = 1.2;
    private const double Faint = 0.45;
    private const double LabelLine = 13.5;
    private const double ArrowLength = 13;

    private readonly ChartAnswer _chart;
    private readonly List<Mark> _marks = [];

    private ChartPicture(ChartAnswer chart) => _chart = chart;

    private double Half => _chart.SymbolSize / 2;

    public static SheetDrawing Of(ChartAnswer chart, string words)
    {
        var picture = new ChartPicture(chart);
        foreach (var stroke in chart.Strokes)
        {
            picture.Stroke(stroke);
        }

        foreach (var symbol in chart.Symbols)
        {
            picture.Symbol(symbol);
        }

        return new(chart.Width * Point, chart.Height * Point, picture._marks, words);
    }

    private void Stroke(ChartStroke stroke)
    {
        if (stroke.Use == StrokeUse.Again)
        {
            var p = stroke.Points;
            Path([new(PathMove.Start, p[0].X, p[0].Y), Paths.Curve((p[1].X, p[1].Y), (p[2].X, p[2].Y), (p[3].X, p[3].Y))], 1, 0.4, dashes: (1, 4), isRound: true);
            return;
        }

        var steps = Paths.Lines(isClosed: false, [.. stroke.Points.Select(p => (p.X, p.Y))]);
        (double, double)? dashes = stroke.IsDashed ? (5, 4) : null;
        if (stroke.IsDouble)
        {
            // One broad line with a white one on top of it leaves two.
            Path(steps, 4 * Thin, 0, dashes: dashes);
            Path(steps, 2 * Thin, 1);
        }
        else
        {
            Path(steps, Thin, 0, dashes: dashes);
        }
    }

    private void Symbol(ChartSymbolLine symbol)
    {
        if (symbol.Tag is null && symbol.Meaning != SymbolMeaning.SeveralYoung)
        {
            Path(Paths.Circle(symbol.X, symbol.Y, 8), 1, 0.4, fill: 1);
            Centred("?", 11, TextStyle.Plain, symbol.X, symbol.Y + 4.2);
            return;
        }

        Outline(symbol);
        if (symbol.Meaning == SymbolMeaning.SeveralYoung)
        {
            Centred(symbol.Young.ToString(CultureInfo.InvariantCulture), 12, TextStyle.Plain, symbol.X, symbol.Y + 4.2);
            return;
        }

        if (symbol.IsAskedAbout)
        {
            var (x, y) = (symbol.X - Half - 4, symbol.Y + 7);
            Path(Paths.Lines(isClosed: false, (x - ArrowLength, y + ArrowLength), (x, y)), 1.6, 0);
            Path(Paths.Lines(isClosed: false, (x - 7, y + 1), (x, y), (x - 1, y + 7)), 1.6, 0);
        }

        if (symbol.HasMoreParents)
        {
            var top = symbol.Y - Half;
            Path(Paths.Lines(isClosed: false, (symbol.X, top), (symbol.X, top - 11)), Thin, 0.4);
            Path(Paths.Lines(isClosed: false, (symbol.X - 4, top - 7), (symbol.X, top - 11), (symbol.X + 4, top - 7)), Thin, 0.4);
        }

        if (symbol.MoreYoung > 0)
        {
            Text($"+{symbol.MoreYoung.ToString(CultureInfo.InvariantCulture)}", 11, TextStyle.Plain, symbol.X + Half + 5, symbol.Y + Half + 1);
        }

        for (var i = 0; i < symbol.Label.Count; i++)
        {
            var line = symbol.Label[i];
            var (size, style) = line.Style switch
            {
                LabelStyle.Tag or LabelStyle.Seen => (12.0, TextStyle.Bold),
                LabelStyle.Carried => (11.5, TextStyle.Italic),
                _ => (12.0, TextStyle.Plain),
            };
            Centred(line.Text, size, style, symbol.X, symbol.Y + Half + 14.5 + (i * LabelLine));
        }
    }

    private void Outline(ChartSymbolLine symbol)
    {
        var shape = Shape(symbol);
        var away = symbol.Meaning == SymbolMeaning.Animal && !symbol.IsHere;
        Path(shape, null, 0, fill: 1);
        var band = 2 * Half / Math.Max(1, symbol.Filled.Count);
        for (var i = 0; i < symbol.Filled.Count; i++)
        {
            if (symbol.Filled[i] > 0)
            {
                var corners = BandOutline.Of(symbol.Sex, symbol.X, symbol.Y, Half, (i * band) - Half, ((i + 1) * band) - Half, symbol.Filled[i]);
                Path(Paths.Lines(isClosed: true, [.. corners.Select(c => (c.X, c.Y))]), null, 0, fill: away ? Faint : 0);
            }
        }

        Path(shape, symbol.IsAskedAbout ? 2.6 : 1.4, away ? Faint : 0, dashes: symbol.Meaning == SymbolMeaning.Again ? (2, 2.5) : null);
        if (symbol.IsDead)
        {
            Path(Paths.Lines(isClosed: false, (symbol.X - Half - 4, symbol.Y + Half + 4), (symbol.X + Half + 4, symbol.Y - Half - 4)), Thin, 0);
        }
    }

    private IReadOnlyList<PathStep> Shape(ChartSymbolLine symbol) => (symbol.Meaning == SymbolMeaning.SeveralYoung ? null : symbol.Sex) switch
    {
        Sex.Male => Paths.Box(symbol.X - Half, symbol.Y - Half, 2 * Half, 2 * Half),
        Sex.Female => Paths.Circle(symbol.X, symbol.Y, Half),
        _ => Paths.Lines(isClosed: true, (symbol.X, symbol.Y - Half), (symbol.X + Half, symbol.Y), (symbol.X, symbol.Y + Half), (symbol.X - Half, symbol.Y)),
    };

    private void Path(IReadOnlyList<PathStep> steps, double? thickness, double shade, double? fill = null, (double Dash, double Gap)? dashes = null, bool isRound = false) =>
        _marks.Add(new Mark.Path(steps) { Stroke = thickness is null ? null : shade, Thickness = thickness ?? 0, Fill = fill, Dashes = dashes, IsRound = isRound }.Scaled(Point));

    private void Centred(string text, double size, TextStyle style, double x, double y) =>
        Text(text, size, style, x - (SheetFonts.Of(style).Width(PrintableText.Of(text), size) / 2), y);

    private void Text(string text, double size, TextStyle style, double x, double y) => _marks.Add(new Mark.Text(x * Point, y * Point, size * Point, style, text));
}
