using Clutchwright.Sheets.Codes;
using Clutchwright.Sheets.Fonts;
using Clutchwright.Sheets.Papers;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Sheets.Labels;

/// <summary>Finds the largest text with which all of a label fits; if none does, leaves out what matters least, and says so.</summary>
public static class LabelFitter
{
    /// <summary>The narrowest and lowest label, in millimetres.</summary>
    public const double LeastSideMm = 10.0;

    /// <summary>The smallest text, in points.</summary>
    public const double LeastSize = 5.5;

    /// <summary>The narrowest module of a QR code that readers find on paper, in millimetres.</summary>
    public const double LeastModuleMm = 0.3;

    // Fewer words are better than small ones, down to this size.
    private const double LeastWholeSize = 7.0;
    private const double MostSize = 11.0;
    private const double MostModuleMm = 0.6;
    private const double TagTimes = 1.75;
    private const double LineHeight = 1.2;
    private const double AboveBaseline = 0.92;
    private const double Step = 0.25;

    /// <summary>Fits a label.</summary>
    /// <param name="label">What it is to say.</param>
    /// <param name="widthMm">Its width, at least <see cref="LeastSideMm"/>.</param>
    /// <param name="heightMm">Its height, at least <see cref="LeastSideMm"/>.</param>
    public static PlacedLabel Fit(TubLabel label, double widthMm, double heightMm)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(widthMm, LeastSideMm);
        ArgumentOutOfRangeException.ThrowIfLessThan(heightMm, LeastSideMm);
        var missing = new List<string>();
        var tag = PrintableText.Of(label.Tag, missing);
        var entries = label.Entries
            .Where(e => e.Runs.Any(r => !string.IsNullOrWhiteSpace(r.Text)))
            .Select(e => e with { Runs = Printable(e.Runs), Shorter = e.Shorter is { } shorter ? Printable(shorter) : null })
            .ToList();
        IReadOnlyList<TextRun> Printable(IReadOnlyList<TextRun> runs) => [.. runs.Select(r => r with { Text = PrintableText.Of(r.Text, missing) })];
        var leftOut = new List<string>();
        var edge = Math.Clamp(Math.Min(widthMm, heightMm) * 0.06, 0.9, 2.0);
        var room = new Room(edge, edge, widthMm - (2 * edge), heightMm - (2 * edge));
        var (code, codeText, side) = CodeFor(label, room);
        if (label.Codes.Count > 0 && code is null)
        {
            leftOut.Add("QR code");
        }

