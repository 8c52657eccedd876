using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Papers;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;

namespace Clutchwright.Desk.Sheets;

/// <summary>How does the card of a clutch look?</summary>
public sealed class PrintClutchCard
{
    private const int MostLooks = 24;
    private const int MostHidden = 4;

    private readonly SheetStock _stock;
    private readonly AskCross _cross;

    internal PrintClutchCard(SheetStock stock, AskCross cross) => (_stock, _cross) = (stock, cross);

    /// <summary>Writes the card of a pair or of a clutch of the book, or says everything that was asked wrongly.</summary>
    public async Task<Answer<PrintedSheet>> RunAsync(ClutchCardQuestion question, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var laid = string.IsNullOrWhiteSpace(question.Laid) ? null : AnimalForms.Date("laid", question.Laid.Trim(), problems);
        LabelLayoutReader.Paper(question.Page, problems, withRoll: false);
        if (question.Clutch is { Length: > 0 } clutch)
        {
            var found = problems.Count > 0 ? null : await _stock.ClutchAsync(clutch, problems, cancel);
            return found is null ? problems.ToArray() : Print(await CardAsync(found, problems, cancel), question.Page);
        }

        var asked = await CrossAsync(question.Sire, question.Dam, question.Eggs, cancel);
        if (asked.Value is not { } cross || problems.Count > 0)
        {
            return problems.Concat(asked.Problems).ToArray();
        }

        var (expected, why) = Expected(laid);
        return Print(
            new([Parent(cross.Sire)], Parent(cross.Dam))
            {
                Laid = laid?.Words, Eggs = question.Eggs, Expected = expected, ExpectedWhy = why, Odds = [Odds(cross, null)], Warnings = cross.Warnings,
            },
            question.Page);
    }

    private async Task<ClutchCard> CardAsync(ClutchLine line, List<AskedWrongly> problems, CancellationToken cancel)
    {
        var (clutch, odds, sires, warnings) = (line.Clutch, new List<ClutchOdds>(), new List<ClutchParent>(), new List<Warning>());
        var state = await _stock.ReadAsync(cancel);
        foreach (var sire in line.Sires)
        {
            var asked = await CrossAsync(sire, line.Dam, clutch.GoodEggs is > 0 and <= Clutch.MostEggs ? clutch.GoodEggs : null, cancel);
            problems.AddRange(asked.Problems);
            if (asked.Value is { } cross)
            {
                sires.Add(Parent(cross.Sire));
                odds.Add(Odds(cross, line.Sires.Count == 1 ? null : sires[^1].Name));
                warnings.AddRange(cross.Warnings.Where(w => warnings.TrueForAll(k => k.Text != w.Text)));
            }
        }

        var dam = state.Find(clutch.DamId);
        var (expected, why) = Expected(clutch.Laid);
        return new(sires, new(dam is null ? line.Dam : SheetWords.Name(dam.Animal), dam is null ? new([], string.Empty) : _stock.Catalogue.Wording.Animal(dam.Belief.Genotype)))
        {
            Name = clutch.Tag,
            Laid = clutch.Laid.Words,
            Eggs = clutch.GoodEggs,
            More = [.. More(line)],
            Expected = clutch.Hatched is null ? expected : null,
            ExpectedWhy = clutch.Hatched is null ? why : $"hatched {clutch.Hatched.Words}",
            Odds = odds,
            Warnings = warnings,
        };
    }

    private static IEnumerable<(string Name, string Text)> More(ClutchLine line)
    {
        if (line.Clutch.Slugs is { } slugs)
        {
            yield return ("Slugs", $"{slugs:N0}");
        }

        if (line.Clutch.MassGrams is { } grams)
        {
            yield return ("Mass of the eggs", SheetWords.Grams(grams));
        }

        if (line.Incubator is { } incubator)
        {
            yield return ("Incubator", incubator);
        }

        if (line.Lost > 0)
        {
            yield return ("Eggs lost", $"{line.Lost:N0}");
        }

        if (line.Pipped is { } pipped)
        {
            yield return ("First pip", pipped.Words);
        }

        if (line.HatchedCount > 0)
        {
            yield return ("Hatched so far", $"{line.HatchedCount:N0}");
        }
    }

    private async Task<Answer<CrossAnswer>> CrossAsync(string sire, string dam, int? eggs, CancellationToken cancel) =>
        await _cross.RunAsync(new(sire, dam) { Clutch = new(eggs, null, null), Most = MostLooks }, cancel);

    private static ClutchOdds Odds(CrossAnswer cross, string? sire) => new(
        sire,
        [.. cross.Outcomes.Select(o => new ClutchLook(
            o.Name,
            o.Label,
            o.Sex is { } sex ? SheetWords.Sex(sex) : null,
            o.PerHatchling,
            [.. o.Hidden.Take(MostHidden).Select(h => h.Chance.IsCertain ? h.Carries : $"{OddsText.Ratio(h.Chance) ?? OddsText.Percent(h.Chance)} {h.Carries}")]))],
        cross.HasMoreOutcomes);

    /// <summary>Writes a card.</summary>
    private PrintedSheet Print(ClutchCard card, string page)
    {
        var paper = LabelLayoutReader.Paper(page, [], withRoll: false) ?? PaperSize.A4;
        var document = ClutchSheet.Of(card, _stock.Today);
        var pages = PageSetter.Set(document, paper);
        return new(PdfWriter.Write(document.Title, "en", _stock.Now, pages), [document], pages) { Title = document.Title };
    }

    // Two standard deviations on either side of the mean hold most clutches.
    private ((DateOnly From, DateOnly To)? Days, string Why) Expected(DateRange? laid)
    {
        if (laid is null || _stock.Catalogue.Catalogue.Biology.Find("incubation-days") is not { } days)
        {
            return (null, string.Empty);
        }

        var (least, most) = ((int)Math.Floor(Math.Max(days.Least ?? 0, days.Mean - (2 * days.Sd))), (int)Math.Ceiling(Math.Min(days.Most ?? double.MaxValue, days.Mean + (2 * days.Sd))));
        return (
            (laid.Earliest.AddDays(least), laid.Latest.AddDays(most)),
            $"({least} to {most} days, {Wording.Grade(days.Evidence)}; cooler eggs take longer)");
    }

    private static ClutchParent Parent(ParentAnswer parent) => new(
        parent.Tag is null ? parent.Sex == Sex.Male ? "a sire" : "a dam" : parent.Name is null ? parent.Tag : $"{parent.Tag} {parent.Name}", parent.Words);
}
