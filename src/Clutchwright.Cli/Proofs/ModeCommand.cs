using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Proofs;
using Clutchwright.Proofs.Modes;
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
            Required = true,
        };
        var command = new Command("mode", "How is this new look inherited? Every hypothesis with its odds.") { clutch };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
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
            ["mode"] = l.Evidence.Hypothesis.Mode switch
            {
                null => null,
                Genetics.Loci.InheritanceMode.Recessive => "recessive",
                Genetics.Loci.InheritanceMode.IncompleteDominant => "incomplete-dominant",
                _ => "dominant",
            },
            ["placement"] = l.Evidence.Hypothesis.Placement switch
            {
                TraitPlacement.Autosomal => "autosomal",
                TraitPlacement.FullySexLinked => "fully-sex-linked",
                TraitPlacement.PartlySexLinked => "partly-sex-linked",
                _ => "not-inherited",
            },
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
