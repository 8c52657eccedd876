using Clutchwright.Sheets.Codes;
using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Papers;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Sheets.Pages;

/// <summary>Sets a sheet of text on pages.</summary>
public static class PageSetter
{
    private const double P = PaperSize.PointsPerMm;
    private const double SideMm = 18;
    private const double TopMm = 16;
    private const double BottomMm = 20;
    private const double TitleSize = 20;
    private const double FootSize = 8;
    private const double CodeMm = 20;
    private const double Soft = 0.3;

    /// <summary>Sets the pages.</summary>
    /// <param name="document">The sheet.</param>
    /// <param name="paper">The page.</param>
    public static IReadOnlyList<PlacedPage> Set(SheetDocument document, PaperSize paper)
    {
        var missing = new List<string>();
        var (width, bottom) = ((paper.WidthMm - (2 * SideMm)) * P, (paper.HeightMm - BottomMm) * P);
        var setter = new StripSetter(width, bottom - (TopMm * P) - 60, missing);
        var strips = document.Blocks.SelectMany(setter.Of).ToList();
        var (head, below) = Head(document, width, missing);
        if (PrintableText.Note(missing) is { } note)
        {
            strips.AddRange(setter.Of(new SheetBlock.Paragraph([new(note)], IsSmall: true)));
        }

        var pages = new List<List<PlacedPart>> { head };
        var down = below;
        for (var i = 0; i < strips.Count; i++)
        {
            // Strips that stand with the next one move over together with it.
            var last = i;
            while (last < strips.Count - 1 && strips[last].IsWithNext)
            {
                last++;
            }

            var needed = strips.Skip(i).Take(last - i + 1).Sum(s => s.Above + s.Height);
            var isNew = pages[^1].Count == 0;
            if (!isNew && down + needed > bottom && (pages.Count > 1 || down > below || needed < bottom - (TopMm * P)))
            {
                pages.Add([]);
                (down, isNew) = (TopMm * P, true);
            }

            for (; i <= last; i++)
            {
                var strip = strips[i];
                if (isNew && strip.Again is { } again)
                {
                    Place(pages[^1], again, down);
                    down += again.Height;
                }

                down += isNew ? 0 : strip.Above;
                Place(pages[^1], strip, down);
                down += strip.Height;
                isNew = false;
            }

            i = last;
        }

        var foot = PrintableText.Of(document.Foot);
        return [.. pages.Select((parts, i) => new PlacedPage(paper, [.. parts, Foot(foot, $"page {i + 1} of {pages.Count}", paper, width)]))];
    }

    private static void Place(List<PlacedPart> page, Strip strip, double down)
    {
        const double Left = SideMm * P;
        if (strip.Ornaments.Count > 0)
        {
            page.Add(new(PartKind.Ornament, [.. strip.Ornaments.Select(m => m.Moved(Left, down))]));
        }

        var (marks, parts) = (strip.Marks.Select(m => m.Moved(Left, down)), strip.Parts.Select(p => p.Moved(Left, down)));
        var before = page.FindLastIndex(p => p.Kind != PartKind.Ornament);
        if (before >= 0 && page[before] is GroupPart known && ReferenceEquals(known.Group, strip.Group))
        {
            page[before] = known with { Marks = [.. known.Marks, .. marks], Parts = [.. known.Parts, .. parts] };
            return;
        }

        page.Add(new GroupPart(strip.Kind, [.. marks], strip.Group) { Parts = [.. parts], Words = strip.Words });
    }

    private static (List<PlacedPart> Parts, double Below) Head(SheetDocument document, double width, List<string> missing)
    {
        var parts = new List<PlacedPart>();
        var (left, down, room) = (SideMm * P, TopMm * P, width);
        var code = document.Code is { } text ? QrMatrix.Of(text, isSmallest: false) : null;
        if (code is not null)
        {
            var module = CodeMm * P / code.Size;
            room = width - (CodeMm * P) - (QrMatrix.QuietZone * module);
            parts.Add(new(PartKind.Figure, [new Mark.Code(left + width - (CodeMm * P), down, module, code)]) { Words = "QR code of this animal" });
        }

        var (title, below) = Lines([new(document.Title, TextStyle.Bold)], TitleSize, 0);
        parts.Add(new(PartKind.Title, title));
        if (document.Subtitle.Length > 0)
        {
            var (subtitle, end) = Lines([new(document.Subtitle)], 10, Soft);
            parts.Add(new(PartKind.Paragraph, subtitle));
            below = end;
        }

        return (parts, Math.Max(below, code is null ? 0 : (TopMm + CodeMm) * P) + 4);

        (List<Mark> Marks, double End) Lines(IReadOnlyList<TextRun> runs, double size, double shade)
        {
            var marks = new List<Mark>();
            foreach (var line in TextSetter.Set([.. runs.Select(r => r with { Text = PrintableText.Of(r.Text, missing) })], size, room))
            {
                marks.AddRange(line.Pieces.Select(p => new Mark.Text(left + p.X, down + (size * 0.95), size, p.Style, p.Text, shade)));
                down += size * 1.3;
            }

            return (marks, down);
        }
    }

    private static PlacedPart Foot(string foot, string number, PaperSize paper, double width)
    {
        var (left, baseline) = (SideMm * P, (paper.HeightMm - 11) * P);
        var wide = TextSetter.Width([new(number)], FootSize);
        var lines = TextSetter.Set([new(foot)], FootSize, width - wide - 12);
        return new(PartKind.Ornament,
        [
            new Mark.Path(Paths.Lines(false, (left, baseline - 11), (left + width, baseline - 11))) { Stroke = 0.7, Thickness = 0.4 },
            .. lines.Take(2).SelectMany((l, i) => l.Pieces.Select(p => new Mark.Text(left + p.X, baseline + (i * 9.5), FootSize, p.Style, p.Text, Soft))),
            new Mark.Text(left + width - wide, baseline, FootSize, TextStyle.Plain, number, Soft),
        ]);
    }

    private sealed record GroupPart(PartKind Kind, IReadOnlyList<Mark> Marks, object Group) : PlacedPart(Kind, Marks);
}