        // Beside a code on a broad label, above it on a high one.
        var isBroad = widthMm >= heightMm;
        var texts = code is null ? room
            : isBroad ? room with { Width = room.Width - side - edge }
            : room with { Height = room.Height - side - edge };
        var placed = Set(tag, entries, leftOut, texts);
        var quiet = code is null ? 0 : side / (code.Size + (2.0 * QrMatrix.QuietZone)) * QrMatrix.QuietZone;
        return new(tag, widthMm, heightMm, placed, leftOut)
        {
            Code = code,
            CodeText = codeText,
            ModuleMm = code is null ? 0 : quiet / QrMatrix.QuietZone,
            CodeAtMm = isBroad
                ? (widthMm - edge - side + quiet, ((heightMm - side) / 2) + quiet)
                : (((widthMm - side) / 2) + quiet, heightMm - edge - side + quiet),
            Missing = missing,
        };
    }

    // As large as it may be without taking the room that the tag needs; no code rather than one that cannot be read.
    private static (QrMatrix? Code, string? Text, double Side) CodeFor(TubLabel label, Room room)
    {
        var (most, across) = room.Width >= room.Height ? (room.Height, room.Width * 0.45) : (room.Width, room.Height * 0.45);
        foreach (var text in label.Codes)
        {
            foreach (var isSmallest in new[] { false, true })
            {
                if (QrMatrix.Of(text, isSmallest) is { } matrix)
                {
                    var modules = matrix.Size + (2.0 * QrMatrix.QuietZone);
                    var least = modules * LeastModuleMm;
                    var side = Math.Min(Math.Min(most, across), modules * MostModuleMm);
                    if (side >= least)
                    {
                        // Room for text goes before a large code.
                        return (matrix, text, Math.Max(least, Math.Min(side, across * 0.8)));
                    }
                }
            }
        }

        return (null, null, 0);
    }

    private static List<LabelPiece> Set(string tag, List<LabelEntry> entries, List<string> leftOut, Room room)
    {
        while (true)
        {
            var least = entries.Exists(e => e.Shorter is not null) ? LeastWholeSize : LeastSize;
            for (var size = MostSize; size >= least - 1e-9; size -= Step)
            {
                if (TrySet(tag, entries, leftOut.Count > 0 && entries.Count > 0, size, room) is { } pieces)
                {
                    return pieces;
                }
            }

            // In fewer words before anything goes.
            if (entries.Exists(e => e.Shorter is not null))
            {
                entries = entries.ConvertAll(e => e with { Runs = e.Shorter ?? e.Runs, Shorter = null });
                continue;
            }

            if (entries.Count == 0)
            {
                return TagAlone(tag, leftOut, room);
            }

            var last = entries.Select((e, i) => (e, i)).OrderBy(e => e.e.Importance).ThenByDescending(e => e.i).First().e;
            entries.Remove(last);
            leftOut.Add(last.Name);
        }
    }

    private static List<LabelPiece>? TrySet(string tag, List<LabelEntry> entries, bool isCut, double size, Room room)
    {
        var (width, height) = (room.Width * PaperSize.PointsPerMm, room.Height * PaperSize.PointsPerMm);
        var bold = SheetFonts.Of(TextStyle.Bold);

        // The tag is the largest, on one line.
        var tagSize = Math.Min(size * TagTimes, width / Math.Max(1e-9, bold.Width(tag, 1.0)));
        if (tagSize < size)
        {
            return null;
        }

        var pieces = new List<LabelPiece>();
        var down = 0.0;
        Line(SetLine.Of([(tag, TextStyle.Bold)], tagSize), tagSize);
        for (var i = 0; i < entries.Count; i++)
        {
            IReadOnlyList<TextRun> runs = isCut && i == entries.Count - 1 ? [.. entries[i].Runs, new TextRun(" …")] : entries[i].Runs;
            foreach (var line in TextSetter.Set(runs, size, width))
            {
                Line(line, size);
            }
        }

        return down <= height + 1e-6 ? pieces : null;

        void Line(SetLine line, double lineSize)
        {
            var baseline = room.Top + ((down + (lineSize * AboveBaseline)) / PaperSize.PointsPerMm);
            pieces.AddRange(line.Pieces.Select((p, i) =>
                new LabelPiece(room.Left + (p.X / PaperSize.PointsPerMm), baseline, lineSize, p.Style, p.Text, i == 0)));
            down += lineSize * LineHeight;
        }
    }

    // Nothing but the tag has room, and that perhaps only in part.
    private static List<LabelPiece> TagAlone(string tag, List<string> leftOut, Room room)
    {
        var (width, height) = (room.Width * PaperSize.PointsPerMm, room.Height * PaperSize.PointsPerMm);
        var lines = TextSetter.Set([new(tag, TextStyle.Bold)], LeastSize, width);
        var fit = Math.Max(1, (int)(height / (LeastSize * LineHeight)));
        if (lines.Count > fit)
        {
            leftOut.Add("the end of the tag");
        }

        return [.. lines.Take(fit).SelectMany((line, row) => line.Pieces.Select((p, i) => new LabelPiece(
            room.Left + (p.X / PaperSize.PointsPerMm), room.Top + (((row * LineHeight) + AboveBaseline) * LeastSize / PaperSize.PointsPerMm), LeastSize, p.Style, p.Text, i == 0)))];
    }

    private readonly record struct Room(double Left, double Top, double Width, double Height);
}
