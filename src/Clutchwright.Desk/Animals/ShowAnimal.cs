using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Animals;

/// <summary>What is known of this animal?</summary>
public sealed class ShowAnimal
{
    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs _beliefs;
    private readonly ListDeeds _deeds;

    internal ShowAnimal(OpenBook book, OpenCatalogue catalogue, StockBeliefs beliefs, ListDeeds deeds)
    {
        _book = book;
        _catalogue = catalogue;
        _beliefs = beliefs;
        _deeds = deeds;
    }

    /// <summary>Finds an animal by its tag, whatever the case; <c>null</c> if there is none. Animals in the bin are found too.</summary>
    public async Task<AnimalAnswer?> RunAsync(string tag, CancellationToken cancel)
    {
        var found = await new FindAnimal(_book.Book).RunAsync(tag, cancel);
        if (!found.IsDone)
        {
            if (await Animals.Find.InBinAsync(_book, tag, cancel) is not { } binned)
            {
                return null;
            }

            found = await new FindAnimal(_book.Book).RunAsync(binned, cancel);
        }

        var record = found.Expect();
        var state = await _beliefs.ReadAsync(cancel);
        var own = state.Find(record.Animal.AnimalId) is null
            ? new StockState(default, StockRecord.OfOne(_catalogue, record.Animal, record.Statements), null, null, cancel)
            : state;
        var animal = own.Find(record.Animal.AnimalId)!;
        var shown = animal.Shown;
        return new AnimalAnswer(
            AnimalWording.Line(_catalogue, animal),
            Relative(record.Sire),
            Relative(record.Dam),
            record.PossibleSires.Select(s => s.Tag).ToArray(),
            record.Offspring.Select(Relative).OfType<AnimalLine>().ToArray(),
            record.PossibleOffspring.Select(Relative).OfType<AnimalLine>().ToArray(),
            record.Animal.MassGrams is { } mass ? (int)Math.Round(mass) : null,
            record.Animal.Notes.Length == 0 ? null : record.Animal.Notes,
            record.Statements.OrderBy(s => s.Kind).ThenBy(s => s.StatementId.Value).Select(AnimalWording.Line).ToArray(),
            AnimalWording.Beliefs(_catalogue, own.Record, animal, cancel),
            _catalogue.Wording.LookByAge(shown),
            _catalogue.Species.Dangers
                .Where(d => !d.ChanceIn(animal.Belief.Genotype).IsImpossible)
                .OrderByDescending(d => d.Severity)
                .Select(d => d.ChanceIn(animal.Belief.Genotype) is { IsCertain: false } chance
                    ? _catalogue.Wording.Danger(d, $"Its chance here: {OddsText.RatioAndPercent(chance)}.")
                    : _catalogue.Wording.Danger(d))
                .ToArray(),
            animal.Problems,
            await _deeds.LinesAsync(record.History, cancel),
            record.Animal.BinnedAt is not null,
            record.Animal.Version);

        AnimalLine? Relative(Stock.Animals.AnimalLine? line) =>
            line is not null && state.Find(line.AnimalId) is { } known ? AnimalWording.Line(_catalogue, known) : null;
    }
}
