using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Sheets.Pages;

/// <summary>Takes the blocks of a sheet apart into strips of a width.</summary>
internal sealed class StripSetter(double width, double most, List<string> missing)
{
    private const double Size = 10.0;
    private const double SmallSize = 8.5;
    private const double LeadSize = 13.0;
    private const double LineHeight = 1.32;
    private const double AboveBaseline = 1.0;
    private const double NameShare = 0.27;
    private const double Pad = 3.0;
    private const double Soft = 0.3;

    public IEnumerable<Strip> Of(SheetBlock block) => block switch
    {
        SheetBlock.Heading heading => Heading(heading.Text),
        SheetBlock.Paragraph p => Text(PartKind.Paragraph, p.Runs, p.IsSmall ? SmallSize : p.IsLead ? LeadSize : Size, 0, 5),
        SheetBlock.Facts facts => Facts(facts.Lines),
        SheetBlock.Table table => Table(table),
        SheetBlock.Points points => points.Items.SelectMany(Point),
        SheetBlock.Note note => Note(note),
        SheetBlock.Signatures signatures => Signatures(signatures.Names),
        SheetBlock.Eggs eggs => Eggs(eggs),
        SheetBlock.Drawing drawing => [Drawing(drawing.Picture)],
        SheetBlock.Photo photo => Photo(photo.Picture),
        _ => [],
    };

    public IReadOnlyList<TextRun> Printable(IReadOnlyList<TextRun> runs) =>
        [.. runs.Select(r => r with { Text = string.Join('\n', r.Text.Split('\n').Select(t => PrintableText.Of(t, missing))) })];

    private IEnumerable<Strip> Heading(string text)
    {
        var group = new object();
        var lines = TextSetter.Set(Printable([new(text, TextStyle.Bold)]), 12, width);
        return lines.Select((line, i) => new Strip(PartKind.Heading, group, 12 * 1.35, Marks(line, 12, 0, 12))
        {
            Above = i == 0 ? 13 : 0,
            IsWithNext = true,
            Ornaments = i < lines.Count - 1 ? [] : [new Mark.Path(Paths.Lines(false, (0, 12 * 1.35), (width, 12 * 1.35))) { Stroke = 0.6, Thickness = 0.5 }],
        });
    }

    private IEnumerable<Strip> Text(PartKind kind, IReadOnlyList<TextRun> runs, double size, double indent, double above)
    {
        var group = new object();
        return TextSetter.Set(Printable(runs), size, width - indent).Select((line, i) =>
            new Strip(kind, group, size * LineHeight, Marks(line, size, indent, size * AboveBaseline)) { Above = i == 0 ? above : 0 });
    }

    private IEnumerable<Strip> Point(IReadOnlyList<TextRun> runs)
    {
        const double Indent = 10;
        return Text(PartKind.Paragraph, runs, Size, Indent, 2.5).Select((s, i) => i > 0 ? s : s with
        {
            Ornaments = [new Mark.Path(Paths.Circle(3, Size * 0.68, 1.3)) { Fill = 0.2 }],
        });
    }

    private IEnumerable<Strip> Facts(IReadOnlyList<SheetFact> facts)
    {
        var (group, name) = (new object(), width * NameShare);
        var isFirst = true;
        foreach (var fact in facts)
        {
            var names = TextSetter.Set(Printable([new(fact.Name)]), SmallSize, name - 8);
            var lines = fact.Runs is { } runs ? TextSetter.Set(Printable(runs), Size, width - name) : [];
            foreach (var (part, i) in Chunks(Math.Max(1, Math.Max(names.Count, lines.Count))).Select((p, i) => (p, i)))
            {
                var left = Cell(PartKind.HeaderCell, names, part, SmallSize, 0, shade: Soft);
                var right = Cell(PartKind.Cell, lines, part, Size, name);
                yield return new Strip(PartKind.Table, group, ((part.End.Value - part.Start.Value) * Size * LineHeight) + (fact.Runs is null ? 5 : 1.5), [])
                {
                    Parts = [new(PartKind.Row, []) { Parts = [left, right] }],
                    Above = isFirst ? 5 : 0,
                    Ornaments = fact.Runs is null && i == 0 ? [new Mark.Path(Paths.Lines(false, (name, Size * 1.45), (width, Size * 1.45))) { Stroke = 0.45, Thickness = 0.5 }] : [],
                };
                isFirst = false;
            }
        }
    }

    private IEnumerable<Strip> Table(SheetBlock.Table table)
    {
        var group = new object();
        var all = table.Columns.Sum(c => c.Share);
        var widths = table.Columns.Select(c => width * c.Share / all).ToArray();
        var lefts = widths.Select((_, i) => widths.Take(i).Sum()).ToArray();
        var head = RowOf(PartKind.HeaderCell, [.. table.Columns.Select(c => (IReadOnlyList<TextRun>)[new(c.Head)])], SmallSize, isHead: true).Single();
        yield return head with { Above = 5, IsWithNext = true };
        foreach (var strip in table.Rows.SelectMany(r => RowOf(PartKind.Cell, r, Size - 0.5, isHead: false)))
        {
            yield return strip with { Again = head };
        }

        IEnumerable<Strip> RowOf(PartKind kind, IReadOnlyList<IReadOnlyList<TextRun>> cells, double size, bool isHead)
        {
            var set = cells.Select((c, i) => TextSetter.Set(Printable(c), size, widths[i] - 6)).ToArray();
            foreach (var part in Chunks(Math.Max(1, set.Max(s => s.Count))))
            {
                var height = ((part.End.Value - part.Start.Value) * size * LineHeight) + Pad;
                yield return new Strip(PartKind.Table, group, height, [])
                {
                    Parts = [new(PartKind.Row, []) { Parts = [.. set.Select((s, i) => Cell(kind, s, part, size, lefts[i], isHead ? Soft : 0))] }],
                    Ornaments = [new Mark.Path(Paths.Lines(false, (0, height - 0.5), (width, height - 0.5))) { Stroke = isHead ? 0.4 : 0.8, Thickness = 0.4 }],
                };
            }
        }
    }

