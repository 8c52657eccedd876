using System.Globalization;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Looks;
using Clutchwright.Desk.Words;

namespace Clutchwright.Cli.Looks;

/// <summary>The readable answer of <c>look</c>.</summary>
internal static class LookPage
{
    public static void Send(Terminal terminal, LooksAnswer answer)
    {
        var page = new Page(terminal);
        page.Heading($"Makings that look so, as {(answer.Stage == "adult" ? "an" : "a")} {answer.Stage}");
        page.Line(Page.Plain(answer.Understood));
        if (answer.Makings.Count == 0)
        {
            page.Line("No making on record or composed of so few genes looks so. A greater distance (--within D) or more genes (--genes 3) may find some.");
        }
        else
        {
            page.Table(
                ["making", ">apart", "ground", "pattern", "eye", "known", ">alleles", ">this season", "danger"],
                [.. answer.Makings.Select(m => new[]
                {
                    Page.Seen(m.Label is { } label && label != m.Genotype ? $"{label} ({m.Genotype})" : m.Genotype),
                    Page.Plain(m.Distance?.ToString("0.0", CultureInfo.CurrentCulture)),
                    Page.Plain(m.At?.Ground?.Name),
                    Page.Plain(m.At?.Pattern?.Name),
                    Page.Plain(m.At?.Eye?.Name),
                    Page.Plain(Known(m.Look)),
                    Page.Plain(m.Alleles.ToString(CultureInfo.CurrentCulture)),
                    Page.Plain(m.Nearness is { } nearness ? Season(nearness) : null),
                    Page.Plain(string.Join(", ", m.Warnings.Select(w => w.Severity).Distinct(StringComparer.Ordinal))),
                })]);
            if (answer.IsMore)
            {
                page.Line("… and more (--most N lists more).");
            }
        }

        var warnings = answer.Makings.SelectMany(m => m.Warnings).DistinctBy(w => w.Code).ToList();
        if (answer.Notes.Count > 0)
        {
            page.Heading("Notes");
            page.Points(answer.Notes);
        }

        page.Warnings(warnings);
        page.Send();
    }

    private static string Known(LookWords look)
    {
        var ground = look.IsRecorded ? look.Grade ?? "recorded" : look.Grade is { } grade ? $"put together, {grade}" : $"composed of {string.Join(" + ", look.ComposedOf)}";
        return look.Varies == "much" ? $"{ground}; varies much" : ground;
    }

    private static string Season(Nearness nearness) => nearness switch
    {
        { Missing.Count: > 0 } => $"no {string.Join(", ", nearness.Missing)}",
        { BestChance: { } chance } => OddsText.Percent(chance),
        { IsOnlyByLeftOutPairs: true } => "only by pairs left out",
        _ => "no pair yet",
    };
}
