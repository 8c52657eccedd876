using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Texts;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Sheets;

/// <summary>All that is recorded of an animal, and what is believed of it with the reasons.</summary>
internal sealed class RecordSheet(SheetStock stock, StockState state, bool hasSmallPhotos)
{
    private const int MostHappenings = 2_000;
    private const int MostWeighings = 40;
    private const int DaysOfLog = 365;

    public async Task<SheetDocument> OfAsync(StockAnimal animal, CancellationToken cancel)
    {
        var record = animal.Animal;
        var words = stock.Words(state, cancel).Of(animal);
        var blocks = new List<SheetBlock> { new SheetBlock.Paragraph(SheetWords.Runs(words), IsLead: true) };
        blocks.AddRange(await stock.PhotoAsync(record, hasSmallPhotos, cancel));
        blocks.AddRange(Dangers(stock, animal));
        blocks.Add(new SheetBlock.Facts([.. Facts(animal)]));
        if (animal.Problems.Count > 0)
        {
            blocks.Add(new SheetBlock.Note("Look at this.", [new(string.Join(" ", animal.Problems))]));
        }

        if (record.Statements.Count > 0)
        {
            blocks.Add(new SheetBlock.Heading("What was said of it"));
            blocks.Add(new SheetBlock.Table(
                [new("", 1.4), new("What", 2.4), new("By", 1.2), new("When", 1), new("How sure", 0.7)],
                [.. record.Statements.OrderBy(s => s.Kind).ThenBy(s => s.StatementId.Value).Select(AnimalWording.Line).Select(s => SheetWords.Row(
                    RecordWords.Statement(s.Kind), s.Text, s.Who ?? "not said", s.When ?? "not said", $"{s.Confidence * 100:0.#}%"))]));
        }

        blocks.AddRange(Beliefs(animal, cancel));
        var all = await stock.HappeningsAsync(record.AnimalId, MostHappenings, cancel);
        blocks.AddRange(Weights(all));
        blocks.AddRange(Log(all));
        blocks.AddRange(Young(animal));
        if (record.Notes.Length > 0)
        {
            blocks.Add(new SheetBlock.Heading("Notes"));
            blocks.Add(new SheetBlock.Paragraph([new(record.Notes)]));
        }

        return new(SheetWords.Name(record), blocks) { Subtitle = $"Animal record, as of {SheetWords.Day(stock.Today)}", Foot = SheetWords.Foot };
    }

    /// <summary>What is known to be dangerous or cruel about its own genotype.</summary>
    internal static IEnumerable<SheetBlock> Dangers(SheetStock stock, StockAnimal animal) => stock.Catalogue.Species.Dangers
        .Where(d => !d.ChanceIn(animal.Belief.Genotype).IsImpossible)
        .OrderByDescending(d => d.Severity)
        .Select(d =>
        {
            var chance = d.ChanceIn(animal.Belief.Genotype);
            var warning = stock.Catalogue.Wording.Danger(d, chance.IsCertain ? null : $"Its chance here: {OddsText.RatioAndPercent(chance)}.");
            var grade = warning.Grade is null ? string.Empty : $" ({warning.Grade})";
            return new SheetBlock.Note($"Welfare: {stock.Catalogue.Wording.Condition(d)}.", [new(warning.Text + grade)]);
        });

    private IEnumerable<SheetFact> Facts(StockAnimal animal)
    {
        var record = animal.Animal;
        yield return SheetWords.Fact("Species", $"{stock.Catalogue.Catalogue.Name} ({stock.Catalogue.Catalogue.TradeName})");
        yield return SheetWords.Fact("Tag", record.Tag);
        if (record.Name is { Length: > 0 } name)
        {
            yield return SheetWords.Fact("Name", name);
        }

        yield return SheetWords.Fact("Sex", SheetWords.Sex(record.Sex));
        yield return SheetWords.Fact("Hatched", record.Hatched?.Words ?? "not known");
        yield return SheetWords.Fact("Status", RecordWords.Status(record.Status.ToString()));
        yield return SheetWords.Fact("Parents", SheetWords.Parents(state, record) ?? "not recorded");
        if (record.MassGrams is { } grams)
        {
            yield return SheetWords.Fact("Last weighed", SheetWords.Grams(grams));
        }

        yield return SheetWords.Fact("In genetics' notation", stock.Catalogue.Wording.Animal(animal.Belief.Genotype).Notation);
    }

