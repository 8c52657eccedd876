using Clutchwright.Desk.Words;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Desk.Sheets;

/// <summary>Sets the summary of a season.</summary>
internal static class SeasonSheet
{
    public static SheetDocument Of(SeasonSummary season, DateOnly today)
    {
        var young = season.Clutches.SelectMany(c => c.Hatchlings).ToArray();
        var blocks = new List<SheetBlock>
        {
            new SheetBlock.Facts(
            [
                SheetWords.Fact("Pairings", $"{season.Pairings.Count:N0}"),
                SheetWords.Fact("Clutches", $"{season.Clutches.Count:N0}"),
                SheetWords.Fact("Good eggs counted", season.Clutches.Any(c => c.Eggs is not null) ? $"{season.Clutches.Sum(c => c.Eggs ?? 0):N0}" : "none"),
                SheetWords.Fact("Hatched", $"{young.Length + season.Clutches.Sum(c => c.Counted):N0}"),
                SheetWords.Fact("Kept, held back or for sale", Of("Kept", "HeldBack", "ForSale")),
                SheetWords.Fact("Sold", Of("Sold")),
                SheetWords.Fact("Given away", Of("Given")),
                SheetWords.Fact("Died", Of("Died")),
            ]),
        };
        blocks.Add(new SheetBlock.Heading("Pairings"));
        blocks.Add(season.Pairings.Count == 0
            ? new SheetBlock.Paragraph([new("None is written down.")])
            : new SheetBlock.Table(
                [new("Sire", 2), new("Dam", 2), new("Put together", 1), new("Locks seen", 1), new("From", 1.2), new("To", 1.2)],
                [.. season.Pairings.Select(p => SheetWords.Row(p.Sire, p.Dam, $"{p.Together:N0}", $"{p.Locks:N0}", p.From, p.To))]));
        blocks.Add(new SheetBlock.Heading("Clutches"));
        if (season.Clutches.Count == 0)
        {
            blocks.Add(new SheetBlock.Paragraph([new("None is recorded.")]));
        }

        foreach (var clutch in season.Clutches)
        {
            var laid = clutch.Laid.Length == 0 ? string.Empty : $", laid {clutch.Laid}";
            var eggs = clutch.Eggs is { } count ? $", {count:N0} good {(count == 1 ? "egg" : "eggs")}" : string.Empty;
            var slugs = clutch.Slugs is > 0 and var bad ? $", {bad:N0} {(bad == 1 ? "slug" : "slugs")}" : string.Empty;
            var tag = clutch.Tag.Length == 0 ? string.Empty : $"{clutch.Tag}: ";
            blocks.Add(new SheetBlock.Paragraph(
                [new($"{tag}{Known(clutch.Sire)} × {Known(clutch.Dam)}", TextStyle.Bold), new($"{laid}{eggs}{slugs}, {clutch.Hatchlings.Count + clutch.Counted:N0} hatched")]));
            if (clutch.Hatchlings.Count > 0)
            {
                blocks.Add(new SheetBlock.Table(
                    [new("Hatchling", 1), new("Hatched", 1), new("Look", 3), new("What became of it", 1.4)],
                    [.. clutch.Hatchlings.Select(h => (IReadOnlyList<IReadOnlyList<TextRun>>)[[new(h.Tag)], [new(h.Hatched)], [new(h.Look, TextStyle.Bold)], [new(RecordWords.Status(h.Status))]])]));
            }
        }

        return new($"Season {season.Year}", blocks) { Subtitle = $"Summary of what is recorded, as of {SheetWords.Day(today)}", Foot = SheetWords.Foot };

        string Of(params string[] statuses) => $"{young.Count(y => statuses.Contains(y.Status)):N0}";
    }

    private static string Known(string parent) => parent.Length == 0 ? "not known" : parent;
}
