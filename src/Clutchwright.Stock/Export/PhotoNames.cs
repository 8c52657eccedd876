using System.Globalization;
using System.Text;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;

namespace Clutchwright.Stock.Export;

/// <summary>Gives each picture a name by the tag of its animal and the day it was taken: <c>photos/H23-4_2024-05-03.jpg</c>.</summary>
internal static class PhotoNames
{
    private const int MaxTagLength = 60;
    private const string Undated = "no-date";

    /// <summary>By digest. The same photos get the same names, in whatever order they come.</summary>
    public static IReadOnlyDictionary<string, string> Of(IEnumerable<PhotoSnapshot> photos, IReadOnlyDictionary<Guid, string> tags)
    {
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var photo in photos
            .OrderBy(p => Tags.Order(tags[p.Animal]), StringComparer.Ordinal)
            .ThenBy(p => p.Taken?.Earliest ?? DateOnly.MaxValue)
            .ThenBy(p => p.Id.ToString(), StringComparer.Ordinal))
        {
            if (names.ContainsKey(photo.Digest))
            {
                continue;
            }

            var day = photo.Taken is null ? Undated
                : photo.Taken.Earliest == photo.Taken.Latest ? DateWords.Iso(photo.Taken.Earliest)
                : $"{DateWords.Iso(photo.Taken.Earliest)}_to_{DateWords.Iso(photo.Taken.Latest)}";
            var stem = $"{BookFormat.PhotoFolder}{Plain(tags[photo.Animal])}_{day}";
            var name = $"{stem}.jpg";
            for (var number = 2; !taken.Add(name); number++)
            {
                name = string.Create(CultureInfo.InvariantCulture, $"{stem}_{number}.jpg");
            }

            names.Add(photo.Digest, name);
        }

        return names;
    }

    // What every file system takes; letters of any script stay.
    private static string Plain(string tag)
    {
        var plain = new StringBuilder();
        foreach (var rune in tag.EnumerateRunes())
        {
            plain.Append(Rune.IsLetterOrDigit(rune) || rune.Value is '-' ? rune.ToString() : "-");
        }

        var text = plain.ToString().Trim('-');
        return text.Length == 0 ? "animal" : text.Length <= MaxTagLength ? text : text[..MaxTagLength];
    }
}
