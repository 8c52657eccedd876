using Clutchwright.Cli.Words;
using Clutchwright.Desk.Season;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Cli.Season;

/// <summary>The readable answer of <c>season plan</c>.</summary>
internal static class SeasonPage
{
    public static void Send(Terminal terminal, SeasonAnswer answer)
    {
        var page = new Page(terminal);
        page.Heading($"The season from {answer.On:yyyy-MM-dd}");
        page.Line(Page.Plain(Verdict(answer)));
        if (answer.Clashes.Count > 0)
        {
            page.Heading("These cannot hold together");
            page.Table(["", "what would help"], [.. answer.Clashes.Select(c => new[] { Page.Plain(c.Text), Page.Plain(c.Change) })]);
        }

        if (answer.Pairings.Count > 0)
        {
            page.Table(
                ["sire", "", "dam", "", "serves (this clutch alone)", ">inbreeding", "told"],
                [.. answer.Pairings.Select(p => new[]
                {
                    Name(p.Sire) + (p.IsPinned ? Page.Plain(" (pinned)") : string.Empty),
                    Page.Marked(p.Sire.Words),
                    Name(p.Dam),
                    Page.Marked(p.Dam.Words),
                    Page.Plain(string.Join(", ", p.Serves.Select(s => $"{s.Goal} {Figure(s.Kind, s.Alone)}"))),
                    p.Inbreeding > 0.0 ? Page.Plain(KinText.Percent(p.Inbreeding)) : string.Empty,
                    Page.Plain(string.Join(" ", p.Lifted.Concat(p.Watch).Select(WarningWords.Short))),
                })]);
            page.Heading("Goals");
            page.Table(
                [">figure", "goal", "", ">weight", ">pairs that serve it"],
                [.. answer.Goals.Select(g => new[]
                {
                    Page.Plain(Figure(g.Kind, g.Figure)), Page.Seen(g.Name), Page.Plain(g.Text), Page.Plain(g.Weight.ToString("0.######")), Page.Plain(g.Pairs.ToString("N0")),
                })]);
        }

        if (answer.Pairings.Any(p => p.RunnerUp is not null))
        {
            page.Heading("What each choice is worth");
            page.Table(["pair", ""], [.. answer.Pairings.Select(p => new[] { Page.Plain($"{p.Sire.Tag} with {p.Dam.Tag}"), Page.Plain(p.RunnerUp) })]);
        }

        if (answer.TradeOff is { Points.Count: > 0 } tradeOff)
        {
            var kinds = answer.Goals.ToDictionary(g => g.Name, g => g.Kind);
            page.Heading($"What more {tradeOff.Second} costs of {tradeOff.First}");
            page.Table(
                [$">{tradeOff.First}", $">{tradeOff.Second}"],
                [.. tradeOff.Points.Select(p => new[] { Page.Plain(Figure(kinds[tradeOff.First], p.First)), Page.Plain(Figure(kinds[tradeOff.Second], p.Second)) })]);
        }

        if (answer.NotReady.Count > 0)
        {
            page.Heading("Not ready");
            page.Table(["", ""], [.. answer.NotReady.Select(n => new[] { Page.Plain(n.Name is null ? n.Tag : $"{n.Tag} {n.Name}"), Page.Plain(n.Why) })]);
        }

        page.Heading("Notes");
        page.Points([.. LeftOut(answer), answer.ClutchText, .. answer.Notes]);
        page.Send();
    }

    private static string Verdict(SeasonAnswer answer) => answer.Status switch
    {
        "infeasible" => "There is no plan that meets all that is asked.",
        "optimal" => $"{Pairings(answer)}. Proven best: the goals weigh {answer.Objective:0.####} together, and no plan weighs more.",
        _ => $"{Pairings(answer)}. The goals weigh {answer.Objective:0.####} together; no plan of the pairs weighed weighs more than {answer.Bound:0.####} ({answer.Gap:0.##%} better).",
    };

    private static string Pairings(SeasonAnswer answer) => answer.Pairings.Count == 1 ? "1 pairing" : $"{answer.Pairings.Count:N0} pairings";

    private static IEnumerable<string> LeftOut(SeasonAnswer answer)
    {
        if (answer.LeftOut.Count > 0)
        {
            yield return $"Ready and not paired, since no goal gains by it or there is no room: {string.Join(", ", answer.LeftOut)}.";
        }

        if (answer.Dangerous > 0)
        {
            yield return $"{(answer.Dangerous == 1 ? "1 pair was" : $"{answer.Dangerous:N0} pairs were")} left out because their young could die or suffer.";
        }

        if (answer.TooInbred > 0)
        {
            yield return $"{(answer.TooInbred == 1 ? "1 pair was" : $"{answer.TooInbred:N0} pairs were")} left out for inbreeding.";
        }
    }

    private static string Name(SeasonNamed animal) => Page.Plain(animal.Name is { } name ? $"{animal.Tag} {name}" : animal.Tag);

    private static string Figure(SeasonFigureKind kind, double figure) => kind switch
    {
        SeasonFigureKind.Chance => OddsText.Percent(Probability.Rounded(figure)),
        SeasonFigureKind.Bits => $"{figure:0.00} bits",
        _ => OddsText.Mean(figure),
    };
}
