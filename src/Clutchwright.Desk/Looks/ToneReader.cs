using System.Globalization;
using Clutchwright.Catalogue.Looks;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Looks;

/// <summary>Reads a tone: <c>#RRGGBB</c>, a name of the ISCC-NBS system, or a hue that stands for all its tones.</summary>
internal sealed class ToneReader
{
    // The system's modifiers: what is left of a name without them is its hue.
    private static readonly HashSet<string> Modifiers =
        ["vivid", "brilliant", "strong", "deep", "light", "moderate", "medium", "dark", "pale", "very", "grayish", "blackish"];

    private readonly Dictionary<string, Tone> _byName = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Tone>> _byHue = new(StringComparer.Ordinal);

    public ToneReader(IReadOnlyList<Tone> tones)
    {
        foreach (var tone in tones)
        {
            _byName.TryAdd(Key(tone.Name), tone);
            var hue = HueOf(tone);
            if (!_byHue.TryGetValue(hue, out var known))
            {
                _byHue.Add(hue, known = []);
            }

            known.Add(tone);
        }
    }

    /// <summary>The hue of a tone: its name without the words for lightness and strength.</summary>
    public static string HueOf(Tone tone) =>
        string.Join(' ', Key(tone.Name).Split(' ').SkipWhile((w, i) => Modifiers.Contains(w) && i < Key(tone.Name).Split(' ').Length - 1));

    /// <summary>The colours meant and how to say them; <c>null</c>: it is no tone.</summary>
    public (IReadOnlyList<CielabColour> Colours, string Words)? Read(string text)
    {
        var key = Key(text);
        if (key.StartsWith('#') && SrgbColour.TryParse(key, out var colour))
        {
            return ([CielabColour.FromSrgb(colour)], colour.ToString());
        }

        if (_byName.TryGetValue(key, out var tone))
        {
            return ([tone.Lab], tone.Name);
        }

        return _byHue.TryGetValue(key, out var tones)
            ? ([.. tones.Select(t => t.Lab)], string.Create(CultureInfo.InvariantCulture, $"any {key}"))
            : null;
    }

    /// <summary>The nearest names to one that is none.</summary>
    public IReadOnlyList<string> Nearest(string text) => NearWords.Of(Key(text), _byName.Keys.Concat(_byHue.Keys).Distinct(StringComparer.Ordinal));

    private static string Key(string text) =>
        string.Join(' ', text.ToLowerInvariant().Replace("grey", "gray", StringComparison.Ordinal).Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries));
}
