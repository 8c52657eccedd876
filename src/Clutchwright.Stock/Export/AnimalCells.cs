using System.Globalization;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Import;

namespace Clutchwright.Stock.Export;

/// <summary>The cells of an animal in a file, in the order of <see cref="Headers.Written"/>, before they are protected.</summary>
internal static class AnimalCells
{
    public static IReadOnlyList<string> Of(Animal animal, Func<AnimalId, string> tagOf) => Of(new AnimalRow
    {
        Row = 0,
        Line = 0,
        Tag = animal.Tag,
        Name = animal.Name,
        Sex = animal.Sex,
        SireTags = animal.SireId is { } sire ? [tagOf(sire)] : [.. animal.PossibleSireIds.Select(tagOf)],
        Dam = animal.DamId is { } dam ? tagOf(dam) : null,
        Hatched = animal.Hatched,
        Status = animal.Status,
        MassGrams = animal.MassGrams,
        Notes = animal.Notes,
        Statements = [.. animal.Statements.Select(statement => statement.ToEntry())],
    });

    public static IReadOnlyList<string> Of(AnimalRow row)
    {
        var (seen, told, ruledOut, others) = StatementCells.Write(row.Statements);
        return
        [
            row.Tag,
            row.Sex switch { Sex.Male => "m", Sex.Female => "f", null => "u" },
            string.Join(Tags.Separator, row.SireTags.OrderBy(Tags.Order, StringComparer.Ordinal)),
            row.Dam ?? "",
            row.Hatched?.ToText() ?? "",
            seen,
            told,
            ruledOut,
            row.Name ?? "",
            StatusWords.Of(row.Status),
            row.MassGrams?.ToString(CultureInfo.InvariantCulture) ?? "",
            row.Notes,
            others,
        ];
    }
}
