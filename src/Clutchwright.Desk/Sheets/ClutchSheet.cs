using Clutchwright.Desk.Words;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Desk.Sheets;

/// <summary>Sets a clutch card.</summary>
internal static class ClutchSheet
{
    // So many eggs stand in a row where the odds are no ratio of few eggs.
    private const int Eggs = 20;
    private const int MostExact = 32;

    public static SheetDocument Of(ClutchCard card, DateOnly today)
    {
        var blocks = new List<SheetBlock>
        {
            new SheetBlock.Facts(
            [
                .. card.Sires.Count == 0
                    ? [new SheetFact("Sire", [new("not known")])]
                    : card.Sires.Select(s => new SheetFact(card.Sires.Count == 1 ? "Sire" : "Possible sire", [new($"{s.Name}  "), .. SheetWords.Runs(s.Words)])),
                new("Dam", [new($"{card.Dam.Name}  "), .. SheetWords.Runs(card.Dam.Words)]),
                Given("Laid", card.Laid),
                Given("Good eggs", card.Eggs is { } eggs ? $"{eggs:N0}" : null),
                .. card.More.Select(m => SheetWords.Fact(m.Name, m.Text)),
                card.Expected is var (from, to)
                    ? SheetWords.Fact("Expected to hatch", $"{SheetWords.Day(from)} to {SheetWords.Day(to)} {card.ExpectedWhy}", TextStyle.Bold)
                    : new("Expected to hatch", card.ExpectedWhy.Length == 0 ? null : [new(card.ExpectedWhy)]),
            ]),
        };
        blocks.AddRange(card.Warnings.Select(w => new SheetBlock.Note(
            w.Severity == "note" ? "Note." : "Welfare.", [new(w.Grade is null ? w.Text : $"{w.Text} ({w.Grade})")])));
        if (card.Odds.Count == 0)
        {
            blocks.Add(new SheetBlock.Heading("What can hatch"));
            blocks.Add(new SheetBlock.Paragraph([new("The sire is not known, so no odds are given.")]));
        }

        foreach (var odds in card.Odds)
        {
            blocks.Add(new SheetBlock.Heading(odds.Sire is null ? "What can hatch" : $"What can hatch if {odds.Sire} is the sire"));
            blocks.AddRange(odds.Looks.Select(Look));
            if (odds.HasMore)
            {
                blocks.Add(new SheetBlock.Paragraph([new("There are more looks, each less likely than these.")], IsSmall: true));
            }
        }

        blocks.Add(new SheetBlock.Heading("What hatched"));
        blocks.Add(new SheetBlock.Facts([new("Pipped", null), new("Hatched", null), new("What each is", null), new("", null), new("", null)]));
        return new(card.Name is null ? $"Clutch of {string.Join(" or ", card.Sires.Select(s => s.Name))} × {card.Dam.Name}" : $"Clutch {card.Name}", blocks)
        {
            Subtitle = $"Clutch card, as of {SheetWords.Day(today)}", Foot = SheetWords.Foot,
        };
    }

    private static SheetBlock.Eggs Look(ClutchLook look)
    {
        var (filled, count) = look.Chance.Exact is { } exact && exact.Denominator <= MostExact
            ? ((int)exact.Numerator, (int)exact.Denominator)
            : ((int)Math.Round(look.Chance.Value * Eggs), Eggs);
        var runs = new List<TextRun> { new(look.Name, TextStyle.Bold) };
        if (look.Label is not null)
        {
            runs.Add(new($" “{look.Label}”"));
        }

        runs.Add(new($"{(look.Sex is null ? string.Empty : $", {look.Sex}")}: {OddsText.RatioAndPercent(look.Chance)}"));
        if (filled == 0 && !look.Chance.IsImpossible)
        {
            runs.Add(new($", fewer than 1 of {count}"));
        }

        foreach (var hidden in look.Hidden)
        {
            runs.Add(new("; "));
            runs.Add(new(hidden, TextStyle.Italic));
        }

        return new(filled, count, runs);
    }

    private static SheetFact Given(string name, string? text) => text is null ? new(name, null) : SheetWords.Fact(name, text);
}
