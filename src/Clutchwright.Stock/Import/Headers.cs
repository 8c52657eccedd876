using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Import;

/// <summary>The names of the columns of a pedigree file.</summary>
internal static class Headers
{
    /// <summary>A column that is read of a file by itself only: the book has an animal for each row.</summary>
    private const string CountName = "count";

    /// <summary>The columns as they are written, in this order.</summary>
    public static readonly IReadOnlyList<(AnimalField Field, string Name)> Written =
    [
        (AnimalField.Tag, "id"),
        (AnimalField.Sex, "sex"),
        (AnimalField.Sire, "sire"),
        (AnimalField.Dam, "dam"),
        (AnimalField.Hatched, "hatched"),
        (AnimalField.Seen, "seen"),
        (AnimalField.Told, "told"),
        (AnimalField.RuledOut, "ruled_out"),
        (AnimalField.Name, "name"),
        (AnimalField.Status, "status"),
        (AnimalField.MassGrams, "mass_g"),
        (AnimalField.Notes, "notes"),
        (AnimalField.Statements, "statements"),
    ];

    private static readonly Dictionary<string, AnimalField> Known = Written
        .Select(column => (column.Name, column.Field))
        .Concat(
        [
            ("tag", AnimalField.Tag),
            ("father", AnimalField.Sire),
            ("mother", AnimalField.Dam),
            ("hatch date", AnimalField.Hatched),
            ("hatch day", AnimalField.Hatched),
            ("mass", AnimalField.MassGrams),
            ("weight g", AnimalField.MassGrams),
            ("note", AnimalField.Notes),
            (CountName, AnimalField.Count),
        ])
        .ToDictionary(pair => Key(pair.Item1), pair => pair.Item2, StringComparer.Ordinal);

    public static string NameOf(AnimalField field) => field == AnimalField.Count ? CountName : Written.FirstOrDefault(column => column.Field == field).Name ?? "";

    public static AnimalField FieldOf(string header) => Known.GetValueOrDefault(Key(header), AnimalField.KeptAsNote);

    /// <summary>Case, spaces, hyphens and brackets do not count: <c>Mass (g)</c> is <c>mass_g</c>.</summary>
    private static string Key(string header) =>
        string.Concat(header.ToUpperInvariant().Where(char.IsLetterOrDigit));
}
