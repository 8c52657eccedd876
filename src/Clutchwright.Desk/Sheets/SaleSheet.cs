using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Sheets.Pages;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Sheets;

/// <summary>What goes with an animal when it is sold: the fields that some laws ask a seller to keep, its genotype with the grounds, its meals, its welfare.</summary>
internal sealed class SaleSheet(SheetStock stock, StockState state, SaleForm form, bool hasSmallPhotos)
{
    private const int MostMeals = 10;
    private const int MostWeighings = 6;
    private const int MostNameLength = 200;
    private const string Legal =
        "This is the keeper's own record, no legal document and no promise of what the law asks for: that differs by place. Follow local law. "
        + "Some places ask sellers for a register of supplier, sex, age, veterinary treatment, birth or acquisition, sale and death; the fields above stand for those. "
        + "Ask a reptile veterinarian about the health of the animal.";

    /// <summary>The form as it is printed; tells what cannot be.</summary>
    public static SaleForm Read(SaleForm form, List<AskedWrongly> problems)
    {
        var sold = string.IsNullOrWhiteSpace(form.Sold) ? null : AnimalForms.Date("sold", form.Sold.Trim(), problems)?.Words;
        var source = string.IsNullOrWhiteSpace(form.Source) ? null : form.Source.Trim().ToUpperInvariant();
        if (source is not null && SaleForm.Sources.All(s => s.Code != source))
        {
            problems.Add(new("source", $"\"{form.Source}\" is no source code that a python can have. One of: {string.Join(", ", SaleForm.Sources.Select(s => $"{s.Code} ({s.Words})"))}."));
        }

        return new() { Supplier = Name("supplier", form.Supplier), Buyer = Name("buyer", form.Buyer), Sold = sold, Source = source };

        string? Name(string where, string? name)
        {
            if (name is { Length: > MostNameLength })
            {
                problems.Add(new(where, $"A name has at most {MostNameLength} letters."));
            }

            return string.IsNullOrWhiteSpace(name) ? null : name.Trim();
        }
    }

    public async Task<SheetDocument> OfAsync(StockAnimal animal, CancellationToken cancel)
    {
        var record = animal.Animal;
        var words = stock.Words(state, cancel).Of(animal);
        var health = await stock.HappeningsAsync(record.AnimalId, 20, cancel, HappeningKind.Health);
        var meals = await stock.HappeningsAsync(record.AnimalId, MostMeals, cancel, HappeningKind.Fed, HappeningKind.FoodRefused);
        var weighed = await stock.HappeningsAsync(record.AnimalId, MostWeighings, cancel, HappeningKind.Weighed);
        var comings = await stock.HappeningsAsync(record.AnimalId, 20, cancel, HappeningKind.Acquired, HappeningKind.Sold, HappeningKind.Died);
        var blocks = new List<SheetBlock>
        {
            new SheetBlock.Paragraph(SheetWords.Runs(words), IsLead: true),
            new SheetBlock.Facts([.. Facts(record, health, comings)]),
        };
        blocks.AddRange(await stock.PhotoAsync(record, hasSmallPhotos, cancel));
        blocks.AddRange(RecordSheet.Dangers(stock, animal));
        if (animal.Problems.Count > 0)
        {
            blocks.Add(new SheetBlock.Note("Records in doubt.", [new(string.Join(" ", animal.Problems))]));
        }

        blocks.Add(new SheetBlock.Heading("Genotype, and on what it rests"));
        blocks.Add(new SheetBlock.Points([.. words.Parts.Select(p => SheetWords.Runs(new([p], [], words.AsOf), Grounds))]));
        blocks.Add(new SheetBlock.Paragraph(
            [new($"Reckoned on {SheetWords.Day(words.AsOf)} from this keeper's records. A percentage is never more than is believed; the exact chance stands beside it.")], IsSmall: true));
        blocks.Add(new SheetBlock.Heading("Last meals"));
        blocks.Add(meals.Count == 0
            ? new SheetBlock.Paragraph([new("No meal is written down.")])
            : new SheetBlock.Table([new("When", 1), new("What", 2), new("What else", 3)], [.. meals.Select(m => SheetWords.Row(m.When.Words, HappeningRules.Words(m.Kind, m.Amount, string.Empty), m.Text))]));
        if (weighed.Count > 0)
        {
            blocks.Add(new SheetBlock.Paragraph([new($"Weighed: {string.Join("; ", weighed.Select(w => $"{w.When.Words} {SheetWords.Grams(w.Amount ?? 0)}"))}.")]));
        }

        blocks.Add(new SheetBlock.Paragraph([new(Legal)], IsSmall: true));
        blocks.Add(new SheetBlock.Signatures(["Supplier: signature, date", "Buyer: signature, date"]));
        return new($"Sale of {SheetWords.Name(record)}", blocks)
        {
            Subtitle = $"{stock.Catalogue.Catalogue.Name} ({stock.Catalogue.Catalogue.TradeName}), as of {SheetWords.Day(stock.Today)}", Foot = SheetWords.Foot,
        };
    }

