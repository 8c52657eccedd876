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

    public static StatementForm Statement(IFormCollection sent) => new(
        Text(sent, "kind") ?? "Seen",
        Text(sent, "text") ?? string.Empty,
        Text(sent, "by"),
        Text(sent, "when"),
        Sureness.FromPercent(Text(sent, "sure")))
    {
        IsFound = Text(sent, "found") != "no",
        Sensitivity = Sureness.FromPercent(Text(sent, "sensitivity") ?? "99"),
        Specificity = Sureness.FromPercent(Text(sent, "specificity") ?? "99"),
    };

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
