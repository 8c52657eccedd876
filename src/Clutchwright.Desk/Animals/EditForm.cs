using System.Globalization;
using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Animals;

/// <summary>What stands in the form of this animal?</summary>
public sealed class EditForm
{
    private readonly OpenBook _book;

    internal EditForm(OpenBook book) => _book = book;

    /// <summary>Fills a form; <c>null</c> if there is no such animal. Statements are left empty: they are changed one by one.</summary>
    public async Task<AnimalForm?> RunAsync(string tag, CancellationToken cancel)
    {
        if ((await Find.ByTagAsync(_book, tag, cancel)).Value is not { } record)
        {
            return null;
        }

        var animal = record.Animal;
        return new AnimalForm
        {
            Tag = animal.Tag,
            Name = animal.Name,
            Sex = animal.Sex switch { Sex.Male => "m", Sex.Female => "f", null => "u" },
            Hatched = animal.Hatched?.ToText(),
            Sire = record.Sire?.Tag ?? (record.PossibleSires.Count > 0 ? string.Join('|', record.PossibleSires.Select(s => s.Tag)) : null),
            Dam = record.Dam?.Tag,
            Status = animal.Status.ToString(),
            MassGrams = animal.MassGrams?.ToString(CultureInfo.InvariantCulture),
            Notes = animal.Notes,
            Version = animal.Version,
        };
    }
}
