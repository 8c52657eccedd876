using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Proofs;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Proofs;

/// <summary><c>proof design</c>: which mate settles a doubt soonest?</summary>
internal static class DesignCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var animal = new Argument<string?>("ANIMAL") { Description = "The tag of an animal of your stock that may be het: its possible mates are compared. Leave it out to compare --mate.", Arity = ArgumentArity.ZeroOrOne };
        var gene = new Option<string?>("--gene") { Description = "With ANIMAL: the recessive gene in doubt.", HelpName = "GENE" };
        var about = new Option<string>("--about") { Description = "The doubt: het, allelism or linkage. Default: het.", HelpName = "DOUBT", DefaultValueFactory = _ => "het" };
        var mate = new Option<string[]>("--mate") { Description = "What to compare: visual, het, \"66% het\"; for allelism the crosses of proof allelism; for linkage known or unknown (the phase). Any number of times.", HelpName = "MATE" };
        var prior = new Option<string?>("--prior") { Description = "The chance that it is so: 2/3, 66% (which means 2/3, as the trade writes it) or 0.5. Default: 1/2, or with ANIMAL what your stock says.", HelpName = "P" };
        var sure = new Option<string?>("--sure") { Description = "What counts as an answer. Default: 95%.", HelpName = "S" };
        var r = Options.Share("--r", "For linkage: the recombination fraction it would have, 0 or more and less than 0.5. Default: 0.", "R");
        var eggs = Options.Count("--eggs", "The clutch has N good eggs. Default: from the species' biology.", "N", 1, ClutchSetting.MostEggs);
        var most = Options.Count("--most", "List at most N. Default: 20.", "N", 1, 1_000_000);
        var command = new Command("design", "Which mate settles a doubt soonest, and how many eggs it takes.") { animal, gene, about, mate, prior, sure, r, eggs, most };
        command.SetAction(async (asked, cancel) =>
        {
            if (asked.GetValue(animal) is not null && (asked.GetValue(mate) is { Length: > 0 } || asked.GetValue(about) is not "het"))
            {
                return terminal.AskedWrongly("proof design: with ANIMAL the mates come from your stock and the doubt is het; leave --mate and --about out");
            }

            await using var questions = common.Open(asked);
            var answer = await questions.GetRequiredService<AskTestPairings>().RunAsync(
                new()
                {
                    About = asked.GetValue(about) ?? "het",
                    Animal = asked.GetValue(animal),
                    Gene = asked.GetValue(gene),
                    Prior = asked.GetValue(prior),
                    Mates = asked.GetValue(mate) ?? [],
                    Recombination = asked.GetValue(r) ?? 0.0,
                    Sure = asked.GetValue(sure),
                    Clutch = new(asked.GetValue(eggs), null, null),
                    Most = asked.GetValue(most) ?? 20,
                },
                cancel);
            if (answer.Value is not { } found)
            {
                return terminal.AskedWrongly(answer.Problems, _ => null);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(Json(found));
            }
            else
            {
                Show(terminal, found);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static JsonObject Json(TestPairingsAnswer answer) => new JsonObject { ["claim"] = answer.Claim }
        .With("prior", answer.Prior)
        .With("sure", answer.Sure)
        .With("pairings", JsonShapes.Array(answer.Pairings, p => new JsonObject
        {
            ["mate"] = p.Name,
            ["is"] = p.Words,
            ["entropyDrop"] = p.Worth.EntropyDrop,
            ["chanceOfAnswer"] = p.Worth.ChanceOfAnswer,
            ["chanceOfYes"] = p.Worth.ChanceOfYes,
            ["chanceOfNo"] = p.Worth.ChanceOfNo,
            ["meanEggs"] = ProofWords.Number(p.Worth.MeanEggs),
            ["eggsFor"] = ProofWords.ByPercent(p.EggsFor),
        }))
        .With("looked", answer.Looked)
        .With("clutch", answer.ClutchText)
        .With("verdict", answer.Verdict)
        .With("notes", JsonShapes.Array(answer.Notes));

    private static void Show(Terminal terminal, TestPairingsAnswer answer)
    {
        var page = new Page(terminal);
        page.Line(Page.Plain($"In doubt: {answer.Claim} Now {OddsText.RatioAndPercent(answer.Prior)}; an answer is {OddsText.Percent(answer.Sure)} either way."));
        page.Line(Page.Plain(answer.ClutchText));
        if (answer.Pairings.Count > 0)
        {
            page.Table(
                ["mate", "", ">an answer from one clutch", ">yes", ">no", ">bits told", ">eggs on average", .. answer.Pairings[0].EggsFor.Keys.Order().Select(c => $">settled at {c}%")],
                [.. answer.Pairings.Select(p => (string[])
                [
                    Page.Plain(p.Name),
                    Page.Plain(p.Words),
                    ProofWords.Percent(p.Worth.ChanceOfAnswer),
                    ProofWords.Percent(p.Worth.ChanceOfYes),
                    ProofWords.Percent(p.Worth.ChanceOfNo),
                    $"{p.Worth.EntropyDrop:0.###}",
                    p.Worth.MeanEggs is { } mean ? $"{mean:0.#}" : "—",
                    .. p.EggsFor.OrderBy(e => e.Key).Select(e => e.Value is { } n ? n == 1 ? "1 egg" : $"{n} eggs" : "never"),
                ])]);
        }

        page.Verdict(answer.Verdict, answer.Notes);
        page.Send();
    }
}