    private IEnumerable<SheetBlock> Beliefs(StockAnimal animal, CancellationToken cancel)
    {
        var beliefs = AnimalWording.Beliefs(stock.Catalogue, state.Record, animal, cancel);
        if (beliefs.Count == 0)
        {
            yield break;
        }

        yield return new SheetBlock.Heading("What it carries, and how that is known");
        foreach (var belief in beliefs)
        {
            var runs = new List<TextRun> { new($"{belief.Locus}: ", TextStyle.Bold) };
            foreach (var possible in belief.Possibilities)
            {
                runs.Add(new($"{(runs.Count > 1 ? "; " : string.Empty)}{possible.Text} {(possible.Chance.IsCertain ? "for certain" : OddsText.RatioAndPercent(possible.Chance))}"));
            }

            yield return new SheetBlock.Paragraph(runs);
            yield return new SheetBlock.Points([.. belief.Why.Select(w => (IReadOnlyList<TextRun>)
                [new(w.Value is { } value ? $"{w.Text} {OddsText.RatioAndPercent(value)}" : w.Text)])]);
        }
    }

    private static IEnumerable<SheetBlock> Weights(IReadOnlyList<HappeningLine> all)
    {
        var weighed = all.Where(h => h.Kind == HappeningKind.Weighed).ToArray();
        if (weighed.Length == 0)
        {
            yield break;
        }

        yield return new SheetBlock.Heading("Weights");
        yield return new SheetBlock.Paragraph([new(string.Join("; ", weighed.Take(MostWeighings).Select(w => $"{w.When.Words}: {SheetWords.Grams(w.Amount ?? 0)}"))
            + (weighed.Length > MostWeighings ? $"; and {weighed.Length - MostWeighings} earlier weighings" : string.Empty))]);
    }

    private IEnumerable<SheetBlock> Log(IReadOnlyList<HappeningLine> all)
    {
        var year = all.Where(h => h.When.Latest >= stock.Today.AddDays(-DaysOfLog)).ToArray();
        yield return new SheetBlock.Heading("Log of the last year");
        if (year.Length == 0)
        {
            yield return new SheetBlock.Paragraph([new("Nothing is written down.")]);
            yield break;
        }

        yield return new SheetBlock.Table(
            [new("When", 1), new("What", 1.6), new("With", 0.8), new("What else", 3)],
            [.. year.Select(Happenings.ListHappenings.Words).Select(h => SheetWords.Row(h.When, h.What, h.Mate ?? string.Empty, h.Text))]);
    }

    private IEnumerable<SheetBlock> Young(StockAnimal animal)
    {
        var id = animal.Animal.AnimalId;
        var young = state.Animals.Where(a => a.Animal.SireId == id || a.Animal.DamId == id).ToArray();
        if (young.Length > 0)
        {
            yield return new SheetBlock.Heading(young.Length == 1 ? "1 young" : $"{young.Length} young");
            yield return new SheetBlock.Table(
                [new("Animal", 1.4), new("Hatched", 1), new("Genotype as believed", 3)],
                [.. young.Select(y => (IReadOnlyList<IReadOnlyList<TextRun>>)
                [
                    [new(SheetWords.Name(y.Animal))],
                    [new(y.Animal.Hatched?.Words ?? string.Empty)],
                    SheetWords.Runs(stock.Catalogue.Wording.Animal(y.Belief.Genotype)),
                ])]);
        }
    }
}
