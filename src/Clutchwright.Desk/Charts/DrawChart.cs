using System.Globalization;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees;
using Clutchwright.Pedigrees.Charts;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Charts;

/// <summary>How does the pedigree of this animal, or of the stock, look as a drawing?</summary>
public sealed class DrawChart
{
    private static readonly ChartMeasures Measures = new() { Symbol = 28, LabelWidth = 96, Gap = 16, Air = 13, Track = 9, Margin = 26 };

    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs _stock;

    internal DrawChart(OpenCatalogue catalogue, StockBeliefs stock)
    {
        _catalogue = catalogue;
        _stock = stock;
    }

    /// <summary>Draws, or says everything that was asked wrongly.</summary>
    public async Task<Answer<ChartAnswer>> RunAsync(ChartQuestion question, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        CheckRange("up", question.Up, 0, ChartQuestion.MostGenerations, problems);
        CheckRange("down", question.Down, 0, ChartQuestion.MostGenerations, problems);
        CheckRange("most", question.Most, 1, ChartQuestion.MostAnimals, problems);
        CheckRange("young", question.MostYoung, 0, ChartQuestion.MostAnimals, problems);
        var asked = question.Genes is null ? [] : ChartMarks.Read(_catalogue, question.Genes, problems);
        var state = await _stock.ReadAsync(cancel);
        StockAnimal? about = null;
        if (!string.IsNullOrWhiteSpace(question.Tag) && (about = state.Find(question.Tag)) is null)
        {
            problems.Add(new("animal", $"The stock has no animal {question.Tag.Trim()}.", DidYouMean: NearWords.Of(question.Tag, state.Animals.Select(a => a.Animal.Tag))));
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        // Siblings of one day stand in the order of the stock.
        var keys = state.Animals.Select((a, i) => (a.Animal.AnimalId, Key: i.ToString("D6", CultureInfo.InvariantCulture))).ToDictionary(k => k.AnimalId, k => k.Key);
        var pedigree = Pedigree.Of(state.Animals.Select(a => new PedigreeAnimal(
            keys[a.Animal.AnimalId],
            a.Animal.SireId is { } sire ? keys.GetValueOrDefault(sire) : null,
            a.Animal.DamId is { } dam ? keys.GetValueOrDefault(dam) : null,
            [.. a.Animal.PossibleSireIds.Where(keys.ContainsKey).Select(id => keys[id])])));
        var scope = new ChartScope(about is null ? null : keys[about.Animal.AnimalId])
        {
            GenerationsUp = question.Up,
            GenerationsDown = question.Down,
            IsWhole = question.IsWhole,
            Most = question.Most,
            MostYoung = question.MostYoung,
        };

        // What is believed is asked only of those that are drawn: first who they are, then the room that their labels need.
        var byKey = state.Animals.ToDictionary(a => keys[a.Animal.AnimalId], StringComparer.Ordinal);
        var known = byKey.ToDictionary(a => a.Key, a => Known(a.Key, a.Value), StringComparer.Ordinal);
        var drawn = PedigreeChart.Of(pedigree, known, scope, Measures).Symbols
            .Where(s => s.Kind == ChartSymbolKind.Animal)
            .Select(s => byKey[s.Animal!.Key])
            .ToArray();
        cancel.ThrowIfCancellationRequested();
        var marked = question.Genes is null ? (ChartMarks.MostCarried(drawn) is { } most ? [most] : []) : asked;
        var words = drawn.ToDictionary(a => a, a => _catalogue.Wording.Animal(a.Belief.Genotype));
        var labels = drawn.ToDictionary(a => a, a => ChartLabel.Of(a.Animal.Tag, a.Animal.Name, words[a], [.. marked.Select(m => m.Id)], Measures.LabelWidth));
        foreach (var animal in drawn)
        {
            var key = keys[animal.Animal.AnimalId];
            known[key] = known[key] with { LabelHeight = (labels[animal].Count * ChartLabel.LineHeight) + 8 };
        }

        var chart = PedigreeChart.Of(pedigree, known, scope, Measures);
        var kin = chart.Sibships
            .Where(s => s.Descents.Any(d => chart.Matings[d.Mating].IsBetweenKin))
            .SelectMany(s => s.Young)
            .Select(y => chart.Symbols[y.Symbol].Animal?.Key)
            .ToHashSet();
        return new ChartAnswer(
            about?.Animal.Tag,
            about?.Animal.Name,
            chart.Width,
            chart.Height,
            Measures.Symbol,
            Measures.LabelWidth,
            [.. chart.Symbols.Select(s => Symbol(s, s.Animal is { } a ? byKey[a.Key] : null))],
            ChartStrokes.Of(chart),
            [.. marked.Select(Gene)],
            [.. ChartMarks.Of(drawn).Concat(marked).Distinct().OrderBy(a => a.Name, StringComparer.OrdinalIgnoreCase).Select(Gene)],
            [.. chart.Symbols.Where(s => s.Kind == ChartSymbolKind.Animal).Select(s => Line(state, byKey[s.Animal!.Key], s))],
            chart.NotDrawn);

        ChartSymbolLine Symbol(ChartSymbol symbol, StockAnimal? animal) => new((SymbolMeaning)(int)symbol.Kind, symbol.X, symbol.Y)
        {
            Tag = animal?.Animal.Tag,
            Sex = animal?.Animal.Sex,
            IsAskedAbout = symbol.IsAskedAbout,
            IsDead = animal?.Animal.Status == AnimalStatus.Died,
            IsHere = animal?.IsHere != false,
            Young = symbol.Young,
            HasMoreParents = symbol.HasMoreParents,
            MoreYoung = symbol.MoreYoung,
            Filled = animal is null ? [] : [.. marked.Select(m => ChartMarks.Of(animal, m).FilledShare)],
            Label = animal is null ? [] : symbol.Kind == ChartSymbolKind.Again ? [.. labels[animal].TakeWhile(l => l.Style is LabelStyle.Tag or LabelStyle.Name)] : labels[animal],
            Description = ChartWords.Describe(symbol, animal?.Animal, animal is null ? null : words[animal]),
        };

        ChartListLine Line(StockState stock, StockAnimal animal, ChartSymbol symbol) => new(
            animal.Animal.Tag,
            animal.Animal.Name,
            animal.Animal.Sex,
            words[animal],
            [.. (animal.Animal.SireId is { } sire ? [sire] : animal.Animal.PossibleSireIds).Select(id => stock.Find(id)?.Animal.Tag).OfType<string>()],
            animal.Animal.DamId is { } dam ? stock.Find(dam)?.Animal.Tag : null,
            kin.Contains(symbol.Animal!.Key),
            [.. marked.Select(animal.Belief.Genotype.ChanceOfCarrying)],
            symbol.Row);
    }

    private static void CheckRange(string where, int number, int least, int most, List<AskedWrongly> problems)
    {
        if (number < least || number > most)
        {
            problems.Add(new(where, $"{number} is out of range. Give a whole number from {least} to {most}."));
        }
    }

    private static ChartGene Gene(Allele allele) => new(allele.Id, allele.Name);

    private static ChartAnimal Known(string key, StockAnimal animal) => new(key, animal.Animal.Sex)
    {
        Hatched = animal.Animal.Hatched is { } hatched ? hatched.Earliest.AddDays((hatched.Latest.DayNumber - hatched.Earliest.DayNumber) / 2) : null,
        IsDeceased = animal.Animal.Status == AnimalStatus.Died,
    };
}
