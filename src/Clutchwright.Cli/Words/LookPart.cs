using Clutchwright.Desk.Words;

namespace Clutchwright.Cli.Words;

/// <summary>How a look over a life is set on a page: a row a stage of life, in place of a tone strip.</summary>
internal static class LookPart
{
    public static void Look(this Page page, LookWords look)
    {
        var grounds = look.IsRecorded
            ? look.Grade
            : $"composed of {string.Join(", ", look.ComposedOf)}, not recorded";
        page.Line(Page.Seen(look.Name) + (grounds is null ? string.Empty : Page.Plain($" ({grounds})")));
        if (look.Stages.Count > 0)
        {
            page.Table(
                ["age", "ground", "pattern", "eye"],
                [.. look.Stages.Select(s => new[]
                {
                    Page.Plain(s.FromMonths == 0 ? s.Stage : $"{s.Stage}, from {s.FromMonths} months"),
                    Page.Plain(s.Ground?.Name),
                    Page.Plain(s.Pattern?.Name),
                    Page.Plain(s.Eye?.Name),
                })]);
        }

        page.Points(look.Words);
        if (look.Varies is { } varies)
        {
            page.Points([$"Animals of it vary {(string.Equals(varies, "some", StringComparison.Ordinal) ? "somewhat" : varies)}."]);
        }

        page.Points(look.Sources);
    }
}
