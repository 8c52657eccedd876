using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Papers;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Sheets;

/// <summary>How does the card of a clutch look?</summary>
public sealed class PrintClutchCard
{
    private const int MostLooks = 24;
    private const int MostHidden = 4;

    private readonly SheetStock _stock;
    private readonly AskCross _cross;

    internal PrintClutchCard(SheetStock stock, AskCross cross) => (_stock, _cross) = (stock, cross);

    /// <summary>Writes the card of a pair, or says everything that was asked wrongly.</summary>
    public async Task<Answer<PrintedSheet>> RunAsync(ClutchCardQuestion question, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var laid = string.IsNullOrWhiteSpace(question.Laid) ? null : AnimalForms.Date("laid", question.Laid.Trim(), problems);
        LabelLayoutReader.Paper(question.Page, problems, withRoll: false);
        var asked = await _cross.RunAsync(new(question.Sire, question.Dam) { Clutch = new(question.Eggs, null, null), Most = MostLooks }, cancel);
        if (asked.Value is not { } cross || problems.Count > 0)
        {
            return problems.Concat(asked.Problems).ToArray();
        }

        return Print(Card(cross, laid, question.Eggs), question.Page);
    }

    /// <summary>The card of a clutch whose odds are known.</summary>
    /// <param name="cross">The odds.</param>
    /// <param name="laid">When it was laid; <c>null</c>: not known.</param>
    /// <param name="eggs">Good eggs; <c>null</c>: not counted.</param>
    internal ClutchCard Card(CrossAnswer cross, DateRange? laid, int? eggs)
    {
        var (expected, why) = Expected(laid);
        return new(Parent(cross.Sire), Parent(cross.Dam))
        {
            Laid = laid?.Words,
            Eggs = eggs,
            Expected = expected,
            ExpectedWhy = why,
            Looks = [.. cross.Outcomes.Select(o => new ClutchLook(
                o.Name,
                o.Label,
                o.Sex is { } sex ? SheetWords.Sex(sex) : null,
                o.PerHatchling,
                [.. o.Hidden.Take(MostHidden).Select(h => h.Chance.IsCertain ? h.Carries : $"{OddsText.Ratio(h.Chance) ?? OddsText.Percent(h.Chance)} {h.Carries}")]))],
            HasMoreLooks = cross.HasMoreOutcomes,
            Warnings = cross.Warnings,
        };
    }

    /// <summary>Writes a card.</summary>
    internal PrintedSheet Print(ClutchCard card, string page)
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
