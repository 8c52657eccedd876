namespace Clutchwright.Desk.Looks;

/// <summary>A word of a query.</summary>
/// <param name="Key">In lower case; grey as gray.</param>
/// <param name="At">Where it begins, from 0.</param>
/// <param name="Length">How long it is.</param>
internal readonly record struct QueryWord(string Key, int At, int Length);

/// <summary>What stands between two commas of a query.</summary>
internal sealed class QueryPhrase
{
    private readonly string _query;

    private QueryPhrase(string query, IReadOnlyList<QueryWord> words) => (_query, Words) = (query, words);

    public IReadOnlyList<QueryWord> Words { get; }

    public int At => Words[0].At;

    public int Length => Words[^1].At + Words[^1].Length - At;

    /// <summary>Gets the phrase as it was written.</summary>
    public string Text => _query.Substring(At, Length);

    /// <summary>The words put together with single spaces.</summary>
    public string Key => string.Join(' ', Words.Select(w => w.Key));

    public string First => Words[0].Key;

    /// <summary>Cuts a query at commas and semicolons; empty phrases are left out.</summary>
    public static IReadOnlyList<QueryPhrase> Split(string query)
    {
        var phrases = new List<QueryPhrase>();
        var words = new List<QueryWord>();
        for (var at = 0; at <= query.Length;)
        {
            if (at == query.Length || query[at] is ',' or ';' or '\n')
            {
                if (words.Count > 0)
                {
                    phrases.Add(new(query, [.. words]));
                    words.Clear();
                }

                at++;
            }
            else if (IsGap(query[at]))
            {
                at++;
            }
            else
            {
                var end = at;
                while (end < query.Length && query[end] is not (',' or ';' or '\n') && !IsGap(query[end]))
                {
                    end++;
                }

                words.Add(new(query[at..end].ToLowerInvariant().Replace("grey", "gray", StringComparison.Ordinal), at, end - at));
                at = end;
            }
        }

        return phrases;
    }

    /// <summary>The phrase from a word on, or up to one; <c>null</c>: nothing is left.</summary>
    public QueryPhrase? Part(int from, int? to = null) =>
        (to ?? Words.Count) > from ? new(_query, [.. Words.Take(to ?? Words.Count).Skip(from)]) : null;

    private static bool IsGap(char c) => char.IsWhiteSpace(c) || c is '-' or '‐' or '‑' or '–' or '—' or '"' or '“' or '”';
}
