using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Proofs;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Proofs;

/// <summary><c>proof maker</c>: does a gene ride on the sex chromosomes, and is a carrier a male maker or a female maker?</summary>
internal static class MakerCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var file = new Argument<string?>("FILE.csv") { Description = "A pedigree file, all of which is counted; with --locus. Leave it out to give the young of one carrier.", Arity = ArgumentArity.ZeroOrOne };
        var locus = new Option<string?>("--locus") { Description = "With FILE.csv: the sex-linked locus, by its id or the name of one of its alleles.", HelpName = "ID" };
        var sonsWith = Options.Count("--sons-with", "Sons of the carrier that have the gene.", "N", 0, 100_000);
        var sonsWithout = Options.Count("--sons-without", "Sons that do not.", "N", 0, 100_000);
        var daughtersWith = Options.Count("--daughters-with", "Daughters that have it.", "N", 0, 100_000);
        var daughtersWithout = Options.Count("--daughters-without", "Daughters that do not.", "N", 0, 100_000);
        var phase = LinkageCommand.Phase("What the carrier is: unknown, male-maker or female-maker. Default: unknown.");
        var command = new Command("maker", "Does a gene ride on the sex chromosomes? From the young of a carrier of the sex with two different ones.")
        {
            file,
            locus,
            sonsWith,
            sonsWithout,
            daughtersWith,
            daughtersWithout,
            phase,
        };
        command.SetAction(async (asked, cancel) =>
        {
            var young = new[] { sonsWith, sonsWithout, daughtersWith, daughtersWithout };
            var isCounted = Array.Exists(young, o => asked.GetValue(o) is not null) || asked.GetValue(phase) is not null;
            if (asked.GetValue(file) is { } path)
            {
                return isCounted || asked.GetValue(locus) is null
                    ? terminal.AskedWrongly("proof maker: FILE.csv needs --locus, and counts of young stand without a file")
                    : await OfPedigreeAsync(common, terminal, asked, path, asked.GetValue(locus)!, cancel);
            }

            if (asked.GetValue(locus) is not null)
            {
                return terminal.AskedWrongly("--locus: goes with a pedigree file; name FILE.csv");
            }

            await using var questions = common.Open(asked);
            var counts = new Clutchwright.Proofs.Makers.MakerCounts(
                asked.GetValue(sonsWith) ?? 0, asked.GetValue(sonsWithout) ?? 0, asked.GetValue(daughtersWith) ?? 0, asked.GetValue(daughtersWithout) ?? 0);
            var answer = questions.GetRequiredService<AskMaker>().Run(new([counts], asked.GetValue(phase) ?? "unknown"));
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
        CommonOptions common, Terminal terminal, ParseResult asked, string path, string locus, CancellationToken cancel)
    {
        var bytes = await File.ReadAllBytesAsync(path, cancel);
        await using var questions = common.Open(asked);
        var answer = await questions.GetRequiredService<AskPedigreeMaker>().RunAsync(new(path, bytes), locus, cancel);
        if (answer.Value is not { } found)
        {
            return terminal.AskedWrongly(answer.Problems, _ => null);
        }

        if (common.IsJson(asked))
        {
            terminal.Send(ProofWords.Linkage(found.Curve, found.LodAt, found.Curve.Support)
                .With("meioses", found.Test.Meioses)
                .With("locus", found.Locus)
                .With("method", found.Test.IsExact ? "exact" : "sampled")
                .With("verdict", found.Verdict)
                .With("notes", JsonShapes.Array(found.Notes)));
            return ExitCode.Answered;
        }

        var page = new Page(terminal);
        page.Table(
            ["", ""],
            [
                ["locus", Page.Plain(found.Locus)],
                ["best r", $"{found.Curve.Best:0.####}"],
                ["LOD there, against r = 1/2", $"{found.Curve.Most:0.###}"],
                ["interval, LOD within 1", ProofWords.Range(found.Curve.Support)],
                ["informative meioses", $"{found.Test.Meioses:N0}"],
            ]);
        page.Lod(found.LodAt);
        page.Verdict(found.Verdict, found.Notes);
        page.Send();
        return ExitCode.Answered;
    }

    private static JsonObject Json(MakerAnswer answer) => ProofWords.Linkage(answer.Curve, answer.LodAt, answer.Test.Linkage.Interval)
        .With("meioses", answer.Test.Linkage.Meioses)
        .With("credible", ProofWords.Interval(answer.Test.Linkage.Credible))
        .With("carriers", JsonShapes.Array(answer.Carriers, c => new JsonObject { ["maker"] = c.Words, ["probability"] = c.Chance }))
        .With("verdict", answer.Verdict)
        .With("notes", JsonShapes.Array(answer.Notes));

    private static void Show(Terminal terminal, MakerAnswer answer)
    {
        var page = new Page(terminal);
        page.Table(
            ["", ""],
            [
                ["best r", $"{answer.Curve.Best:0.#####}"],
                ["LOD there, against r = 1/2", $"{answer.Curve.Most:0.###}"],
                answer.Test.Linkage.Interval is { } interval ? ["95% interval, exact", ProofWords.Range(interval)] : ["", ""],
                ["95% interval, Bayesian", ProofWords.Range(answer.Test.Linkage.Credible)],
                ["support, LOD within 1", ProofWords.Range(answer.Curve.Support)],
                ["meioses", $"{answer.Test.Linkage.Meioses:N0}"],
                .. answer.Carriers.Select(c => new[] { "the carrier", $"{c.Words}, {ProofWords.Percent(c.Chance)}" }),
            ]);
        page.Lod(answer.LodAt);
        page.Verdict(answer.Verdict, answer.Notes);
        page.Send();
    }
}
