using System.Globalization;
using Clutchwright.Sheets.Fonts;

namespace Clutchwright.Sheets.Texts;

/// <summary>Breaks text into lines of a width. No line is wider than that; a word that is too long is broken.</summary>
public static class TextSetter
{
    private const double Slack = 1e-6;

    /// <summary>Sets text in lines.</summary>
    /// <param name="runs">The text; a line feed in it ends a line.</param>
    /// <param name="size">The font size.</param>
    /// <param name="width">The room, in the unit of <paramref name="size"/>; at least a letter wide.</param>
    public static IReadOnlyList<SetLine> Set(IReadOnlyList<TextRun> runs, double size, double width)
    {
        var lines = new List<SetLine>();
        var line = new List<(string Text, TextStyle Style)>();
        var used = 0.0;
        foreach (var word in Words(runs))
        {
            if (word.EndsLine)
            {
                Finish();
                continue;
            }

            Add(word);
        }

        Finish();
        while (lines.Count > 0 && lines[^1].Pieces.Count == 0)
        {
            lines.RemoveAt(lines.Count - 1);
        }

        return lines;

        void Add(Word word)
        {
            var wide = WidthOf(word, size);
            var space = word.HasSpace && line.Count > 0 ? SheetFonts.Of(word.SpaceStyle).Width(" ", size) : 0.0;
            if (used + space + wide <= width + Slack)
            {
                Take(word, space);
                return;
            }

            if (wide <= width + Slack && (word.HasSpace || line.Count == 0))
            {
                Finish();
                Take(word, 0.0);
                return;
            }

            // Too wide for any line: at its own spaces, or else at any letter.
            if (Loosened(word) is { } parts)
            {
                foreach (var part in parts)
                {
                    Add(part);
                }

                return;
            }

            if (line.Count > 0 && word.HasSpace)
            {
                Finish();
            }

            foreach (var (text, style) in word.Parts)
            {
                Letters(text, style);
            }
        }

        void Letters(string text, TextStyle style)
        {
            var letters = StringInfo.GetTextElementEnumerator(text);
            while (letters.MoveNext())
            {
                var letter = letters.GetTextElement();
                var wide = SheetFonts.Of(style).Width(letter, size);
                if (line.Count > 0 && used + wide > width + Slack)
                {
                    Finish();
                }

                line.Add((letter, style));
                used += wide;
            }
        }

        void Take(Word word, double space)
        {
            if (space > 0)
            {
                line.Add((" ", word.SpaceStyle));
            }

            line.AddRange(word.Parts);
            used += space + WidthOf(word, size);
        }

        void Finish()
        {
            lines.Add(SetLine.Of(line, size));
            line.Clear();
            used = 0.0;
        }
    }

    /// <summary>The width of text on one line.</summary>
    public static double Width(IEnumerable<TextRun> runs, double size) => runs.Sum(r => SheetFonts.Of(r.Style).Width(r.Text, size));

    private static double WidthOf(Word word, double size) => word.Parts.Sum(p => SheetFonts.Of(p.Style).Width(p.Text, size));

    private static List<Word> Words(IReadOnlyList<TextRun> runs)
    {
        var words = new List<Word>();
        var (hasSpace, spaceStyle, glue) = (false, TextStyle.Plain, false);
        foreach (var run in runs)
        {
            foreach (var (text, isSpace, isEnd) in run.IsKeptTogether ? Whole(run.Text) : Split(run.Text))
            {
                if (isEnd)
                {
                    words.Add(new([], false, run.Style, EndsLine: true));
                    (hasSpace, glue) = (false, false);
                }
                else if (isSpace)
                {
                    (hasSpace, spaceStyle, glue) = (true, run.Style, false);
                }
                else if (text.Length > 0)
                {
                    if (glue)
                    {
                        words[^1] = words[^1] with { Parts = [.. words[^1].Parts, (text, run.Style)] };
                    }
                    else
                    {
                        words.Add(new([(text, run.Style)], hasSpace, spaceStyle));
                    }

                    (hasSpace, glue) = (false, true);
                }
            }
        }

        return words;
    }

    // A word that was to be kept together, apart at its spaces; null: it has none.
    private static List<Word>? Loosened(Word word)
    {
        if (!word.Parts.Any(p => p.Text.Contains(' ', StringComparison.Ordinal)))
        {
            return null;
        }

        var parts = Words([.. word.Parts.Select(p => new TextRun(p.Text, p.Style))]);
        parts[0] = parts[0] with { HasSpace = word.HasSpace, SpaceStyle = word.SpaceStyle };
        return parts;
    }

    // The space around it is space nonetheless.
    private static IEnumerable<(string Text, bool IsSpace, bool IsEnd)> Whole(string text)
    {
        if (text.StartsWith(' '))
        {
            yield return (string.Empty, true, false);
        }

        yield return (text.Trim(' '), false, false);
        if (text.EndsWith(' '))
        {
            yield return (string.Empty, true, false);
        }
    }

    private static IEnumerable<(string Text, bool IsSpace, bool IsEnd)> Split(string text)
    {
        var from = 0;
        for (var i = 0; i <= text.Length; i++)
        {
            if (i < text.Length && text[i] is not (' ' or '\n'))
            {
                continue;
            }

            if (i > from)
            {
                yield return (text[from..i], false, false);
            }

            if (i < text.Length)
            {
                yield return (string.Empty, text[i] == ' ', text[i] == '\n');
            }

            from = i + 1;
        }
    }

    private sealed record Word(IReadOnlyList<(string Text, TextStyle Style)> Parts, bool HasSpace, TextStyle SpaceStyle, bool EndsLine = false);
}
