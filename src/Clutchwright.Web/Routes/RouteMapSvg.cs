using System.Globalization;
using System.Net;
using System.Text;
using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Web.Routes;

/// <summary>Writes the map of a route as SVG, drawn with the ink of the page.</summary>
internal sealed class RouteMapSvg
{
    private const int LongestLine = 25;
    private readonly RouteWords _route;
    private readonly string _want;
    private readonly RouteMap _map;
    private readonly StringBuilder _svg = new();

    private RouteMapSvg(RouteWords route, string want)
    {
        _route = route;
        _want = want;
        _map = RouteMap.Of(route);
    }

    public static string Of(RouteWords route, string want) => new RouteMapSvg(route, want).Write();

    private string Write()
    {
        var (width, height) = (N(_map.Width), N(_map.Height));
        Add($"<svg class=\"route-map\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\" role=\"group\" aria-labelledby=\"map-title map-desc\">");
        Add($"<title id=\"map-title\">Map of route {_route.Number} to {E(_want)}</title><desc id=\"map-desc\">Seasons from left to right. Each pairing leads to the young held back, and these to the next pairing. The same stands in words below the drawing.</desc>");
        for (var i = 0; i < _map.Seasons.Count; i++)
        {
            Text(RouteMap.XOf(i), 16, "season", $"Season {_map.Seasons[i]}");
            Add($"<path class=\"rule\" d=\"M{N(RouteMap.XOf(i))} 24h{N(RouteMap.CardWidth)}\"/>");
        }

        foreach (var kept in _map.Kept)
        {
            EdgesOf(kept);
        }

        foreach (var card in _map.Cards)
        {
            Card(card);
        }

        foreach (var kept in _map.Kept)
        {
            Kept(kept);
        }

        return _svg.Append("</svg>").ToString();
    }

    private void EdgesOf(MapKept kept)
    {
        var animal = _route.Animals[kept.Animal];
        var from = _map.Cards[animal.FromStep!.Value];
        Curve(from.X + RouteMap.CardWidth, from.Y, kept.X - 16, kept.Y);
        for (var i = 0; i < _route.Steps.Count; i++)
        {
            if (_route.Steps[i].Sire == kept.Animal || _route.Steps[i].Dam == kept.Animal)
            {
                Curve(kept.X + 16, kept.Y, _map.Cards[i].X, _map.Cards[i].Y + (_route.Steps[i].Sire == kept.Animal ? -20 : 20));
            }
        }
    }

    private void Card(MapCard card)
    {
        var step = _route.Steps[card.Step];
        var top = card.Y - (RouteMap.CardHeight / 2);
        Add($"<rect class=\"card\" x=\"{N(card.X)}\" y=\"{N(top)}\" width=\"{N(RouteMap.CardWidth)}\" height=\"{N(RouteMap.CardHeight)}\" rx=\"2\"/>");
        Add($"<path class=\"rule\" d=\"M{N(card.X + 10)} {N(card.Y)}h{N(RouteMap.CardWidth - 20)}\"/>");
        Parent(card.X, top, _route.Animals[step.Sire], 1);
        Parent(card.X, card.Y, _route.Animals[step.Dam], step.Dams);
        if (step.Keep.Count == 0)
        {
            Target(card, step);
        }
    }

    private void Parent(double x, double top, RouteAnimalWords animal, int dams)
    {
        Symbol(animal.Sex, x + 17, top + 16, 6);
        var name = RouteText.Name(animal, dams);
        var tag = animal.FromStep is null && animal.Tags.Count > 0;
        if (tag)
        {
            Add($"<a href=\"{E(Links.Animal(animal.Tags[0]))}\"><rect class=\"reach\" x=\"{N(x + 2)}\" y=\"{N(top + 2)}\" width=\"{N(RouteMap.CardWidth - 4)}\" height=\"{N((RouteMap.CardHeight / 2) - 4)}\"/>");
        }

        Text(x + 30, top + 20, "tag", Short(name, 17));
        Add($" ");
        Text(x + 30, top + 35, "what", Short(animal.Words.Text, 22));
        if (tag)
        {
            Add($"</a>");
        }
    }

    private void Kept(MapKept kept)
    {
        var animal = _route.Animals[kept.Animal];
        var step = _route.Steps[animal.FromStep!.Value];
        var perEgg = step.PerEgg[Math.Max(0, step.Keep.ToList().IndexOf(kept.Animal))];
        Symbol(animal.Sex, kept.X, kept.Y, 15);
        Text(kept.X, kept.Y + 6, "letter", animal.Name);
        Text(kept.X - 24, kept.Y - 9, "odds end", RouteText.Percent(perEgg));
        Text(kept.X, kept.Y - 23, "what middle", RouteText.Young(animal));
        var line = 0;
        foreach (var (seen, words) in Lines(animal.Words).Take(3))
        {
            Text(kept.X, kept.Y + 30 + (14 * line++), seen ? "seen middle" : "carried middle", Short(words, LongestLine));
        }
    }

    private void Target(MapCard card, RouteStepWords step)
    {
        var x = card.X + RouteMap.CardWidth;
        var middle = x + 66 + (RouteMap.TargetWidth / 2);
        Curve(x, card.Y, middle - 17, card.Y);
        Text(x + 6, card.Y - 8, "odds", RouteText.Percent(step.PerEgg.Count > 0 ? step.PerEgg[0] : 0.0));
        Add($"<use class=\"target\" href=\"#egg\" x=\"{N(middle - 18)}\" y=\"{N(card.Y - 23)}\" width=\"36\" height=\"45\"/>");
        var line = 0;
        foreach (var words in Wrapped(_want).Take(4))
        {
            Text(middle, card.Y + 40 + (15 * line++), "seen middle", words);
        }
    }

    private void Symbol(Sex sex, double x, double y, double half) => Add(sex == Sex.Male
        ? (FormattableString)$"<rect class=\"symbol\" x=\"{N(x - half)}\" y=\"{N(y - half)}\" width=\"{N(2 * half)}\" height=\"{N(2 * half)}\"/>"
        : $"<circle class=\"symbol\" cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(half)}\"/>");

    private void Curve(double x, double y, double toX, double toY)
    {
        var bend = (toX - x) / 2;
        Add($"<path class=\"edge\" d=\"M{N(x)} {N(y)}C{N(x + bend)} {N(y)} {N(toX - bend)} {N(toY)} {N(toX)} {N(toY)}\"/>");
    }

    private void Text(double x, double y, string kind, string words) => Add($"<text x=\"{N(x)}\" y=\"{N(y)}\" class=\"{kind}\">{E(words)}</text>");

    private void Add(FormattableString markup) => _svg.Append(markup.ToString(CultureInfo.InvariantCulture));

    // What is seen on one line, each thing carried on its own.
    private static IEnumerable<(bool IsSeen, string Words)> Lines(AnimalWords words)
    {
        if (words.Parts.Any(p => p.IsSeen))
        {
            yield return (true, string.Join(' ', words.Parts.Where(p => p.IsSeen).Select(p => p.Text)));
        }

        foreach (var part in words.Parts.Where(p => !p.IsSeen))
        {
            yield return (false, part.Text);
        }
    }

    private static IEnumerable<string> Wrapped(string text)
    {
        var line = string.Empty;
        foreach (var word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + word.Length > 18)
            {
                yield return line;
                line = word;
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }

        yield return line;
    }

    private static string Short(string text, int most) => text.Length <= most ? text : $"{text[..(most - 1)].TrimEnd()}…";

    private static string N(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    private static string E(string text) => WebUtility.HtmlEncode(text);
}
