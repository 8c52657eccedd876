using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Words;
using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Animals;

/// <summary>Reads what was sent from the forms of an animal.</summary>
internal static class AnimalForms
{
    private static readonly HashSet<string> Fields =
        new(["tag", "name", "seen", "told", "ruled-out", "hatched", "mass", "sire", "dam"], StringComparer.OrdinalIgnoreCase);

    public static AnimalForm Animal(IFormCollection sent) => new()
    {
        Tag = Text(sent, "tag") ?? string.Empty,
        Name = Text(sent, "name"),
        Sex = Text(sent, "sex") ?? "u",
        Hatched = Text(sent, "hatched"),
        Sire = Text(sent, "sire"),
        Dam = Text(sent, "dam"),
        Seen = Text(sent, "seen"),
        Told = Text(sent, "told"),
        RuledOut = Text(sent, "ruled_out"),
        Status = Text(sent, "status") ?? "Kept",
        MassGrams = Text(sent, "mass"),
        Notes = Text(sent, "notes"),
        Version = Guid.TryParse(Text(sent, "version"), out var version) ? version : null,
    };

    /// <summary>Reads a statement; what is not told is as the form offers it.</summary>
    /// <param name="sent">The form.</param>
    /// <param name="problems">Takes what cannot be read.</param>
    public static StatementForm Statement(IFormCollection sent, List<AskedWrongly> problems)
    {
        var offered = new StatementForm(
            Text(sent, "kind") ?? "Seen",
            Text(sent, "text") ?? string.Empty,
            Text(sent, "by"),
            Text(sent, "when"));
        return offered with
        {
            Confidence = Percent("sure", offered.Confidence),
            IsFound = Text(sent, "found") != "no",
            Sensitivity = Percent("sensitivity", offered.Sensitivity),
            Specificity = Percent("specificity", offered.Specificity),
        };

        double Percent(string field, double otherwise)
        {
            if (Text(sent, field) is not { } text)
            {
                return otherwise;
            }

            if (Sureness.FromPercent(text) is { } share)
            {
                return share;
            }

            problems.Add(new(field, $"“{text}” is no percentage. Write a number above 0 and up to 100."));
            return otherwise;
        }
    }

    /// <summary>The problem of one field, or <c>null</c>.</summary>
    public static AskedWrongly? ProblemOf(IReadOnlyList<AskedWrongly> problems, string field) =>
        problems.FirstOrDefault(p => string.Equals(p.Where, field, StringComparison.OrdinalIgnoreCase));

    /// <summary>The problems that no field of the form shows.</summary>
    public static IReadOnlyList<AskedWrongly> Elsewhere(IReadOnlyList<AskedWrongly> problems) =>
        [.. problems.Where(p => !Fields.Contains(p.Where))];

    /// <summary>Says whether the animal was refused, and not one of its fields.</summary>
    public static bool IsRefusedAsAWhole(IReadOnlyList<AskedWrongly> problems) => problems is [{ Where: "animal" }];

    public static string? Text(IFormCollection sent, string name)
    {
        var text = sent[name].ToString().Trim();
        return text.Length == 0 ? null : text;
    }
}
