using Clutchwright.Desk.Charts;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Desk.Sheets;

/// <summary>The lineage of an animal: the drawing, its key, and the same in words.</summary>
internal static class LineageSheet
{
    public static SheetDocument Of(ChartAnswer chart, DateOnly today)
    {
        var name = string.IsNullOrEmpty(chart.Name) ? chart.Tag : $"{chart.Tag} {chart.Name}";
        var title = $"Lineage of {name}";
        var rows = chart.List.Select(l => l.Row).Distinct().Count();
        var blocks = new List<SheetBlock>();
        if (chart.List.Count == 0)
        {
            blocks.Add(new SheetBlock.Paragraph([new("No parent of this animal is recorded.")]));
        }
        else
        {
            blocks.Add(new SheetBlock.Drawing(ChartPicture.Of(
                chart, $"{title}: {chart.List.Count} animals in {rows} {(rows == 1 ? "generation" : "generations")}, the oldest at the top. The same stands below in words.")));
            blocks.Add(new SheetBlock.Paragraph([new(Key(chart))], IsSmall: true));
            blocks.Add(new SheetBlock.Heading("In words"));
            blocks.Add(new SheetBlock.Table(
                [new("Generation", 0.9), new("Animal", 1.6), new("Sex", 0.7), new("Genotype as believed", 3), new("Parents", 2)],
                [.. chart.List.OrderByDescending(l => l.Row).Select(l => (IReadOnlyList<IReadOnlyList<TextRun>>)
                [
                    [new($"{rows - l.Row}")],
                    [new(string.IsNullOrEmpty(l.Name) ? l.Tag : $"{l.Tag} {l.Name}")],
                    [new(SheetWords.Sex(l.Sex))],
                    Genotype(chart, l),
                    [new(Parents(l))],
                ])]));
        }

        if (chart.NotDrawn > 0)
        {
            blocks.Add(new SheetBlock.Paragraph([new(chart.NotDrawn == 1 ? "1 animal is not drawn one by one." : $"{chart.NotDrawn} animals are not drawn one by one.")], IsSmall: true));
        }

        return new(title, blocks) { Subtitle = $"As recorded and believed on {SheetWords.Day(today)}", Foot = SheetWords.Foot };
    }

    private static string Key(ChartAnswer chart)
    {
        var marked = chart.Marked.Count == 0 ? string.Empty
            : $" Filled for {string.Join(", ", chart.Marked.Select(m => m.Name))}: whole, it shows; half, it carries one copy surely; less, as likely as it is to carry it.";
        return "Square: male. Circle: female. Diamond: not sexed. Struck through: dead. Grey: not in the room. Double line: the two are kin. Dashed: one of several possible sires. "
            + $"Ring with ?: not recorded. Hook above: more parents are recorded.{marked}";
    }

    private static IReadOnlyList<TextRun> Genotype(ChartAnswer chart, ChartListLine line)
    {
        var chances = chart.Marked
            .Zip(line.Chances)
            .Where(p => p.Second.Value > Probability.RoundingTolerance && !p.Second.IsCertain)
            .Select(p => $"{p.First.Name} {OddsText.RatioAndPercent(p.Second)}")
            .ToArray();
        return chances.Length == 0 ? SheetWords.Runs(line.Words) : [.. SheetWords.Runs(line.Words), new($" ({string.Join(", ", chances)})")];
    }

    private static string Parents(ChartListLine line) => (line.Sires.Count, line.Dam) switch
    {
        (0, null) => "not recorded",
        (0, _) => $"sire not recorded × {line.Dam}",
        (_, null) => $"{string.Join(" or ", line.Sires)} × dam not recorded",
        _ => $"{string.Join(" or ", line.Sires)} × {line.Dam}{(line.AreParentsKin ? ", who are kin" : string.Empty)}",
    };
}
