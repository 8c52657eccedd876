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

        page.Heading("Warnings");
        page.Points(warnings.OrderByDescending(w => Rank(w.Severity)).Select(Of));
    }

    /// <summary>One warning in a line.</summary>
    public static string Of(Warning warning)
    {
        var grounds = (warning.Grade, warning.Sources.Count) switch
        {
            (null, 0) => string.Empty,
            (null, _) => $" [{string.Join("; ", warning.Sources)}]",
            (_, 0) => $" [{warning.Grade}]",
            _ => $" [{warning.Grade}: {string.Join("; ", warning.Sources)}]",
        };
        return $"{warning.Severity}: {warning.Text}{grounds}";
    }

    private static int Rank(string severity) => severity switch { "lethal" => 3, "suffering" => 2, "watch" => 1, _ => 0 };
}
