using System.Globalization;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Importing;

/// <summary>What a row of a file says, in one line.</summary>
internal static class RowWords
{
    public static string Of(AnimalRow row) => Line(
    [
        row.Name,
        row.Sex switch { Sex.Male => "male", Sex.Female => "female", null => "not sexed" },
        row.Hatched is { } hatched ? $"hatched {hatched.Words}" : null,
        row.Sire is { } sire ? $"sire {sire}" : row.PossibleSires.Count > 0 ? $"sire one of {string.Join(", ", row.PossibleSires)}" : null,
        row.Dam is { } dam ? $"dam {dam}" : null,
        .. row.Statements.Select(statement => $"{StatementWords.Of(statement.Kind)} {statement.Text}".TrimEnd()),
    ]);

    public static string Of(ClutchRow row) => Line(
    [
        $"of {row.Dam}",
        row.Sires.Count switch { 0 => null, 1 => $"sire {row.Sires[0]}", _ => $"sire one of {string.Join(", ", row.Sires)}" },
        $"laid {row.Laid.Words}",
        Eggs(row.GoodEggs, "good"),
        row.Slugs == 1 ? "1 slug" : Eggs(row.Slugs, "slugs"),
        Eggs(row.Lost, "lost"),
        row.MassGrams is { } mass ? string.Create(CultureInfo.InvariantCulture, $"{mass} g") : null,
        row.Incubator is { } incubator ? $"in {incubator}" : null,
        row.Hatched is { } hatched ? $"hatched {hatched.Words}" : null,
        row.Counted.Count > 0 ? CountedText.Write(row.Counted).Replace("\n", ", ", StringComparison.Ordinal) : null,
        row.Young.Count > 0 ? $"young {string.Join(", ", row.Young)}" : null,
    ]);

    public static string Of(LogRow row) => Line(
    [
        row.When.Words,
        .. row.Entries.Select(entry => HappeningRules.Words(entry.Kind, entry.Amount, entry.Text)),
        row.Mate is { } mate ? $"with {mate}" : null,
        row.Clutch is { } clutch ? $"clutch {clutch}" : null,
    ]);

    private static string? Eggs(int? number, string what) => number is { } eggs ? string.Create(CultureInfo.InvariantCulture, $"{eggs} {what}") : null;

    private static string Line(IEnumerable<string?> parts) => string.Join(", ", parts.Where(part => !string.IsNullOrWhiteSpace(part)));
}
