using System.Globalization;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Texts;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Sheets;

/// <summary>Words that several sheets share.</summary>
internal static class SheetWords
{
    public const string Foot = "Odds, not promises; no veterinary advice. Follow local law, ask a reptile veterinarian.";

    public static string Sex(Sex? sex) => sex switch { Genetics.Loci.Sex.Male => "male", Genetics.Loci.Sex.Female => "female", null => "not sexed" };

    /// <summary>Sex as the trade writes it: 1.0, 0.1, 0.0.1.</summary>
    public static string TradeSex(Sex? sex) => sex switch { Genetics.Loci.Sex.Male => "1.0", Genetics.Loci.Sex.Female => "0.1", null => "0.0.1" };

    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Name(Animal animal) => animal.Name is { Length: > 0 } name ? $"{animal.Tag} {name}" : animal.Tag;

    public static string Grams(double grams) => $"{grams:#,0.#} g";

    /// <summary>What can be seen bold, what is carried italic, each with its note.</summary>
    /// <param name="words">The words.</param>
    /// <param name="note">The note of a part; empty: none.</param>
    public static IReadOnlyList<TextRun> Runs(LabelWords words, Func<LabelPart, string>? note = null)
    {
        note ??= p => p.Note;
        var runs = new List<TextRun>();
        foreach (var part in words.Parts)
        {
            if (runs.Count > 0)
            {
                runs.Add(new(part.IsSeen ? " " : ", "));
            }

            runs.Add(new(part.Text, part.IsSeen ? TextStyle.Bold : TextStyle.Italic, IsKeptTogether: true));
            if (note(part) is { Length: > 0 } said)
            {
                runs.Add(new($" ({said})"));
            }
        }

        return runs;
    }

    /// <summary>An animal's words as every page shows them.</summary>
    public static IReadOnlyList<TextRun> Runs(AnimalWords words) =>
        [.. words.Parts.SelectMany((p, i) => new TextRun[] { new(i == 0 ? string.Empty : " "), new(p.Text, p.IsSeen ? TextStyle.Bold : TextStyle.Italic) })];

    /// <summary>Sire and dam; <c>null</c>: neither is recorded.</summary>
    public static string? Parents(StockState state, Animal animal)
    {
        var sires = (animal.SireId is { } sire ? [sire] : animal.PossibleSireIds).Select(state.Find).OfType<StockAnimal>().Select(s => Name(s.Animal)).ToArray();
        var dam = animal.DamId is { } id && state.Find(id) is { } known ? Name(known.Animal) : null;
        return (sires.Length, dam) switch
        {
            (0, null) => null,
            (0, _) => $"sire not known × {dam}",
            (_, null) => $"{string.Join(" or ", sires)} × dam not known",
            _ => $"{string.Join(" or ", sires)} × {dam}",
        };
    }

    public static SheetFact Fact(string name, string text, TextStyle style = TextStyle.Plain) => new(name, [new(text, style)]);

    public static IReadOnlyList<IReadOnlyList<TextRun>> Row(params IReadOnlyList<string> cells) => [.. cells.Select(c => (IReadOnlyList<TextRun>)[new(c)])];
}
