using System.Globalization;
using System.Net;
using System.Text;
using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Papers;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Web.Sheets;

/// <summary>Draws placed marks for the screen, in points: what the file holds, at the same places.</summary>
internal static class PageSvg
{
    /// <summary>A page; always black on white.</summary>
    public static string Of(PlacedPage page, string name)
    {
        var (width, height) = (page.Paper.WidthMm * PaperSize.PointsPerMm, page.Paper.HeightMm * PaperSize.PointsPerMm);
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"paper\" width=\"{N(page.Paper.WidthMm)}mm\" height=\"{N(page.Paper.HeightMm)}mm\" viewBox=\"0 0 {N(width)} {N(height)}\" role=\"img\" aria-label=\"{E(name)}\">");
        svg.Append(CultureInfo.InvariantCulture, $"<rect width=\"{N(width)}\" height=\"{N(height)}\" fill=\"#fff\"/>");
        foreach (var part in page.Parts)
        {
            Part(svg, part);
        }

        return svg.Append("</svg>").ToString();
    }

    /// <summary>A drawing.</summary>
    public static string Of(SheetDrawing drawing)
    {
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"paper\" width=\"{N(drawing.Width)}pt\" height=\"{N(drawing.Height)}pt\" viewBox=\"0 0 {N(drawing.Width)} {N(drawing.Height)}\" role=\"img\" aria-label=\"{E(drawing.Words)}\">");
        svg.Append(CultureInfo.InvariantCulture, $"<rect width=\"{N(drawing.Width)}\" height=\"{N(drawing.Height)}\" fill=\"#fff\"/>");
        foreach (var mark in drawing.Marks)
        {
            Draw(svg, mark);
        }

        return svg.Append("</svg>").ToString();
    }

    /// <summary>All text of a page, in reading order.</summary>
    public static string Text(PlacedPage page) => string.Join(' ', page.Parts.SelectMany(p => p.Marks).OfType<Mark.Text>().Select(t => t.Words));

    private static void Part(StringBuilder svg, PlacedPart part)
    {
        foreach (var mark in part.Marks)
        {
            Draw(svg, mark);
        }

        foreach (var inner in part.Parts)
        {
            Part(svg, inner);
        }
    }

    private static void Draw(StringBuilder svg, Mark mark)
    {
        switch (mark)
        {
            case Mark.Text text:
                var style = text.Style switch { TextStyle.Bold => " font-weight=\"700\"", TextStyle.Italic => " font-style=\"italic\"", _ => string.Empty };
                svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{N(text.X)}\" y=\"{N(text.Baseline)}\" font-size=\"{N(text.Size)}\" fill=\"{Shade(text.Shade)}\"{style} xml:space=\"preserve\">{E(text.Words)}</text>");
                break;
            case Mark.Path path:
                var stroke = path.Stroke is { } shade ? $" stroke=\"{Shade(shade)}\" stroke-width=\"{N(path.Thickness)}\"" : string.Empty;
                var dashes = path.Dashes is var (dash, gap) ? $" stroke-dasharray=\"{N(dash)} {N(gap)}\"{(path.IsRound ? " stroke-linecap=\"round\"" : string.Empty)}" : string.Empty;
                svg.Append(CultureInfo.InvariantCulture, $"<path d=\"{Steps(path.Steps)}\" fill=\"{(path.Fill is { } fill ? Shade(fill) : "none")}\"{stroke}{dashes}/>");
                break;
            case Mark.Code code:
                var modules = string.Concat(code.Matrix.Runs().Select(r =>
                    $"M{N(code.X + (r.X * code.Module))} {N(code.Y + (r.Y * code.Module))}h{N(r.Length * code.Module)}v{N(code.Module)}h-{N(r.Length * code.Module)}z"));
                svg.Append(CultureInfo.InvariantCulture, $"<path d=\"{modules}\" fill=\"#000\" shape-rendering=\"crispEdges\"/>");
                break;
            case Mark.Photo photo:
                svg.Append(CultureInfo.InvariantCulture, $"<image x=\"{N(photo.X)}\" y=\"{N(photo.Y)}\" width=\"{N(photo.Width)}\" height=\"{N(photo.Height)}\" href=\"data:image/jpeg;base64,{Convert.ToBase64String(photo.Jpeg.Span)}\"/>");
                break;
        }
    }

    private static string Steps(IReadOnlyList<PathStep> steps) => string.Concat(steps.Select(s => s.Move switch
    {
        PathMove.Start => $"M{N(s.X)} {N(s.Y)}",
        PathMove.Line => $"L{N(s.X)} {N(s.Y)}",
        PathMove.Curve => $"C{N(s.First.X)} {N(s.First.Y)} {N(s.Second.X)} {N(s.Second.Y)} {N(s.X)} {N(s.Y)}",
        _ => "Z",
    }));

    private static string Shade(double shade)
    {
        var level = (int)Math.Round(Math.Clamp(shade, 0, 1) * 255);
        return $"#{level:x2}{level:x2}{level:x2}";
    }

    private static string N(double number) => number.ToString("0.###", CultureInfo.InvariantCulture);

    private static string E(string text) => WebUtility.HtmlEncode(text);
}
