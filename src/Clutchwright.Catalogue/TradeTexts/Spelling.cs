using System.Text;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>How names are compared, and which known spellings are near a wrong one.</summary>
public static class Spelling
{
    /// <summary>The letters and digits of a name in lower case: what is left when case, spaces, hyphens and apostrophes do not count.</summary>
    public static string Key(string name)
    {
        var key = new StringBuilder(name.Length);
        foreach (var c in name)
        {
            if (char.IsLetterOrDigit(c))
            {
                key.Append(char.ToLowerInvariant(c));
            }
        }

        return key.ToString();
    }

    /// <summary>The fewest insertions, deletions, changes and swaps of neighbours that turn one text into the other (optimal string
    /// alignment), or more than <paramref name="most"/> as soon as that is certain.</summary>
    public static int Distance(ReadOnlySpan<char> a, ReadOnlySpan<char> b, int most)
    {
        if (Math.Abs(a.Length - b.Length) > most)
        {
            return most + 1;
        }

        var before = new int[b.Length + 1];
        var last = new int[b.Length + 1];
        var row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
        {
            last[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            var least = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = a[i - 1] == b[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(row[j - 1], last[j]) + 1, last[j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
                }

                least = Math.Min(least, row[j]);
            }

            if (least > most)
            {
                return most + 1;
            }

            (before, last, row) = (last, row, before);
        }

        return last[b.Length];
    }

    /// <summary>Up to three of the known names nearest to a wrong one, nearest first; none if all are far.</summary>
    public static IReadOnlyList<string> Nearest(string wrong, IEnumerable<string> known)
    {
        var key = Key(wrong);
        return known
            .Select(k => (Name: k, Distance: Score(key, Key(k))))
            .Where(k => k.Distance < int.MaxValue)
            .OrderBy(k => k.Distance)
            .Select(k => k.Name)
            .Distinct(StringComparer.Ordinal)
            .Take(3)
            .ToArray();
    }

    /// <summary>How far a wrong key is from a known one: the distance, or the greatest number if it is too far to be meant.</summary>
    internal static int Score(string wrong, string known)
    {
        var most = Math.Max(1, Math.Max(wrong.Length, known.Length) / 3);
        var distance = Distance(wrong, known, most);
        return distance <= most && distance < wrong.Length ? distance : int.MaxValue;
    }

    /// <summary>The tail of a message: <c> (nearest: a, b)</c>, or nothing.</summary>
    internal static string DidYouMean(string wrong, IEnumerable<string> known)
    {
        var nearest = Nearest(wrong, known);
        return nearest.Count == 0 ? "" : $" (nearest: {string.Join(", ", nearest)})";
    }
}
