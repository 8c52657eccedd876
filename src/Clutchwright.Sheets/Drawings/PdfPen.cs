using Clutchwright.Sheets.Fonts;
using Clutchwright.Sheets.Texts;
using PdfSharp.Drawing;

namespace Clutchwright.Sheets.Drawings;

/// <summary>Draws marks on a page of a PDF.</summary>
internal sealed class PdfPen(XGraphics graphics)
{
    private readonly Dictionary<(TextStyle Style, double Size), XFont> _fonts = [];

    public void Draw(Mark mark)
    {
        switch (mark)
        {
            case Mark.Text text when text.Words.Length > 0:
                graphics.DrawString(text.Words, Font(text.Style, text.Size), new XSolidBrush(Shade(text.Shade)), text.X, text.Baseline, XStringFormats.BaseLineLeft);
                break;
            case Mark.Path path:
                Draw(path);
                break;
            case Mark.Code code:
                foreach (var (x, y, length) in code.Matrix.Runs())
                {
                    graphics.DrawRectangle(XBrushes.Black, code.X + (x * code.Module), code.Y + (y * code.Module), length * code.Module, code.Module);
                }

                break;
            case Mark.Photo photo:
                using (var file = new MemoryStream(photo.Jpeg.ToArray()))
                using (var image = XImage.FromStream(file))
                {
                    graphics.DrawImage(image, photo.X, photo.Y, photo.Width, photo.Height);
                }

                break;
        }
    }

    /// <summary>The rectangle around marks.</summary>
    public static (double X, double Y, double Width, double Height) Bounds(IReadOnlyList<Mark> marks)
    {
        var spots = marks.SelectMany(Spots).ToArray();
        if (spots.Length == 0)
        {
            return (0, 0, 0, 0);
        }

        var (left, top) = (spots.Min(s => s.X), spots.Min(s => s.Y));
        return (left, top, spots.Max(s => s.X) - left, spots.Max(s => s.Y) - top);
    }

    private static IEnumerable<(double X, double Y)> Spots(Mark mark) => mark switch
    {
        Mark.Text text => [(text.X, text.Baseline - text.Size), (text.X + SheetFonts.Of(text.Style).Width(text.Words, text.Size), text.Baseline)],
        Mark.Path path => path.Steps.Where(s => s.Move != PathMove.Close).Select(s => (s.X, s.Y)),
        Mark.Code code => [(code.X, code.Y), (code.X + (code.Module * code.Matrix.Size), code.Y + (code.Module * code.Matrix.Size))],
        Mark.Photo photo => [(photo.X, photo.Y), (photo.X + photo.Width, photo.Y + photo.Height)],
        _ => [],
    };

    private void Draw(Mark.Path mark)
    {
        var path = new XGraphicsPath { FillMode = XFillMode.Winding };
        var at = (X: 0.0, Y: 0.0);
        foreach (var step in mark.Steps)
        {
            switch (step.Move)
            {
                case PathMove.Start:
                    path.StartFigure();
                    break;
                case PathMove.Line:
                    path.AddLine(at.X, at.Y, step.X, step.Y);
                    break;
                case PathMove.Curve:
                    path.AddBezier(at.X, at.Y, step.First.X, step.First.Y, step.Second.X, step.Second.Y, step.X, step.Y);
                    break;
                case PathMove.Close:
                    path.CloseFigure();
                    break;
            }

            at = step.Move == PathMove.Close ? at : (step.X, step.Y);
        }

        if (mark.Fill is { } fill)
        {
            graphics.DrawPath(new XSolidBrush(Shade(fill)), path);
        }

        if (mark.Stroke is { } stroke)
        {
            var pen = new XPen(Shade(stroke), mark.Thickness);
            if (mark.Dashes is var (dash, gap))
            {
                pen.DashPattern = [dash / mark.Thickness, gap / mark.Thickness];
                pen.LineCap = mark.IsRound ? XLineCap.Round : XLineCap.Flat;
            }

            graphics.DrawPath(pen, path);
        }
    }

    private XFont Font(TextStyle style, double size)
    {
        if (!_fonts.TryGetValue((style, size), out var font))
        {
            _fonts.Add((style, size), font = SheetFonts.Font(style, size));
        }

        return font;
    }

    private static XColor Shade(double shade) => XColor.FromGrayScale(shade);
}