    private IEnumerable<Strip> Note(SheetBlock.Note note)
    {
        const double Indent = 9;
        IReadOnlyList<TextRun> runs = [new(note.Title + " ", TextStyle.Bold), .. note.Runs];
        return Text(PartKind.Paragraph, runs, Size, Indent, 7).Select(s => s with
        {
            Ornaments = [new Mark.Path(Paths.Lines(false, (2, 0), (2, s.Height))) { Stroke = 0, Thickness = 1.6 }],
        });
    }

    private IEnumerable<Strip> Signatures(IReadOnlyList<string> names)
    {
        const double Height = 46;
        var (group, each) = (new object(), (width - (16 * (names.Count - 1))) / names.Count);
        yield return new Strip(PartKind.Paragraph, group, Height, [.. names.SelectMany((n, i) =>
            TextSetter.Set(Printable([new(n)]), SmallSize, each).Take(1).SelectMany(l => Marks(l, SmallSize, i * (each + 16), Height - 2, Soft)))])
        {
            Above = 6,
            Ornaments = [.. names.Select((_, i) => new Mark.Path(Paths.Lines(false, (i * (each + 16), Height - 12), ((i * (each + 16)) + each, Height - 12))) { Stroke = 0, Thickness = 0.5 })],
        };
    }

    private IEnumerable<Strip> Eggs(SheetBlock.Eggs eggs)
    {
        const double Egg = 10;
        var perRow = Math.Max(1, (int)((width * 0.5) / (Egg + 1.5)));
        var rows = (eggs.Count + perRow - 1) / perRow;
        var share = width * 0.5;
        var lines = TextSetter.Set(Printable(eggs.Words), Size, width - share - 8);
        var height = Math.Max(rows * Egg * 1.3, lines.Count * Size * LineHeight) + 4;
        var marks = Enumerable.Range(0, eggs.Count).Select(i => (Mark)new Mark.Path(Paths.Egg((i % perRow) * (Egg + 1.5), i / perRow * Egg * 1.3, Egg))
        {
            Stroke = 0.2, Thickness = 0.6, Fill = i < eggs.Filled ? 0.2 : null,
        });
        yield return new Strip(PartKind.Paragraph, new object(), height, [.. lines.SelectMany((l, i) => Marks(l, Size, share + 8, (i * Size * LineHeight) + Size))])
        {
            Above = 3,
            Ornaments = [.. marks],
        };
    }

    // As large as the page lets it be, and never larger than it is.
    private Strip Drawing(SheetDrawing drawing)
    {
        var by = Math.Min(1.0, Math.Min(width / drawing.Width, most / drawing.Height));
        var left = (width - (drawing.Width * by)) / 2;
        return new(PartKind.Figure, new object(), drawing.Height * by, [.. drawing.Marks.Select(m => Scaled(m, by).Moved(left, 0))]) { Above = 8, Words = drawing.Words };
    }

    // In a frame of a third of a page at most, with its words below.
    private IEnumerable<Strip> Photo(SheetPhoto photo)
    {
        var by = Math.Min(width * 0.55 / photo.Width, most / 3.0 / photo.Height);
        var (wide, high) = (photo.Width * by, photo.Height * by);
        yield return new(PartKind.Figure, new object(), high, [new Mark.Photo(0, 0, wide, high, photo.Jpeg)]) { Above = 8, Words = photo.Words, IsWithNext = true };
        foreach (var line in Text(PartKind.Paragraph, [new(photo.Words)], SmallSize, 0, 2))
        {
            yield return line;
        }
    }

    private Mark Scaled(Mark mark, double by) => mark switch
    {
        Mark.Text t => t with { X = t.X * by, Baseline = t.Baseline * by, Size = t.Size * by, Words = PrintableText.Of(t.Words, missing) },
        Mark.Path p => p.Scaled(by),
        _ => mark,
    };

    // A row with more lines than half a page has room for goes on over several strips.
    private IEnumerable<Range> Chunks(int lines)
    {
        var fit = Math.Max(4, (int)(most / 2 / (Size * LineHeight)));
        for (var from = 0; from < lines; from += fit)
        {
            yield return from..Math.Min(lines, from + fit);
        }
    }

    private static PlacedPart Cell(PartKind kind, IReadOnlyList<SetLine> lines, Range part, double size, double left, double shade = 0) => new(
        kind,
        [.. lines.Skip(part.Start.Value).Take(part.End.Value - part.Start.Value).SelectMany((l, i) => Marks(l, size, left, (i * size * LineHeight) + Size, shade))]);

    private static Mark[] Marks(SetLine line, double size, double left, double baseline, double shade = 0) =>
        [.. line.Pieces.Select(p => new Mark.Text(left + p.X, baseline, size, p.Style, p.Text, shade))];
}
