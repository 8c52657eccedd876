using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Labels;
using Clutchwright.Sheets.Texts;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Sheets;

/// <summary>How do the tub labels of these animals look?</summary>
public sealed class PrintLabels
{
    /// <summary>How old a weighing may be for a label to tell it, in days.</summary>
    public const int RecentDays = 60;

    /// <summary>The most labels printed at once.</summary>
    public const int Most = 2_000;

    private readonly SheetStock _stock;

    internal PrintLabels(SheetStock stock) => _stock = stock;

    /// <summary>Lays the labels out and writes the file, or says everything that was asked wrongly.</summary>
    public async Task<Answer<PrintedLabels>> RunAsync(LabelsQuestion question, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var layout = LabelLayoutReader.Read(question.Layout, problems);
        var state = await _stock.ReadAsync(cancel);
        var animals = SheetStock.Find(state, question.Tags, problems);
        if (animals.Count > Most)
        {
            problems.Add(new("animal", $"{animals.Count:N0} labels are more than the {Most:N0} that can be printed at once."));
        }

        SheetStock.Address(question.Link, "x", problems);
        if (problems.Count > 0 || layout is not var (grid, start))
        {
            return problems.ToArray();
        }

        var words = _stock.Words(state, cancel);
        var (labels, placed) = (new List<PrintedLabel>(), new List<PlacedLabel>());
        foreach (var animal in animals)
        {
            var said = words.Of(animal);
            var label = await LabelAsync(state, animal, said, question, cancel);
            var fitted = LabelFitter.Fit(label, grid.WidthMm, grid.HeightMm);
            placed.Add(fitted);
            labels.Add(new(
                animal.Animal.Tag,
                said,
                fitted.LeftOut,
                fitted.CodeText is null ? CodeUse.None : question.Link is { Length: > 0 } ? CodeUse.Link : CodeUse.Text,
                fitted.CodeText));
        }

        var pages = grid.Lay(placed, start - 1, question.WithOutlines);
        return new PrintedLabels(
            PdfWriter.Write(placed.Count == 1 ? $"Label of {placed[0].Tag}" : $"{placed.Count} tub labels", "en", _stock.Now, pages), grid, start, labels, pages, [.. Doubts(animals), .. Notes(placed)]);
    }

    private async Task<TubLabel> LabelAsync(StockState state, StockAnimal animal, LabelWords said, LabelsQuestion question, CancellationToken cancel)
    {
        var record = animal.Animal;
        var hatched = record.Hatched is { } when ? $", hatched {when.Words}" : string.Empty;
        var entries = new List<LabelEntry>
        {
            new("name", [new(record.Name ?? string.Empty)], 30),
            new("look", Runs([.. said.Seen], p => p.Note), 100) { Shorter = Runs([.. said.Seen], p => p.ShortNote) },
            new("what it carries", Runs([.. said.Carried], p => p.Note), 95) { Shorter = Runs([.. said.Carried], p => p.ShortNote) },
            new("sex and hatch date", [new($"{SheetWords.TradeSex(record.Sex)} {SheetWords.Sex(record.Sex)}{hatched}")], 90)
            {
                Shorter = [new($"{SheetWords.TradeSex(record.Sex)}{hatched.Replace(", hatched", string.Empty, StringComparison.Ordinal)}")],
            },
        };
        var parents = SheetWords.Parents(state, record);
        if (parents is not null)
        {
            entries.Add(new("parents", [new(parents)], 50) { Shorter = [new(Short(state, animal))] });
        }

        if (await _stock.HappeningsAsync(record.AnimalId, 1, cancel, HappeningKind.Weighed) is [{ Amount: { } grams } weighed, ..] && weighed.When.Latest.AddDays(RecentDays) >= _stock.Today)
        {
            entries.Add(new("weight", [new($"{SheetWords.Grams(grams)}, {weighed.When.Words}")], 40));
        }

        var sex = SheetWords.Sex(record.Sex);
        string[] codes = !question.WithCode ? []
            : SheetStock.Address(question.Link, record.Tag, []) is { } address ? [address]
            : [$"{SheetWords.Name(record)}; {sex}{hatched}; {said.Text}{(parents is null ? string.Empty : $"; {parents}")}; as of {SheetWords.Day(said.AsOf)}", $"{record.Tag}; {sex}; {said.Text}"];
        return new(record.Tag, entries) { Codes = codes };
    }

    private static IReadOnlyList<TextRun> Runs(IReadOnlyList<LabelPart> parts, Func<LabelPart, string> note) => SheetWords.Runs(new LabelWords(parts, [], default), note);

    private static string Short(StockState state, StockAnimal animal)
    {
        var record = animal.Animal;
        var sires = (record.SireId is { } sire ? [sire] : record.PossibleSireIds).Select(state.Find).OfType<StockAnimal>().Select(s => s.Animal.Tag).ToArray();
        var dam = record.DamId is { } id ? state.Find(id)?.Animal.Tag : null;
        return $"{(sires.Length == 0 ? "?" : string.Join('|', sires))} × {dam ?? "?"}";
    }

    // What is in doubt should not be printed before it is looked at.
    private static IEnumerable<string> Doubts(IReadOnlyList<StockAnimal> animals) => animals
        .Where(a => a.Problems.Count > 0)
        .Select(a => $"Before you label {a.Animal.Tag}: {string.Join(" ", a.Problems)}");

    private static List<string> Notes(List<PlacedLabel> labels)
    {
        var notes = labels
            .Where(l => l.LeftOut.Count > 0)
            .GroupBy(l => string.Join(", ", l.LeftOut))
            .Select(g => $"No room for {g.Key} on the label of {string.Join(", ", g.Take(8).Select(l => l.Tag))}{(g.Count() > 8 ? $" and {g.Count() - 8} more" : string.Empty)}. A larger label has it.")
            .ToList();
        if (PrintableText.Note([.. labels.SelectMany(l => l.Missing).Distinct()]) is { } note)
        {
            notes.Add(note);
        }

        return notes;
    }
}
