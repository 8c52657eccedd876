using Clutchwright.Cli.Words;
using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Cli.Routes;

/// <summary>The readable answer of <c>route</c>.</summary>
internal static class RoutePage
{
    public static void Send(Terminal terminal, RoutesAnswer answer)
    {
        var page = new Page(terminal);
        page.Heading($"{answer.Want}, within {answer.Seasons} {(answer.Seasons == 1 ? "season" : "seasons")}");
        if (answer.Routes.Count == 0)
        {
            page.Line(Page.Plain("No route found."));
        }
        else
        {
            page.Table(
                [">route", ">chance", ">first in season", ">clutches", ">kept back", ">price", ">cost", ">inbreeding"],
                [.. answer.Routes.Select(r => new[]
                {
                    Page.Plain($"{r.Number}"), Page.Plain(OddsText.Percent(r.Chance)), Page.Plain($"{r.FirstSeason}"), Page.Plain(OddsText.Mean(r.Clutches)),
                    Page.Plain($"{r.Raised}"), Page.Plain(r.Price > 0.0 ? $"{r.Price:0.##}" : string.Empty), Page.Plain($"{r.Cost:0.#}"), Page.Plain(KinText.Percent(r.Inbreeding)),
                })]);
            page.Line(Page.Plain(answer.IsProven
                ? "Proven: in the stated model no route beats these on every count."
                : "Not proven: the search was cut short, or routes were left out, and better ones may exist."));
            if (answer.Outlook is { } outlook)
            {
                page.Line(Page.Plain(
                    $"Planned anew after every hatch, {outlook.Tries:N0} tries: {Percent(outlook.Chance)} (± {Percent(outlook.StandardErrors[^1])}), "
                    + $"on average {OddsText.Mean(outlook.Clutches.Mean)} clutches, and animals kept back {OddsText.Mean(outlook.Raised.Mean)}."));
                page.Line(Page.Plain($"By season: {string.Join(", ", outlook.ChanceBySeason.Skip(1).Select((c, i) => $"{i + 1}: {Percent(c)}"))}."));
            }
        }

        foreach (var route in answer.Routes)
        {
            Route(page, route);
        }

        Purchases(page, answer);
        page.Heading("Notes");
        page.Points([.. answer.TargetNotes, .. answer.Dangers.Select(d => d.Text), .. answer.Notes, answer.ClutchText]);
        page.Send();
    }

    private static void Route(Page page, RouteWords route)
    {
        page.Heading($"Route {route.Number}: {OddsText.Percent(route.Chance)}{(route.Reaches is { } reached ? $", reaches {reached}" : string.Empty)}");
        page.Table(
            [">season", "sire", "dam", "hold back", ">per egg", ">good eggs for 90%", ">a season gives it", ">seasons to plan"],
            [.. route.Steps.Select(s => new[]
            {
                Page.Plain($"{s.Season}"),
                Animal(route.Animals[s.Sire]),
                (s.Dams > 1 && route.Animals[s.Dam].FromStep is null ? $"{s.Dams} x " : string.Empty) + Animal(route.Animals[s.Dam]),
                s.Keep.Count == 0 ? Page.Plain("the wanted hatches") : string.Join(" and ", s.Keep.Select(k => Kept(route.Animals[k]))),
                Page.Plain(string.Join(" and ", s.PerEgg.Select(Percent))),
                Page.Plain(s.Eggs is { } eggs ? $"{eggs}" : string.Empty),
                Page.Plain(Percent(s.Success)),
                Page.Plain($"{s.SeasonsToPlan}"),
            })]);
        page.Line(Page.Plain($"By season: {string.Join(", ", route.ChanceBySeason.Select((c, i) => $"{i + 1}: {Percent(c)}"))}."));
        if (route.Weakest is { } weakest)
        {
            page.Line(Page.Plain($"Most likely to fail: the pairing of season {route.Steps[weakest.Step].Season} ({route.Animals[route.Steps[weakest.Step].Sire].Name} x {route.Animals[route.Steps[weakest.Step].Dam].Name}); were it sure, the chance would be {Percent(weakest.Chance)}."));
        }

        foreach (var kept in route.Animals.Where(a => a.SecondCopy is { } second && second > route.Chance.Value + 0.0005))
        {
            page.Line(Page.Plain($"A second {kept.Name} kept as insurance: up to {Percent(kept.SecondCopy!.Value)}."));
        }
    }

    private static void Purchases(Page page, RoutesAnswer answer)
    {
        if (answer.Purchases.Count == 0)
        {
            return;
        }

        page.Heading("What one purchase would change");
        page.Table(
            ["animal", ">chance", ">more", ">seasons saved"],
            [.. answer.Purchases.Select(p => new[]
            {
                Page.Plain(p.Animal), Page.Plain(Percent(p.Chance)), Page.Plain(Percent(p.Gain)), Page.Plain(p.SeasonsSaved is { } saved ? $"{saved}" : string.Empty),
            })]);
    }

    private static string Animal(RouteAnimalWords animal) => animal.FromStep is not null
        ? Page.Plain(animal.Count > 1 ? $"{animal.Count} x {animal.Name}" : animal.Name)
        : $"{Page.Plain(animal.Tags.Count > 0 ? animal.Name : "bought:")} {Page.Marked(animal.Words)}";

    private static string Kept(RouteAnimalWords animal) =>
        $"{Page.Plain($"{animal.Name}: {(animal.Count > 1 ? $"{animal.Count} " : string.Empty)}{(animal.Sex == Sex.Male ? (animal.Count > 1 ? "sons" : "son") : animal.Count > 1 ? "daughters" : "daughter")}")}, {Page.Marked(animal.Words)}"
        + (animal.Trust < 1.0 - 1e-9 ? Page.Plain($" ({Percent(animal.Trust)} sure)") : string.Empty);

    private static string Percent(double chance) => OddsText.Percent(Probability.Rounded(chance));
}
