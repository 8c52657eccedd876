namespace Clutchwright.Cli.Words;

/// <summary>Finds the nearest good spellings of commands and options, and lists words.</summary>
internal static class Spelling
{
    /// <summary>Writes <c>; did you mean A?</c>, or nothing where no word is near.</summary>
    public static string Hint(string word, IEnumerable<string> good)
    {
        var nearest = good
            .Distinct(StringComparer.Ordinal)
            .Select(g => (Word: g, Distance: Distance(word.ToUpperInvariant(), g.ToUpperInvariant())))
            .Where(g => g.Distance <= Math.Max(2, word.Length / 3))
            .OrderBy(g => g.Distance)
            .ThenBy(g => g.Word, StringComparer.Ordinal)
            .Take(2)
            .Select(g => g.Word);
        return DidYouMean(nearest.ToArray());
    }

    /// <summary>Writes <c>; did you mean A or B?</c>, or nothing.</summary>
    public static string DidYouMean(IReadOnlyList<string>? words) =>
        words is { Count: > 0 } ? $"; did you mean {OneOf(words)}?" : string.Empty;

    /// <summary>Writes <c>A, B or C</c>.</summary>
    public static string OneOf(IReadOnlyList<string> words) => words.Count switch
    {
        0 => string.Empty,
        1 => words[0],
        _ => $"{string.Join(", ", words.Take(words.Count - 1))} or {words[^1]}",
    };

    // Letters to change, add, leave out, or swap with their neighbour.
    private static int Distance(string a, string b)
    {
        var table = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            for (var j = 0; j <= b.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    table[i, j] = i + j;
                    continue;
                }

                var changed = table[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                table[i, j] = Math.Min(changed, Math.Min(table[i - 1, j], table[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    table[i, j] = Math.Min(table[i, j], table[i - 2, j - 2] + 1);
                }
            }
        }

        return table[a.Length, b.Length];
    }
}
