using Clutchwright.Desk.Words;

namespace Clutchwright.Cli.Words;

/// <summary>How warnings are set on a page: gravest first, with grade and source.</summary>
internal static class WarningWords
{
    public static void Warnings(this Page page, IReadOnlyList<Warning> warnings)
    {
        if (warnings.Count == 0)
        {
            return;
        }

        // A source is often that of several warnings: each is named once, by number.
        var sources = warnings.SelectMany(w => w.Sources).Distinct(StringComparer.Ordinal).ToList();
        page.Heading("Warnings");
        page.Points(warnings
            .OrderByDescending(w => Rank(w.Severity))
            .Select(w => $"{w.Severity}: {w.Text}{Grounds(w, w.Sources.Select(s => $"source {sources.IndexOf(s) + 1}"))}"));
        page.Sources(sources);
    }

    /// <summary>Adds numbered sources.</summary>
    public static void Sources(this Page page, IReadOnlyList<string> sources)
    {
        for (var i = 0; i < sources.Count; i++)
        {
            page.Line(Page.Plain($"source {i + 1}: {sources[i]}"));
        }
    }

    /// <summary>One warning in a line, without its sources.</summary>
    public static string Short(Warning warning) => $"{warning.Severity}: {warning.Text}{Grounds(warning, [])}";

    private static string Grounds(Warning warning, IEnumerable<string> sources)
    {
        var grounds = string.Join(", ", new[] { warning.Grade }.OfType<string>().Concat(sources));
        return grounds.Length == 0 ? string.Empty : $" [{grounds}]";
    }

    private static int Rank(string severity) => severity switch { "lethal" => 3, "suffering" => 2, "watch" => 1, _ => 0 };
}
