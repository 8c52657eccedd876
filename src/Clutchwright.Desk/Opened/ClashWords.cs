using Clutchwright.Desk.Carry;
using Clutchwright.Desk.Words;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Opened;

/// <summary>Puts records that cannot all be true into a sentence.</summary>
internal static class ClashWords
{
    private const int MostTold = 3;
    private const double LeastTold = 0.05;

    public static string Of(StockRecord record, ClashingRecords clash)
    {
        var loci = string.Join(", ", clash.Groups.SelectMany(g => g.Loci).Select(l => l.Name).Take(3));
        var said = clash.Records.Select(r => Record(record, r)).Distinct(StringComparer.Ordinal).ToArray();
        return $"These records cannot all be true ({loci}): {string.Join("; ", said)}. One of them is wrong, or a parent is another.";
    }

    /// <summary>The same with what probably went wrong, and what to check first.</summary>
    public static string Of(StockRecord record, ClashingRecords clash, Contradiction contradiction)
    {
        var likely = contradiction.Causes.Where(c => c.Chance.Value >= LeastTold).Take(MostTold).ToArray();
        return likely.Length == 0
            ? Of(record, clash)
            : $"{Of(record, clash)} Most likely: {string.Join(" ", likely.Select(c => $"{c.Text.TrimEnd('.')} ({OddsText.Percent(c.Chance)})."))} To check: {likely[0].Check}";
    }

    public static string Record(StockRecord record, RecordPlace place)
    {
        var entry = record[place.Key];
        var statement = entry.Read.Statements[place.Index];
        return $"{entry.Animal.Tag}: {(statement.Kind == StatementKind.LookedAtNormal ? "looked at and normal" : StatementWords.Of(statement.Kind, statement.Text))}";
    }
}
