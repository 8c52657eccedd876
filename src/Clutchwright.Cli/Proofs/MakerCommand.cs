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
        var sonsWith = Options.Count("--sons-with", "Sons of the carrier that have the gene.", "N", 0, 100_000);
        var sonsWithout = Options.Count("--sons-without", "Sons that do not.", "N", 0, 100_000);
        var daughtersWith = Options.Count("--daughters-with", "Daughters that have it.", "N", 0, 100_000);
        var daughtersWithout = Options.Count("--daughters-without", "Daughters that do not.", "N", 0, 100_000);
        var phase = LinkageCommand.Phase("What the carrier is: unknown, male-maker or female-maker. Default: unknown.");
        var command = new Command("maker", "Does a gene ride on the sex chromosomes? From the young of a carrier of the sex with two different ones.")
        {
            sonsWith,
            sonsWithout,
            daughtersWith,
            daughtersWithout,
            phase,
        };
        command.SetAction(async (asked, cancel) =>
        {
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
