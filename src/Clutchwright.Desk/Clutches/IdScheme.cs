using System.Globalization;
using System.Text.RegularExpressions;

namespace Clutchwright.Desk.Clutches;

/// <summary>How a keeper calls clutches and hatchlings: text with places in braces that are filled in.</summary>
/// <remarks>Places: <c>{year}</c> the year it hatches or is laid in four digits, <c>{yy}</c> in two, <c>{clutch}</c> the clutch's id, <c>{dam}</c>, <c>{sire}</c> (empty where
/// it is in doubt), <c>{n}</c> a number from 1, <c>{nn}</c> the same in two digits at least, <c>{letter}</c> a, b, … z, aa, ….</remarks>
public sealed partial record IdScheme
{
    /// <summary>How clutches are called where the keeper has said nothing.</summary>
    public const string UsualOfClutches = "{yy}-{nn}";

    /// <summary>How hatchlings are called where the keeper has said nothing.</summary>
    public const string UsualOfHatchlings = "{clutch}-{n}";

    private const int Most = 10_000;

    private static readonly HashSet<string> Places = new(["year", "yy", "clutch", "dam", "sire", "n", "nn", "letter"], StringComparer.Ordinal);

    private IdScheme(string text) => Text = text;

    /// <summary>Gets the scheme as it is written.</summary>
    public string Text { get; }

    /// <summary>Reads a scheme.</summary>
    /// <param name="text">As above.</param>
    /// <param name="isOfClutches">Whether clutches are called so: they have no clutch to be called after.</param>
    /// <param name="problem">What is wrong; <c>null</c>: nothing.</param>
    public static IdScheme? Read(string text, bool isOfClutches, out string? problem)
    {
        var scheme = text.Trim();
        var places = Place().Matches(scheme).Select(m => m.Groups["place"].Value).ToArray();
        problem = scheme.Length is 0 or > 40 || scheme.Contains('|', StringComparison.Ordinal) || scheme.Any(char.IsControl) ? "A scheme is one line of 1 to 40 characters without |."
            : places.FirstOrDefault(p => !Places.Contains(p)) is { } unknown ? $"{{{unknown}}} is no place that can be filled in. There are {string.Join(", ", Places.Select(p => $"{{{p}}}"))}."
            : scheme.Replace("{", string.Empty, StringComparison.Ordinal).Length != scheme.Length - places.Length ? "A brace is not closed."
            : isOfClutches && places.Contains("clutch") ? "A clutch cannot be called after itself."
            : !places.Any(p => p is "n" or "nn" or "letter") ? "A number is missing, without which all would be called the same. Write {n}, {nn} or {letter}."
            : null;
        return problem is null ? new(scheme) : null;
    }

    /// <summary>The first id of the scheme that is free.</summary>
    /// <param name="on">The day it is laid or hatches.</param>
    /// <param name="clutch">The clutch's id.</param>
    /// <param name="dam">The dam's id.</param>
    /// <param name="sire">The sire's id; <c>null</c>: in doubt.</param>
    /// <param name="isTaken">Whether an id is taken.</param>
    public string Next(DateOnly on, string clutch, string dam, string? sire, Func<string, bool> isTaken)
    {
        for (var number = 1; number < Most; number++)
        {
            if (Fill(on, clutch, dam, sire, number) is var id && !isTaken(id))
            {
                return id;
            }
        }

        return Fill(on, clutch, dam, sire, Most);
    }

    private static string Letter(int number)
    {
        var letters = string.Empty;
        for (var left = number; left > 0; left = (left - 1) / 26)
        {
            letters = (char)('a' + ((left - 1) % 26)) + letters;
        }

        return letters;
    }

    [GeneratedRegex(@"\{(?<place>[^{}]*)\}", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Place();

    private string Fill(DateOnly on, string clutch, string dam, string? sire, int number) => Place().Replace(Text, place => place.Groups["place"].Value switch
    {
        "year" => on.Year.ToString("0000", CultureInfo.InvariantCulture),
        "yy" => (on.Year % 100).ToString("00", CultureInfo.InvariantCulture),
        "clutch" => clutch,
        "dam" => dam,
        "sire" => sire ?? string.Empty,
        "n" => number.ToString(CultureInfo.InvariantCulture),
        "nn" => number.ToString("00", CultureInfo.InvariantCulture),
        _ => Letter(number),
    });
}
