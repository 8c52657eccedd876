using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Pairs;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Pairs;

/// <summary><c>cross --want TEXT</c> alone: the pairs of the stock that give a want, best first.</summary>
internal static class PairsRanking
{
    public static async Task<int> RunAsync(
        CommonOptions common, Terminal terminal, ParseResult asked, PairsQuestion question, bool notation, CancellationToken cancel)
    {
        await using var questions = common.Open(asked);
        var answer = await questions.GetRequiredService<RankPairs>().RunAsync(question, cancel);
        if (answer.Value is not { } pairs)
        {
            return terminal.AskedWrongly(
                answer.Problems, where => where.StartsWith("want", StringComparison.Ordinal) ? question.Want : null);
        }

        if (common.IsJson(asked))
        {
            terminal.Send(Json(pairs));
        }
        else
        {
            Show(terminal, pairs, notation);
        }

        return ExitCode.Answered;
    }

    private static JsonObject Json(PairsAnswer answer) => new()
    {
        ["want"] = answer.Want,
        ["pairs"] = JsonShapes.Array(answer.Pairs, Json),
        ["pairsThatCan"] = answer.PairsThatCan,
        ["leftOut"] = JsonShapes.Array(answer.LeftOut, p => Json(p.Sire, p.Dam)
            .With("thisSeason", p.ThisSeason)
            .With("why", JsonShapes.Array(p.Why, JsonShapes.Of))),
        ["leftOutCount"] = answer.LeftOutCount,
        ["malesLooked"] = answer.MalesLooked,
        ["femalesLooked"] = answer.FemalesLooked,
        ["clutch"] = answer.ClutchText,
        ["notes"] = JsonShapes.Array(answer.Notes),
    };

    private static JsonObject Json(PairLine pair)
    {
        var json = Json(pair.Sire, pair.Dam)
            .With("probability", pair.PerEgg)
            .With("thisSeason", pair.ThisSeason)
            .With("ceiling", pair.Ceiling)
            .With("kinship", pair.Kin.Inbreeding);
        if (pair.Kin.Exact is { } exact)
        {
            json["kinshipExact"] = exact.ToString();
        }

        return json
            .With("relation", pair.Kin.Relation)
            .With("warnings", JsonShapes.Array(pair.Watch, JsonShapes.Of));
    }

    private static JsonObject Json(PairAnimal sire, PairAnimal dam) => new()
    {
        ["sire"] = sire.Tag,
        ["sireName"] = sire.Name,
        ["sireGenotype"] = sire.Words.Text,
        ["sireNotation"] = sire.Words.Notation,
        ["dam"] = dam.Tag,
        ["damName"] = dam.Name,
        ["damGenotype"] = dam.Words.Text,
        ["damNotation"] = dam.Words.Notation,
    };

    private static void Show(Terminal terminal, PairsAnswer answer, bool notation)
    {
        var page = new Page(terminal);
        page.Heading($"Pairs of your stock that can give {answer.Want}");
        page.Line(Page.Plain(
            $"{answer.PairsThatCan:N0} of the {(long)answer.MalesLooked * answer.FemalesLooked:N0} pairs of "
            + $"{Animals(answer.MalesLooked, "male")} and {Animals(answer.FemalesLooked, "female")} can. {answer.ClutchText}"));
        if (answer.Pairs.Count > 0)
        {
            page.Table(
                [">this season", ">of eggs", ">never above", "sire", "", "dam", "", "told"],
                [.. answer.Pairs.Select(p => new[]
                {
                    Page.Plain(OddsText.Percent(p.ThisSeason)),
                    Page.Plain(OddsText.RatioAndPercent(p.PerEgg)),
                    p.Ceiling.IsCertain ? string.Empty : Page.Plain(OddsText.Percent(p.Ceiling)),
                    Name(p.Sire),
                    Genotype(p.Sire, notation),
                    Name(p.Dam),
                    Genotype(p.Dam, notation),
                    Page.Plain(string.Join(" ", p.Watch.Select(w => w.Text))),
                })]);
        }

        if (answer.PairsThatCan > answer.Pairs.Count)
        {
            page.Line(Page.Plain($"… and {answer.PairsThatCan - answer.Pairs.Count:N0} more (--most N lists more)."));
        }

        if (answer.LeftOutCount > 0)
        {
            page.Heading("Left out: these could give it, but also a lethal or suffering genotype");
            page.Table(
                [">this season", "sire", "dam", "why"],
                [.. answer.LeftOut.Select(p => new[]
                {
                    Page.Plain(OddsText.Percent(p.ThisSeason)),
                    Name(p.Sire),
                    Name(p.Dam),
                    Page.Plain(string.Join(" ", p.Why.Select(WarningWords.Short))),
                })]);
            if (answer.LeftOutCount > answer.LeftOut.Count)
            {
                page.Line(Page.Plain($"… and {answer.LeftOutCount - answer.LeftOut.Count:N0} more."));
            }
        }

        if (answer.Notes.Count > 0)
        {
            page.Heading("Notes");
            page.Points(answer.Notes);
        }

        page.Send();
    }

    private static string Animals(int count, string sex) => count == 1 ? $"1 {sex}" : $"{count:N0} {sex}s";

    private static string Name(PairAnimal animal) => Page.Plain(animal.Name is { } name ? $"{animal.Tag} {name}" : animal.Tag);

    private static string Genotype(PairAnimal animal, bool notation) =>
        Page.Marked(animal.Words) + (notation ? Page.Plain($"  {animal.Words.Notation}") : string.Empty);
}
