using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Animals;

/// <summary>Which animals are in the stock?</summary>
public sealed class ListAnimals
{
    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs _beliefs;

    internal ListAnimals(OpenBook book, OpenCatalogue catalogue, StockBeliefs beliefs)
    {
        _book = book;
        _catalogue = catalogue;
        _beliefs = beliefs;
    }

    /// <summary>Lists a page of animals. What is asked for that does not exist (an unknown status or order) counts as not asked.</summary>
    public async Task<AnimalsAnswer> RunAsync(AnimalsQuestion question, CancellationToken cancel)
    {
        var isBin = string.Equals(question.Status, AnimalsQuestion.Bin, StringComparison.OrdinalIgnoreCase);
        var filter = new AnimalFilter
        {
            Text = question.Find,
            Sex = question.IsUnsexed ? SexFilter.Unsexed : question.Sex switch
            {
                Sex.Male => SexFilter.Male,
                Sex.Female => SexFilter.Female,
                null => SexFilter.Any,
            },
            Statuses = !isBin && Enum.TryParse<AnimalStatus>(question.Status, ignoreCase: true, out var status) && Enum.IsDefined(status) ? [status] : [],
            InBin = isBin,
            Order = question.Order switch
            {
                "hatched" => AnimalOrder.Hatched,
                "added" => AnimalOrder.Added,
                "name" => AnimalOrder.Name,
                _ => AnimalOrder.Tag,
            },
            IsDescending = question.Order is "hatched" or "added",
            Page = Math.Max(1, question.Page),
            PageSize = Math.Clamp(question.PageSize, 1, AnimalFilter.MaxPageSize),
        };
        var page = (await new Stock.Animals.ListAnimals(_book.Book).RunAsync(filter, cancel)).Expect();
        var state = await _beliefs.ReadAsync(cancel);
        return new(
            page.Animals.Select(a => state.Find(a.AnimalId) is { } known
                ? AnimalWording.Line(_catalogue, known)
                : new AnimalLine(a.Tag, a.Name, a.Sex, a.Hatched?.Words, a.Status.ToString(), Binned(a), HasProblem: false)).ToArray(),
            page.Total,
            page.Page,
            page.PageSize);
    }

    // An animal in the bin is not reasoned from: its own words stand for it.
    private static Words.AnimalWords Binned(Stock.Animals.AnimalLine animal) =>
        new([.. animal.Statements.Select(s => new Words.WordPart(s.Text, s.Kind == Stock.Statements.StatementKind.Seen, null, null))], string.Empty);
}
