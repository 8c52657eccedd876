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
        var all = await _stock.HappeningsAsync(null, MostHappenings, cancel, HappeningKind.Introduced, HappeningKind.Locked, HappeningKind.Laid);
        var pairings = all
            .Where(h => h.Mate is not null && SeasonYear.At(h.When.Latest) == year)
            .GroupBy(h => (h.Tag, Mate: h.Mate!) is var (a, b) && IsMale(state, b) ? (Sire: b, Dam: a) : (Sire: h.Tag, Dam: h.Mate!))
            .Select(g => new SeasonPairing(
                Name(state, g.Key.Sire),
                Name(state, g.Key.Dam),
                g.Count(h => h.Kind == HappeningKind.Introduced),
                g.Count(h => h.Kind == HappeningKind.Locked),
                g.MinBy(h => h.When.Earliest)!.When.Words,
                g.MaxBy(h => h.When.Latest)!.When.Words))
            .OrderBy(p => p.Dam, StringComparer.OrdinalIgnoreCase)
            .ThenBy(p => p.Sire, StringComparer.OrdinalIgnoreCase)
            .ToArray();
        var laid = all.Where(h => h.Kind == HappeningKind.Laid && h.When.Latest.AddDays(DaysOfIncubation).Year == year).ToArray();
        var hatched = state.Animals
            .Where(a => a.Animal.Hatched is { } when && when.Earliest.Year == year && when.Latest.Year == year && (a.Animal.DamId is not null || a.Animal.SireId is not null))
            .GroupBy(a => (a.Animal.DamId, Sires: string.Join('|', Sires(a.Animal).Select(s => s.Value)), Date: a.Animal.DamId is null ? a.Animal.ClutchDate() : null))
            .Select(g =>
            {
                var dam = g.Key.DamId is { } id ? state.Find(id)?.Animal.Tag : null;
                var eggs = laid.FirstOrDefault(l => string.Equals(l.Tag, dam, StringComparison.OrdinalIgnoreCase));
                return (Dam: dam, Clutch: new SeasonClutch(
                    string.Join(" or ", Sires(g.First().Animal).Select(s => state.Find(s)).OfType<StockAnimal>().Select(s => SheetWords.Name(s.Animal))),
                    dam is null ? string.Empty : Name(state, dam),
                    eggs?.When.Words ?? string.Empty,
                    eggs?.Amount is { } count ? (int)count : null,
                    [.. g.Select(a => new SeasonYoung(a.Animal.Tag, _stock.Catalogue.Wording.Look(a.Shown), a.Animal.Status.ToString(), a.Animal.Hatched!.Words))]));
            })
            .ToArray();

        // Eggs of which no young is in the book are a clutch too.
        var unhatched = laid
            .Where(l => Array.TrueForAll(hatched, h => !string.Equals(h.Dam, l.Tag, StringComparison.OrdinalIgnoreCase)))
            .Select(l => new SeasonClutch(string.Empty, Name(state, l.Tag), l.When.Words, l.Amount is { } count ? (int)count : null, []));
        return new(year, pairings, [.. hatched.Select(h => h.Clutch).Concat(unhatched).OrderBy(c => c.Dam, StringComparer.OrdinalIgnoreCase)]);
    }

    private static IReadOnlyList<AnimalId> Sires(Animal animal) => animal.SireId is { } sire ? [sire] : animal.PossibleSireIds;

    private static bool IsMale(StockState state, string tag) => state.Find(tag)?.Animal.Sex == Sex.Male;

    private static string Name(StockState state, string tag) => state.Find(tag) is { } known ? SheetWords.Name(known.Animal) : tag;
}
