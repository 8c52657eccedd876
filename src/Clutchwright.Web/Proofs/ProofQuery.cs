using System.Globalization;
using Clutchwright.Desk.Words;
using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Proofs;

/// <summary>What a keeper asks on the proof pages, as the address holds it.</summary>
internal sealed class ProofQuery(IQueryCollection query)
{
    private const int MostCount = 10_000;

    /// <summary>Gets what in the address cannot be read.</summary>
    public List<AskedWrongly> Problems { get; } = [];

    /// <summary>Gets whether anything is asked at all.</summary>
    public bool IsAsked => query.Any(q => q.Key is not "deed" && !string.IsNullOrWhiteSpace(q.Value.ToString()));

    /// <summary>A text, trimmed; <c>null</c> where it is empty.</summary>
    public string? Text(string name, int index = 0)
    {
        var values = query[name];
        var text = index < values.Count ? values[index]?.Trim() : null;
        return string.IsNullOrEmpty(text) ? null : text;
    }

    /// <summary>How many lines of a name there are.</summary>
    public int Lines(string name) => query[name].Count;

    /// <summary>A count; 0 where it is empty, and a problem where it is none.</summary>
    /// <param name="name">The field.</param>
    /// <param name="index">Its line.</param>
    /// <param name="where">What the field is called beside a problem; <c>null</c>: its name.</param>
    public int Count(string name, int index = 0, string? where = null)
    {
        if (Text(name, index) is not { } text)
        {
            return 0;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number <= MostCount)
        {
            return number;
        }

        Problems.Add(new(where ?? name, $"“{text}” is no count. Write a whole number from 0 to {MostCount}."));
        return 0;
    }

    /// <summary>Lines of a text box that are not empty.</summary>
    public IReadOnlyList<string> Rows(string name) =>
        Text(name)?.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) ?? [];
}
