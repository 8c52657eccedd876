using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Proofs;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Proofs;

/// <summary><c>proof allelism</c>: do two genes share a locus?</summary>
internal static class AllelismCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var prior = new Option<string>("--prior") { Description = "The chance of one locus before counting: 1/2, 10% or 0.5. Default: 1/2.", HelpName = "P", DefaultValueFactory = _ => "1/2" };
        var cross = new Option<string[]>("--cross") { Description = $"The cross: {string.Join(", ", AskAllelism.Crosses.Select(c => c.Name))}. Once for each pair.", HelpName = "CROSS" };
        var file = new Argument<string?>("FILE.csv") { Description = "A pedigree file, all of which is counted; with --genes. Leave it out to give the young of crosses.", Arity = ArgumentArity.ZeroOrOne };
        var genes = new Option<string?>("--genes") { Description = "With FILE.csv: the two genes, as they stand in its column seen.", HelpName = "A,B" };
        var telling = new Option<int[]>("--telling") { Description = "Young that show (recessives), or that have both or neither (visible genes). Once for each pair.", HelpName = "N" };
        var others = new Option<int[]>("--others") { Description = "The other young. Once for each pair.", HelpName = "N" };
        var carries = new Option<string[]>("--carries") { Description = "The chance that the parents are what the cross says. Once for each pair, or left out.", HelpName = "Q" };
        var misread = new Option<string?>("--misread") { Description = "The chance that an egg is read as the other kind. Default: 0.", HelpName = "E" };
        var command = new Command("allelism", "Do two genes share a locus? The complementation test, egg by egg.") { file, genes, prior, cross, telling, others, carries, misread };
        command.SetAction(async (asked, cancel) =>
        {
            if (asked.GetValue(file) is { } path)
            {
                return asked.GetValue(genes)?.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) is [var first, var second] && asked.GetValue(cross) is not { Length: > 0 }
                    ? await OfPedigreeAsync(common, terminal, asked, path, (first, second), cancel)
                    : terminal.AskedWrongly("proof allelism: FILE.csv needs --genes A,B, and crosses stand without a file");
            }

            if (asked.GetValue(genes) is not null || asked.GetValue(cross) is not { Length: > 0 })
            {
                return terminal.AskedWrongly("proof allelism: give FILE.csv and --genes A,B, or --cross CROSS with what hatched");
            }

            var crosses = asked.GetValue(cross) ?? [];
            var (tell, other, carry) = (asked.GetValue(telling) ?? [], asked.GetValue(others) ?? [], asked.GetValue(carries) ?? []);
            foreach (var (name, number) in new[] { ("--telling", tell.Length), ("--others", other.Length), ("--carries", carry.Length) })
            {
                if (number != 0 && number != crosses.Length)
                {
                    return terminal.AskedWrongly($"{name}: is given {number} times for {crosses.Length} crosses; give it once for each --cross, in the same order");
                }
            }

            var answer = AskAllelism.Run(new(
                asked.GetValue(prior) ?? "1/2",
                [.. crosses.Select((c, i) => new AllelismPairQuestion(c, i < tell.Length ? tell[i] : 0, i < other.Length ? other[i] : 0) { Carries = i < carry.Length ? carry[i] : null })])
            {
                Misread = asked.GetValue(misread),
            });
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

    private static async Task<int> OfPedigreeAsync(
        CommonOptions common, Terminal terminal, ParseResult asked, string path, (string First, string Second) genes, CancellationToken cancel)
    {
        var content = await File.ReadAllBytesAsync(path, cancel);
        await using var questions = common.Open(asked);
        var answer = await questions.GetRequiredService<AskPedigreeMode>().RunAsync(new(path, content), genes, cancel);
        return PedigreeModePage.Send(common, terminal, asked, answer, isAllelism: true);
    }

    private static JsonObject Json(AllelismAnswer answer) => new JsonObject()
        .With("posterior", answer.Test.Posterior)
        .With("prior", answer.Test.Prior)
        .With("bayesFactor", ProofWords.Number(answer.Test.BayesFactor))
        .With("ifOneLocus", answer.Test.IfOneLocus)
        .With("ifTwoLoci", answer.Test.IfTwoLoci)
        .With("contradiction", answer.Test.IsContradiction)
        .With("pairs", JsonShapes.Array(answer.Pairs, p => new JsonObject
        {
            ["cross"] = p.Text,
            ["telling"] = p.Clutch.Telling,
            ["others"] = p.Clutch.Others,
            ["perTelling"] = ProofWords.Number(p.PerTelling),
            ["perOther"] = ProofWords.Number(p.PerOther),
            ["eggsFor"] = ProofWords.ByPercent(p.EggsFor),
        }))
        .With("verdict", answer.Verdict)
        .With("notes", JsonShapes.Array(answer.Notes));

    private static void Show(Terminal terminal, AllelismAnswer answer)
    {
        var page = new Page(terminal);
        page.Table(
            ["", ""],
            [
                ["one locus, before", Page.Plain(OddsText.RatioAndPercent(answer.Test.Prior))],
                ["one locus, now", Page.Plain(OddsText.RatioAndPercent(answer.Test.Posterior))],
                ["odds times", answer.Test.IsContradiction ? string.Empty : ProofWords.Factor(answer.Test.BayesFactor)],
            ]);
        page.Table(
            ["cross", "a telling egg", ">telling", ">others", ">odds times, telling", ">other", .. answer.Pairs[0].EggsFor.Keys.Order().Select(c => $">eggs for {c}%")],
            [.. answer.Pairs.Select(p => (string[])
            [
                Page.Plain(p.Text),
                p.TellingText,
                $"{p.Clutch.Telling:N0}",
                $"{p.Clutch.Others:N0}",
                ProofWords.Factor(p.PerTelling),
                ProofWords.Factor(p.PerOther),
                .. p.EggsFor.OrderBy(e => e.Key).Select(e => ProofWords.Eggs(e.Value)),
            ])]);
        page.Verdict(answer.Verdict, answer.Notes);
        page.Send();
    }
}
