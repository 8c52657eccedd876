using System.Collections.Frozen;

namespace Clutchwright.Web.Kin;

/// <summary>How the parts of a chart are drawn.</summary>
internal abstract class ChartPen
{
    /// <summary>What stands at the root of the SVG.</summary>
    public abstract string Root { get; }

    /// <summary>Whether animals are links.</summary>
    public abstract bool IsLinked { get; }

    /// <summary>What lies below everything.</summary>
    public abstract string Ground(string width, string height);

    /// <summary>The attributes of a part.</summary>
    public abstract string Of(string use);

    /// <summary>The style sheet of the page says how.</summary>
    internal sealed class OfThePage : ChartPen
    {
        public override string Root => "class=\"pedigree-drawing\"";

        public override bool IsLinked => true;

        public override string Ground(string width, string height) => string.Empty;

        public override string Of(string use) => $"class=\"{use}\"";
    }

    /// <summary>Black on white, said at every part, since a file has no style sheet by it.</summary>
    internal sealed class OfAFile : ChartPen
    {
        private const string Serif = "font-family=\"Source Serif 4, Georgia, serif\" text-anchor=\"middle\"";
        private const string Sans = "font-family=\"Source Sans 3, Helvetica, Arial, sans-serif\"";

        private static readonly FrozenDictionary<string, string> Parts = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["line"] = "fill=\"none\" stroke=\"#000\" stroke-width=\"1.2\"",
            ["possible"] = "stroke-dasharray=\"5 4\"",
            ["kin"] = "fill=\"none\" stroke=\"#000\" stroke-width=\"4.8\"",
            ["between"] = "fill=\"none\" stroke=\"#fff\" stroke-width=\"2.4\"",
            ["again"] = "fill=\"none\" stroke=\"#666\" stroke-width=\"1\" stroke-dasharray=\"1 4\" stroke-linecap=\"round\"",
            ["paper"] = "fill=\"#fff\"",
            ["filled"] = "fill=\"#000\"",
            ["outline"] = "fill=\"none\" stroke=\"#000\" stroke-width=\"1.4\"",
            ["asked"] = "stroke-width=\"2.6\"",
            ["away"] = "opacity=\"0.55\"",
            ["twice"] = "stroke-dasharray=\"2 2.5\"",
            ["unknown"] = "fill=\"#fff\" stroke=\"#666\"",
            ["arrow"] = "fill=\"none\" stroke=\"#000\" stroke-width=\"1.6\"",
            ["more"] = "fill=\"none\" stroke=\"#666\" stroke-width=\"1.2\"",
            ["tag"] = $"{Sans} text-anchor=\"middle\" font-size=\"12\" font-weight=\"650\"",
            ["name"] = $"{Serif} font-size=\"12\"",
            ["seen"] = $"{Serif} font-size=\"12\" font-weight=\"650\"",
            ["carried"] = $"{Serif} font-size=\"11.5\" font-style=\"italic\"",
            ["count"] = $"{Sans} text-anchor=\"middle\" font-size=\"12\"",
            ["query"] = $"{Sans} text-anchor=\"middle\" font-size=\"11\"",
            ["beyond"] = $"{Sans} font-size=\"11\"",
        }.ToFrozenDictionary(StringComparer.Ordinal);

        public override string Root => "fill=\"#000\"";

        public override bool IsLinked => false;

        public override string Ground(string width, string height) => $"<rect width=\"{width}\" height=\"{height}\" fill=\"#fff\"/>";

        // A later word takes the place of what an earlier one said.
        public override string Of(string use)
        {
            var words = use.Split(' ').Select(u => Parts[u]).ToArray();
            return words.Length == 1 ? words[0] : string.Join(' ', words
                .SelectMany(w => w.Split("\" ", StringSplitOptions.RemoveEmptyEntries))
                .Select(w => w.TrimEnd('"') + "\"")
                .GroupBy(w => w.Split('=')[0], StringComparer.Ordinal)
                .Select(g => g.Last()));
        }
    }
}
