using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Charts;

/// <summary>Sets the label of a symbol in lines of a given width.</summary>
internal static class ChartLabel
{
    /// <summary>The height of a line in CSS pixels; the faces set the text for it.</summary>
    public const double LineHeight = 13.5;

    // What is rarer is told in words beside the drawing.
    private const double LeastChance = 0.01;
    private const int MostSeen = 3;
    private const int MostCarried = 3;

    /// <param name="tag">The keeper's id of the animal.</param>
    /// <param name="name">Its name, if any.</param>
    /// <param name="words">Its genotype as believed.</param>
    /// <param name="marked">The genes that the chart marks: of what is carried only these are told; none: all.</param>
    /// <param name="width">The room, in CSS pixels.</param>
    public static IReadOnlyList<LabelLine> Of(string tag, string? name, AnimalWords words, IReadOnlyList<string> marked, double width)
    {
        var lines = new List<LabelLine> { new(Cut(tag, width), LabelStyle.Tag) };
        if (!string.IsNullOrEmpty(name))
        {
            lines.Add(new(Cut(name, width), LabelStyle.Name));
        }

        Add(LabelStyle.Seen, MostSeen, words.Parts.Where(p => p.IsSeen).Select(p => p.Text));
        var carried = words.Parts.Where(p => !p.IsSeen && p.Chance?.Value is not < LeastChance && (marked.Count == 0 || marked.Contains(p.GeneId))).Select(p => p.Text).ToArray();
        Add(LabelStyle.Carried, MostCarried, carried.Select((text, i) => i < carried.Length - 1 ? text + "," : text));
        return lines;

        void Add(LabelStyle style, int most, IEnumerable<string> all)
        {
            var set = Wrap(all, width);
            for (var i = 0; i < set.Count && i < most; i++)
            {
                lines.Add(new(i == most - 1 && set.Count > most ? Cut(set[i] + " …", width, mustCut: true) : Cut(set[i], width), style));
            }
        }
    }

    // What belongs together stays on one line where it can.
    private static List<string> Wrap(IEnumerable<string> parts, double width)
    {
        var lines = new List<string>();
        foreach (var part in parts)
        {
            var pieces = Width(part) <= width ? [part] : part.Split(' ');
            for (var i = 0; i < pieces.Length; i++)
            {
                var piece = pieces[i];
                if (lines.Count > 0 && (i > 0 || pieces.Length == 1) && Width($"{lines[^1]} {piece}") <= width)
                {
                    lines[^1] = $"{lines[^1]} {piece}";
                }
                else
                {
                    lines.Add(piece);
                }
            }
        }

        return lines;
    }

    private static string Cut(string text, double width, bool mustCut = false)
    {
        if (Width(text) <= width)
        {
            return text;
        }

        var kept = mustCut ? text[..^2] : text;
        while (kept.Length > 1 && Width(kept + "…") > width)
        {
            kept = kept[..^1];
        }

        return kept.TrimEnd(' ', ',') + "…";
    }

    // The widths of the app's two typefaces at 12 CSS pixels, roughly and on the wide side.
    private static double Width(string text) => text.Sum(c => c switch
    {
        'i' or 'l' or 'j' or 't' or 'f' or 'r' or 'I' or ' ' or '.' or ',' or '\'' or '-' => 3.9,
        'm' or 'w' or 'M' or 'W' or '%' or '…' => 10.2,
        >= 'A' and <= 'Z' => 7.4,
        _ => 6.2,
    });
}
