using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Opened;

/// <summary>Puts records that cannot all be true into a sentence.</summary>
internal static class ClashWords
{
    public static string Of(StockRecord record, ClashingRecords clash)
    {
        var loci = string.Join(", ", clash.Groups.SelectMany(g => g.Loci).Select(l => l.Name).Take(3));
        var said = clash.Records.Select(r => Record(record, r)).Distinct(StringComparer.Ordinal).ToArray();
        return $"These records cannot all be true ({loci}): {string.Join("; ", said)}. One of them is wrong, or a parent is another.";
    }

    public static string Record(StockRecord record, RecordPlace place)
    {
        var entry = record[place.Key];
        var statement = entry.Read.Statements[place.Index];
        return $"{entry.Animal.Tag}: {(statement.Kind == StatementKind.LookedAtNormal ? "looked at and normal" : StatementWords.Of(statement.Kind, statement.Text))}";
    }
}
