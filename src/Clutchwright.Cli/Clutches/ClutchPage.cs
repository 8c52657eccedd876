using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Clutches;
using Clutchwright.Desk.Words;

namespace Clutchwright.Cli.Clutches;

/// <summary>A clutch on the page and in JSON.</summary>
internal static class ClutchPage
{
    public static void Show(Terminal terminal, IReadOnlyList<ClutchWords> clutches)
    {
        var page = new Page(terminal);
        if (clutches.Count == 0)
        {
            page.Line("No clutch is written down.");
        }
        else
        {
            page.Table(
                ["clutch", "sire", "dam", "laid", ">good", ">slugs", ">lost", "hatched", ">young", ">left", "where"],
                [.. clutches.Select(c => new[]
                {
                    Page.Seen(c.Tag), Page.Plain(Sires(c)), Page.Plain(c.Dam), Page.Plain(c.Laid), Number(c.GoodEggs), Number(c.Slugs), Number(c.Lost == 0 ? null : c.Lost),
                    Page.Plain(c.Hatched), Number(c.HatchedCount == 0 ? null : c.HatchedCount), Number(c.Stage == ClutchStage.Over ? null : c.Left), Page.Plain(c.Incubator),
                })]);
        }

        page.Send();
    }

    public static void Show(Terminal terminal, ClutchAnswer answer)
    {
        var clutch = answer.Clutch;
        var page = new Page(terminal);
        page.Heading($"Clutch {clutch.Tag}: {Sires(clutch)} × {clutch.Dam}");
        page.Line(Page.Plain($"Laid {clutch.Laid}{(clutch.GoodEggs is { } good ? $", {good} good" : string.Empty)}{(clutch.Slugs is > 0 and var slugs ? $", {slugs} slugs" : string.Empty)}"
            + $"{(clutch.MassGrams is { } mass ? $", {mass.ToString("0.#", CultureInfo.CurrentCulture)} g" : string.Empty)}{(clutch.Incubator is { } place ? $", in {place}" : string.Empty)}"
            + $"{(clutch.Lost > 0 ? $", {clutch.Lost} lost" : string.Empty)}{(clutch.Pipped is { } pipped ? $", pipped {pipped}" : string.Empty)}{(clutch.Hatched is { } hatched ? $", hatched {hatched}" : string.Empty)}."));
        if (clutch.Notes.Length > 0)
        {
            page.Line(Page.Plain(clutch.Notes));
        }

        if (answer.Young.Count + answer.Counted.Count > 0)
        {
            page.Heading("Young");
            page.Table(
                ["", "sex", "what it is", ">g", "advice"],
                [
                    .. answer.Young.Select(y => new[]
                    {
                        Page.Plain(y.Animal.Tag),
                        Page.Plain(y.Animal.Sex switch { null => "0.0.1", Genetics.Loci.Sex.Male => "1.0", _ => "0.1" }),
                        Page.Marked(y.Animal.Words),
                        Page.Plain(y.MassGrams?.ToString("0.#", CultureInfo.CurrentCulture)),
                        Page.Plain(string.Join(' ', y.Advice.Select(a => a.Text))),
                    }),
                    .. answer.Counted.Select(c => new[] { Page.Plain($"{c.Count} ×"), Page.Plain(c.Sex), Page.Seen(c.Look), string.Empty, Page.Plain("counted, without records of their own") }),
                ]);
        }

        page.Heading("What can hatch");
        if (answer.LooksUnknown is { } unknown)
        {
            page.Line(Page.Plain(unknown));
        }
        else
        {
            page.Table(
                ["", "sex", ">per hatchling", ">hatched"],
                [.. answer.Looks.Take(20).Select(l => new[]
                {
                    Page.Seen(l.Name),
                    Page.Plain(l.Sex is null ? null : JsonShapes.OddsSex(l.Sex)),
                    Page.Plain(OddsText.RatioAndPercent(l.PerHatchling)),
                    Number(l.Hatched == 0 ? null : l.Hatched),
                })]);
        }

        page.Send();
    }

    public static JsonObject Json(ClutchWords clutch) => new()
    {
        ["id"] = clutch.Tag,
        ["dam"] = clutch.Dam,
        ["sires"] = JsonShapes.Array(clutch.Sires),
        ["laid"] = clutch.Laid,
        ["goodEggs"] = clutch.GoodEggs,
        ["slugs"] = clutch.Slugs,
        ["massGrams"] = clutch.MassGrams,
        ["incubator"] = clutch.Incubator,
        ["lost"] = clutch.Lost,
        ["pipped"] = clutch.Pipped,
        ["hatched"] = clutch.Hatched,
        ["hatchedCount"] = clutch.HatchedCount,
        ["left"] = clutch.Left,
        ["stage"] = clutch.Stage.ToString().ToLowerInvariant(),
        ["notes"] = clutch.Notes,
    };

    public static JsonObject Json(ClutchAnswer answer) => Json(answer.Clutch)
        .With("young", JsonShapes.Array(answer.Young, y => new JsonObject
        {
            ["id"] = y.Animal.Tag,
            ["sex"] = y.Animal.Sex is null ? "unsexed" : JsonShapes.OddsSex(y.Animal.Sex),
            ["massGrams"] = y.MassGrams,
            ["advice"] = Json(y.Advice),
        }.WithWords(y.Animal.Words)))
        .With("counted", JsonShapes.Array(answer.Counted, c => new JsonObject { ["count"] = c.Count, ["look"] = c.Look, ["sex"] = c.Sex }))
        .With("looks", JsonShapes.Array(answer.Looks, l => new JsonObject { ["look"] = l.Name, ["seen"] = l.Seen, ["label"] = l.Label, ["sex"] = JsonShapes.OddsSex(l.Sex), ["hatched"] = l.Hatched }.With("probability", l.PerHatchling)))
        .With("looksUnknown", answer.LooksUnknown);

    public static JsonArray Json(IReadOnlyList<Advice> advice) => JsonShapes.Array(advice, a => new JsonObject { ["holdBack"] = a.IsHoldBack, ["text"] = a.Text });

    private static string Sires(ClutchWords clutch) => clutch.Sires.Count == 0 ? "sire unknown" : string.Join(" or ", clutch.Sires);

    private static string Number(int? number) => number?.ToString(CultureInfo.CurrentCulture) ?? string.Empty;
}
