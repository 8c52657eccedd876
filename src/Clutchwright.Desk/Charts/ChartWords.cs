using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Charts;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Charts;

/// <summary>Puts a symbol of a chart into a sentence.</summary>
internal static class ChartWords
{
    public static string Describe(ChartSymbol symbol, Animal? animal, AnimalWords? words)
    {
        if (animal is null || words is null)
        {
            return symbol.Kind == ChartSymbolKind.SeveralYoung ? $"{symbol.Young} more young" : "parent not recorded";
        }

        var name = animal.Name is null ? animal.Tag : $"{animal.Tag} {animal.Name}";
        if (symbol.Kind == ChartSymbolKind.Again)
        {
            return $"{name}, here a second time";
        }

        var sex = animal.Sex switch { Sex.Male => "male", Sex.Female => "female", null => "unsexed" };
        var seen = string.Join(' ', words.Parts.Where(p => p.IsSeen).Select(p => p.Text));
        var all = words.Parts.Where(p => !p.IsSeen).Select(p => p.Text).Prepend(seen).Where(t => t.Length > 0);
        var status = animal.Status is AnimalStatus.Kept ? string.Empty : $", {RecordWords.Status(animal.Status.ToString())}";
        return $"{name}, {sex}, {string.Join(", ", all)}{status}";
    }
}
