using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Season;

/// <summary>What a keeper says of one animal for the season, as it is written in a row of the form.</summary>
/// <param name="Tag">The animal.</param>
/// <param name="What">What is said, as the goals file names it.</param>
/// <param name="Value">The reason, number or day; <c>null</c>: none is needed.</param>
public sealed record SeasonAnimalRow(string Tag, string What, string? Value)
{
    /// <summary>What can be said, as the goals file names it, in words.</summary>
    public static IReadOnlyList<(string What, string Words)> Whats { get; } =
    [
        ("hold", "is on hold, because"), ("leaveOut", "is left out"), ("use", "must be paired"), ("matings", "has matings at most"), ("massGrams", "weighs now, in grams"),
        ("lastClutch", "had her last clutch on"),
    ];

    /// <summary>Whether nothing stands behind it.</summary>
    public static bool IsBare(string what) => what is "leaveOut" or "use";

    /// <summary>Reads <c>TAG|WHAT|VALUE</c>.</summary>
    public static SeasonAnimalRow? Read(string text)
    {
        var parts = text.Split('|', 3, StringSplitOptions.TrimEntries);
        return parts.Length > 1 && parts[0].Length > 0 && Whats.Any(w => w.What == parts[1])
            ? new(parts[0], parts[1], parts.Length > 2 && parts[2].Length > 0 ? parts[2] : null)
            : null;
    }

    /// <summary>Reads a row of the form; <c>null</c>: it is empty.</summary>
    public static SeasonAnimalRow? Read(IQueryCollection query, string row) =>
        SeasonForm.Text(query, $"animal{row}") is { } tag && SeasonForm.Text(query, $"what{row}") is { } what && Whats.Any(w => w.What == what)
            ? new(tag, what, SeasonForm.Text(query, $"value{row}"))
            : null;

    /// <summary>Writes it as <see cref="Read(string)"/> reads it.</summary>
    public override string ToString() => Value is null ? $"{Tag}|{What}" : $"{Tag}|{What}|{Value}";
}
