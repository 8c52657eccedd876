using Clutchwright.Cli.Words;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Cli.Crosses;

/// <summary>The readable answer of <c>cross</c>.</summary>
internal static class CrossPage
{
    public static void Send(Terminal terminal, CrossAnswer cross, bool notation)
    {
        var page = new Page(terminal);
        Parents(page, cross, notation);
        Looks(page, cross);
        if (notation)
        {
            Genotypes(page, cross);
        }

        foreach (var want in cross.Wants)
        {
            Want(page, want);
        }

        Losses(page, cross);
        page.Warnings(cross.Warnings);
        page.Send();
    }

    private static void Parents(Page page, CrossAnswer cross, bool notation)
    {
        page.Table(
            ["", "", "", "", ""],
            [.. new[] { (Part: "sire", Sexed: "1.0", Parent: cross.Sire), (Part: "dam", Sexed: "0.1", Parent: cross.Dam) }.Select(p => new[]
            {
                p.Part,
                p.Sexed,
                Page.Plain(p.Parent.Tag),
                Page.Marked(p.Parent.Words),
                notation ? Page.Plain(p.Parent.Words.Notation) : string.Empty,
            })]);
        page.Points(cross.Sire.Notes.Select(n => $"Sire: {n}").Concat(cross.Dam.Notes.Select(n => $"Dam: {n}")));
    }

    private static void Looks(Page page, CrossAnswer cross)
    {
        page.Heading("What can hatch, told apart by eye on hatch day");
        page.Line(Page.Plain(cross.ClutchText));
        var survives = cross.Survival.IsCertain;
        page.Table(
            [">of eggs", survives ? string.Empty : ">of hatchlings", "", "look", "carries unseen", ">in the clutch", ">at least one"],
            [.. cross.Outcomes.Select(o => new[]
            {
                Page.Plain(OddsText.RatioAndPercent(o.PerEgg)),
                survives ? string.Empty : Page.Plain(OddsText.RatioAndPercent(o.PerHatchling)),
                o.Sex is { } sex ? SexWord(sex) : string.Empty,
                Look(o),
                Hidden(o),
                Page.Plain(Range(o.InClutch)),
                Page.Plain(OddsText.Percent(o.AtLeastOne)),
            })]);
        if (cross.HasMoreOutcomes)
        {
            page.Line(Page.Plain($"… and rarer looks: those listed make up {OddsText.Percent(cross.OutcomesShare)} of the eggs (--most N lists more)."));
        }
    }

    private static void Genotypes(Page page, CrossAnswer cross)
    {
        page.Heading("Genotypes, of eggs");
        page.Table(
            [">of eggs", "", "genotype", "notation", ">lives"],
            [.. cross.Genotypes.Select(g => new[]
            {
                Page.Plain(OddsText.RatioAndPercent(g.PerEgg)),
                g.Sex is { } sex ? SexWord(sex) : string.Empty,
                Page.Plain(g.Text),
                Page.Plain(g.Notation),
                g.Survival.IsCertain ? string.Empty : Page.Plain(OddsText.Percent(g.Survival)),
            })]);
        if (cross.HasMoreGenotypes)
        {
            page.Line("… and rarer genotypes (--most N lists more).");
        }
    }

    private static void Want(Page page, WantAnswer want)
    {
        page.Heading($"Wanted: {want.Text}");
        page.Table(
            ["", ""],
            [
                ["of eggs", Page.Plain($"{OddsText.RatioAndPercent(want.PerEgg)}, {OddsText.Frequency(want.PerEgg, "eggs")}")],
                want.PerHatchling == want.PerEgg ? ["", ""] : ["of hatchlings", Page.Plain(OddsText.RatioAndPercent(want.PerHatchling))],
                ["in the clutch", Page.Plain(Range(want.InClutch))],
                ["at least one", Page.Plain(OddsText.RatioAndPercent(want.AtLeastOne))],
                want.AtLeastCount > 1 ? [$"at least {want.AtLeastCount}", Page.Plain(OddsText.RatioAndPercent(want.AtLeast))] : ["", ""],
                want.Ceiling.IsCertain ? ["", ""] : ["never above", Page.Plain($"{OddsText.RatioAndPercent(want.Ceiling)}, however many eggs")],
            ]);
        page.Table(
            ["for", .. want.EggsFor.Keys.Order().Select(p => $">{p}%")],
            [
                ["good eggs", .. want.EggsFor.OrderBy(n => n.Key).Select(n => Needed(n.Value))],
                ["clutches", .. want.ClutchesFor.OrderBy(n => n.Key).Select(n => Needed(n.Value))],
            ]);
        page.Line("why");
        page.Points(want.Why.Select(w => w.Value is { } value ? $"{w.Text} {OddsText.RatioAndPercent(value)}" : w.Text));
    }

    private static void Losses(Page page, CrossAnswer cross)
    {
        if (cross.Survival.IsCertain)
        {
            return;
        }

        page.Heading("Eggs that do not live");
        page.Line(Page.Plain($"Of good eggs {OddsText.RatioAndPercent(cross.Survival)} become live hatchlings."));
        page.Table(
            [">of eggs", "genotype", "lost"],
            [.. cross.Losses.Select(l => new[]
            {
                Page.Plain(OddsText.RatioAndPercent(l.PerEgg)), Page.Plain(l.Text), Page.Plain($"{l.Stage}"),
            })]);
    }

    private static string Look(OutcomeLine outcome)
    {
        var look = Page.Seen(outcome.Name);
        if (outcome.Label is { } label && !string.Equals(label, outcome.Name, StringComparison.OrdinalIgnoreCase))
        {
            look += Page.Plain($", called {label}");
        }

        return outcome.Faint.Count == 0 ? look : look + Page.Plain($" (faintly {string.Join(", ", outcome.Faint)})");
    }

    private static string Hidden(OutcomeLine outcome) => string.Join(", ", outcome.Hidden.Select(h => h.Chance.IsCertain
        ? Page.Carried(h.Carries)
        : $"{Page.Plain(OddsText.Ratio(h.Chance) ?? OddsText.Percent(h.Chance))} {Page.Carried(h.Carries)}"));

    private static string Range(CountRange count) => count.Low == count.High
        ? $"{OddsText.Mean(count.Mean)}, nearly always {count.Low}"
        : $"{OddsText.Mean(count.Mean)}, mostly {count.Low} to {count.High}";

    private static string Needed(int? number) => number is { } n ? n.ToString("N0") : "never";

    private static string SexWord(Sex sex) => sex == Sex.Male ? "male" : "female";
}