    private static string Grounds(LabelPart part) => part.Basis == LabelBasis.Seen ? "seen on the animal" : part.Note;

    private IEnumerable<SheetFact> Facts(Animal record, IReadOnlyList<HappeningLine> health, IReadOnlyList<HappeningLine> comings)
    {
        yield return Given("Supplier's full name", form.Supplier);
        yield return Given("Buyer's full name", form.Buyer);
        yield return SheetWords.Fact("Animal", SheetWords.Name(record));
        yield return SheetWords.Fact("Sex", SheetWords.Sex(record.Sex));
        yield return Given("Date of birth or acquisition", Both(record.Hatched is { } hatched ? $"hatched {hatched.Words}" : null, When(HappeningKind.Acquired) is { } came ? $"acquired {came}" : null));
        yield return SheetWords.Fact("Age", Age(record.Hatched));
        yield return SheetWords.Fact("Parents", SheetWords.Parents(state, record) ?? "not recorded");
        yield return SheetWords.Fact("Veterinary treatment", health.Count == 0 ? "none is written down" : string.Join("; ", health.Select(h => $"{h.When.Words}: {h.Text}")));
        yield return SheetWords.Fact("CITES", "Appendix II (in the European Union: Annex B)");
        yield return Given("Source code", form.Source is { } source ? $"{source}: {SaleForm.Sources.First(s => s.Code == source).Words}" : null);
        yield return Given("Date of sale", form.Sold ?? When(HappeningKind.Sold));
        yield return Given("Date of death", When(HappeningKind.Died));

        string? When(HappeningKind kind) => comings.Where(c => c.Kind == kind).Select(c => c.When.Words).FirstOrDefault();
    }

    private static string? Both(string? one, string? other) => one is null ? other : other is null ? one : $"{one}; {other}";

    // Whole months that have surely passed.
    private string Age(DateRange? hatched)
    {
        if (hatched is null)
        {
            return "not known";
        }

        var (from, to) = (Months(hatched.Latest), Months(hatched.Earliest));
        return from == to ? $"{Said(from)} on {SheetWords.Day(stock.Today)}" : $"{Said(from)} to {Said(to)} on {SheetWords.Day(stock.Today)}";

        int Months(DateOnly day)
        {
            var months = ((stock.Today.Year - day.Year) * 12) + stock.Today.Month - day.Month;
            return Math.Max(0, stock.Today.Day < day.Day ? months - 1 : months);
        }

        static string Said(int months) => months < 24 ? $"{months} {(months == 1 ? "month" : "months")}" : $"{months / 12} years{(months % 12 == 0 ? string.Empty : $" {months % 12} months")}";
    }

    private static SheetFact Given(string name, string? value) => value is null ? new(name, null) : SheetWords.Fact(name, value);
}
