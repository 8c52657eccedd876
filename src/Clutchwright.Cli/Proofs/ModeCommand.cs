using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Proofs;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Proofs;

/// <summary><c>proof mode</c>: how is this new look inherited?</summary>
internal static class ModeCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var clutch = new Option<string[]>("--clutch")
        {
            Description = "Parents with what they show (normal, shows, super), and their young: \"Rex shows x Ada normal: sons 5 shows 4 normal, daughters 3 shows 6 normal\". Any number of times; a name stands for one animal.",
            HelpName = "TEXT",
        };
        var file = new Argument<string?>("FILE.csv") { Description = "A pedigree file, all of which is counted; with --trait. Leave it out to give clutches.", Arity = ArgumentArity.ZeroOrOne };
        var trait = new Option<string?>("--trait") { Description = "With FILE.csv: the word for the look in its column seen. It need not be in the catalogue.", HelpName = "WORD" };
        var beside = new Option<string?>("--beside") { Description = "With FILE.csv: a gene of the catalogue whose locus it may share.", HelpName = "GENE" };
        var command = new Command("mode", "How is this new look inherited? Every hypothesis with its odds.") { file, trait, beside, clutch };
        command.SetAction(async (asked, cancel) =>
        {
            var isOfFile = asked.GetValue(file) is not null;
            if (isOfFile ? asked.GetValue(trait) is null || asked.GetValue(clutch) is { Length: > 0 } : (asked.GetValue(trait) ?? asked.GetValue(beside)) is not null)
            {
                return terminal.AskedWrongly("proof mode: give FILE.csv and --trait WORD, or --clutch TEXT any number of times");
            }

            var content = isOfFile ? await File.ReadAllBytesAsync(asked.GetValue(file)!, cancel) : [];
            await using var questions = common.Open(asked);
            if (isOfFile)
            {
                var ofFile = await questions.GetRequiredService<AskPedigreeMode>()
                    .RunAsync(new(asked.GetValue(file)!, content), asked.GetValue(trait)!, asked.GetValue(beside), cancel);
                return PedigreeModePage.Send(common, terminal, asked, ofFile, isAllelism: false);
            }

            var answer = questions.GetRequiredService<AskTraitMode>().Run(new(asked.GetValue(clutch) ?? []));
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

    private static JsonObject Json(TraitModeAnswer answer) => new()
    {
        ["hypotheses"] = JsonShapes.Array(answer.Lines, l => new JsonObject
        {
            ["mode"] = PedigreeModePage.Mode(l.Evidence.Hypothesis.Mode),
            ["placement"] = PedigreeModePage.Placement(l.Evidence.Hypothesis.Placement),
            ["text"] = l.Text,
            ["logLikelihood"] = ProofWords.Number(l.Evidence.LogLikelihood),
            ["prior"] = l.Evidence.Prior,
            ["posterior"] = l.Evidence.Posterior,
        }),
        ["contradiction"] = answer.Test.IsContradiction,
        ["verdict"] = answer.Verdict,
        ["notes"] = JsonShapes.Array(answer.Notes),
    };

    private static void Show(Terminal terminal, TraitModeAnswer answer)
    {
        var page = new Page(terminal);
        page.Table(
            [">odds", "inherited as", ">the best fits better by"],
            [.. answer.Lines.Select(l => new[]
            {
                ProofWords.Percent(l.Evidence.Posterior),
                Page.Plain(l.Text),
                double.IsNegativeInfinity(l.Evidence.LogLikelihood) ? "cannot be" : $"{ProofWords.Factor(l.AgainstBest)} times",
            })]);
        page.Verdict(answer.Verdict, answer.Notes);
        page.Send();
    }
}
