using Clutchwright.Desk.Words;

namespace Clutchwright.Cli.Words;

/// <summary>Finds the nearest good spellings of commands and options, and lists words.</summary>
internal static class Spelling
{
    /// <summary>Writes <c>; did you mean A?</c>, or nothing where no word is near.</summary>
    public static string Hint(string word, IEnumerable<string> good) => DidYouMean([.. NearWords.Of(word, good).Take(2)]);

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
}
