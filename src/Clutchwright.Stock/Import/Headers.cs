using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Import;

/// <summary>The names of the columns of a file, by what it holds.</summary>
internal static class Headers
{
    private const int MostRows = 200_000;
    private const int MostClutches = 20_000;

    public static readonly TableFields<AnimalField> Animals = new(
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
        ],

        // Read of a file by itself only: the book has an animal for each row.
        [(AnimalField.Count, "count")],
        [
            ("tag", AnimalField.Tag),
            ("father", AnimalField.Sire),
            ("mother", AnimalField.Dam),
            ("hatch date", AnimalField.Hatched),
            ("hatch day", AnimalField.Hatched),
            ("mass", AnimalField.MassGrams),
            ("weight g", AnimalField.MassGrams),
            ("note", AnimalField.Notes),
        ],
        (AnimalField.KeptAsNote, AnimalField.LeftOut),
        [AnimalField.Tag]);

    public static readonly TableFields<ClutchField> Clutches = new(
        [
            (ClutchField.Tag, "id"),
            (ClutchField.Dam, "dam"),
            (ClutchField.Sire, "sire"),
            (ClutchField.Laid, "laid"),
            (ClutchField.Eggs, "eggs"),
            (ClutchField.Slugs, "slugs"),
            (ClutchField.Lost, "lost"),
            (ClutchField.MassGrams, "mass_g"),
            (ClutchField.Incubator, "incubator"),
            (ClutchField.Hatched, "hatched"),
            (ClutchField.Counted, "counted"),
            (ClutchField.Young, "young"),
            (ClutchField.Notes, "notes"),
        ],
        [],
        [
            ("clutch", ClutchField.Tag),
            ("clutch id", ClutchField.Tag),
            ("tag", ClutchField.Tag),
            ("female", ClutchField.Dam),
            ("mother", ClutchField.Dam),
            ("male", ClutchField.Sire),
            ("father", ClutchField.Sire),
            ("sires", ClutchField.Sire),
            ("lay date", ClutchField.Laid),
            ("laid on", ClutchField.Laid),
            ("date laid", ClutchField.Laid),
            ("good eggs", ClutchField.Eggs),
            ("fertile", ClutchField.Eggs),
            ("infertile", ClutchField.Slugs),
            ("eggs lost", ClutchField.Lost),
            ("mass", ClutchField.MassGrams),
            ("weight g", ClutchField.MassGrams),
            ("hatch date", ClutchField.Hatched),
            ("hatched on", ClutchField.Hatched),
            ("hatchlings", ClutchField.Young),
            ("note", ClutchField.Notes),
        ],
        (ClutchField.KeptAsNote, ClutchField.LeftOut),
        [ClutchField.Dam, ClutchField.Laid],
        MostClutches);

    public static readonly TableFields<LogField> Log = new(
        [
            (LogField.Animal, "animal"),
            (LogField.Date, "date"),
            (LogField.Kind, "kind"),
            (LogField.Amount, "amount"),
            (LogField.Mate, "mate"),
            (LogField.Clutch, "clutch"),
            (LogField.Note, "text"),
        ],
        [(LogField.MassGrams, "mass_g"), (LogField.Food, "food")],
        [
            ("id", LogField.Animal),
            ("tag", LogField.Animal),
            ("snake", LogField.Animal),
            ("day", LogField.Date),
            ("when", LogField.Date),
            ("event", LogField.Kind),
            ("what", LogField.Kind),
            ("type", LogField.Kind),
            ("mass", LogField.MassGrams),
            ("weight", LogField.MassGrams),
            ("weight g", LogField.MassGrams),
            ("prey", LogField.Food),
            ("feeder", LogField.Food),
            ("partner", LogField.Mate),
            ("with", LogField.Mate),
            ("note", LogField.Note),
            ("notes", LogField.Note),
            ("comment", LogField.Note),
        ],
        (LogField.KeptAsNote, LogField.LeftOut),
        [LogField.Animal, LogField.Date],
        MostRows);

    public static readonly TableFields<PhotoField> Photos = new(
        [(PhotoField.File, "file"), (PhotoField.Animal, "animal"), (PhotoField.Date, "date"), (PhotoField.Note, "note")],
        [],
        [
            ("file name", PhotoField.File),
            ("photo", PhotoField.File),
            ("picture", PhotoField.File),
            ("id", PhotoField.Animal),
            ("tag", PhotoField.Animal),
            ("snake", PhotoField.Animal),
            ("taken", PhotoField.Date),
            ("day", PhotoField.Date),
            ("when", PhotoField.Date),
            ("caption", PhotoField.Note),
            ("notes", PhotoField.Note),
            ("text", PhotoField.Note),
        ],
        (PhotoField.KeptAsNote, PhotoField.LeftOut),
        [PhotoField.File, PhotoField.Animal],
        MostRows);

    /// <summary>The columns of animals as they are written, in this order.</summary>
    public static IReadOnlyList<(AnimalField Field, string Name)> Written => Animals.Written;
}
