using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Season;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Papers;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Sheets;

/// <summary>What did a season come to?</summary>
public sealed class PrintSeason
{
    private const int MostHappenings = 100_000;
    private const int FirstYear = 1950;
    private const int LastYear = 2200;
    private const int DaysOfIncubation = 58;

    private readonly SheetStock _stock;

    internal PrintSeason(SheetStock stock) => _stock = stock;

    /// <summary>The year of the season at hand.</summary>
    public int ThisYear => SeasonYear.At(_stock.Today);

    /// <summary>Writes the summary of a season.</summary>
    /// <param name="year">The year in which its clutches hatch; <c>null</c>: this season.</param>
    /// <param name="page">The page: <c>a4</c> or <c>letter</c>.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<Answer<PrintedSheet>> RunAsync(int? year, string page, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var paper = LabelLayoutReader.Paper(page, problems, withRoll: false) ?? PaperSize.A4;
        var asked = year ?? ThisYear;
        if (asked is < FirstYear or > LastYear)
        {
            problems.Add(new("year", $"{asked} is no year of a season. Give a year from {FirstYear} to {LastYear}."));
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var state = await _stock.ReadAsync(cancel);
        var document = SeasonSheet.Of(await OfAsync(state, asked, cancel), _stock.Today);
        var pages = PageSetter.Set(document, paper);
        return new PrintedSheet(PdfWriter.Write(document.Title, "en", _stock.Now, pages), [document], pages) { Title = document.Title };
    }

    private async Task<SeasonSummary> OfAsync(StockState state, int year, CancellationToken cancel)
    {
        var all = await _stock.HappeningsAsync(null, MostHappenings, cancel, HappeningKind.Introduced, HappeningKind.Locked);
        var pairings = all
            .Where(h => h.Mate is not null && SeasonYear.At(h.When.Latest) == year)
            .GroupBy(h => (h.Tag, Mate: h.Mate!) is var (a, b) && IsMale(state, b) ? (Sire: b, Dam: a) : (Sire: h.Tag, Dam: h.Mate!))
            .Select(g => new PastPairing(
                Name(state, g.Key.Sire),
                Name(state, g.Key.Dam),
                g.Count(h => h.Kind == HappeningKind.Introduced),
                g.Count(h => h.Kind == HappeningKind.Locked),
                g.MinBy(h => h.When.Earliest)!.When.Words,
                g.MaxBy(h => h.When.Latest)!.When.Words))
            .OrderBy(p => p.Dam, StringComparer.OrdinalIgnoreCase)
            .ThenBy(p => p.Sire, StringComparer.OrdinalIgnoreCase)
            .ToArray();
        var kept = (await _stock.ClutchesAsync(cancel))
            .Where(c => (c.Clutch.Hatched?.Latest ?? c.Clutch.Laid.Latest.AddDays(DaysOfIncubation)).Year == year)
            .Select(c => new PastClutch(
                string.Join(" or ", c.Sires.Select(s => Name(state, s))),
                Name(state, c.Dam),
                c.Clutch.Laid.Words,
                c.Clutch.GoodEggs,
                [.. c.Young.Select(y => state.Find(y.AnimalId)).OfType<StockAnimal>().Select(Young)])
            {
                Tag = c.Clutch.Tag, Slugs = c.Clutch.Slugs, Counted = c.Clutch.Counted.Sum(y => y.Count),
            });

        // Young that were entered without a clutch, by their parents.
        var grouped = state.Animals
            .Where(a => a.Animal.ClutchId is null && a.Animal.Hatched is { } when && when.Earliest.Year == year && when.Latest.Year == year
                && (a.Animal.DamId is not null || a.Animal.SireId is not null))
            .GroupBy(a => (a.Animal.DamId, Sires: string.Join('|', Sires(a.Animal).Select(s => s.Value)), Date: a.Animal.DamId is null ? a.Animal.ClutchDate() : null))
            .Select(g => new PastClutch(
                string.Join(" or ", Sires(g.First().Animal).Select(state.Find).OfType<StockAnimal>().Select(s => SheetWords.Name(s.Animal))),
                g.Key.DamId is { } dam && state.Find(dam) is { } mother ? SheetWords.Name(mother.Animal) : string.Empty,
                string.Empty,
                null,
                [.. g.Select(Young)]));
        return new(year, pairings, [.. kept.Concat(grouped).OrderBy(c => c.Dam, StringComparer.OrdinalIgnoreCase)]);

        PastYoung Young(StockAnimal animal) =>
            new(animal.Animal.Tag, _stock.Catalogue.Wording.Look(animal.Shown), animal.Animal.Status.ToString(), animal.Animal.Hatched?.Words ?? string.Empty);
    }

    private static IReadOnlyList<AnimalId> Sires(Animal animal) => animal.SireId is { } sire ? [sire] : animal.PossibleSireIds;

    private static bool IsMale(StockState state, string tag) => state.Find(tag)?.Animal.Sex == Sex.Male;

    private static string Name(StockState state, string tag) => state.Find(tag) is { } known ? SheetWords.Name(known.Animal) : tag;
}
