using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Proofs;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Proofs.Modes;

namespace Clutchwright.Cli.Proofs;

/// <summary>The answer of <c>proof mode</c> and <c>proof allelism</c> where a whole pedigree is asked about.</summary>
internal static class PedigreeModePage
{
    public static int Send(CommonOptions common, Terminal terminal, ParseResult asked, Answer<PedigreeModeAnswer> answer, bool isAllelism)
    {
        if (answer.Value is not { } found)
        {
            return terminal.AskedWrongly(answer.Problems, _ => null);
        }

        if (common.IsJson(asked))
        {
            terminal.Send(Json(found, isAllelism));
            return ExitCode.Answered;
        }

        var page = new Page(terminal);
        page.Table(
            [">odds", isAllelism ? "the two lie at" : "inherited as"],
            [.. found.Lines.Select(l => new[]
            {
                double.IsNegativeInfinity(l.Evidence.LogLikelihood) ? "cannot be" : ProofWords.Percent(l.Evidence.Posterior),
                Page.Plain(l.Text),
            })]);
        page.Verdict(found.Verdict, found.Notes.Prepend($"{found.LookedAt:N0} animals of the file were looked at."));
        page.Send();
        return ExitCode.Answered;
    }

    /// <summary>The word for a mode.</summary>
    public static string? Mode(InheritanceMode? mode) => mode switch
    {
        null => null,
        InheritanceMode.Recessive => "recessive",
        InheritanceMode.IncompleteDominant => "incomplete-dominant",
        _ => "dominant",
    };

    /// <summary>The word for a placement.</summary>
    public static string Placement(TraitPlacement placement) => placement switch
    {
        TraitPlacement.Autosomal => "autosomal",
        TraitPlacement.FullySexLinked => "fully-sex-linked",
        TraitPlacement.PartlySexLinked => "partly-sex-linked",
        _ => "not-inherited",
    };

    private static JsonObject Json(PedigreeModeAnswer found, bool isAllelism)
    {
        var json = new JsonObject();
        if (isAllelism)
        {
            var one = found.Test.Evidence.Single(e => e.IsOneLocus);
            var two = found.Test.Evidence.Single(e => !e.IsOneLocus);
            json["posterior"] = one.Posterior;
            json["bayesFactor"] = ProofWords.Number(found.Test.IsContradiction ? null : Math.Exp(one.LogLikelihood - two.LogLikelihood));
        }

        return json
            .With("hypotheses", JsonShapes.Array(found.Lines, l => new JsonObject
            {
                ["mode"] = Mode(l.Evidence.Hypothesis.Mode),
                ["placement"] = Placement(l.Evidence.Hypothesis.Placement),
                ["oneLocus"] = l.Evidence.IsOneLocus,
                ["text"] = l.Text,
                ["logLikelihood"] = ProofWords.Number(l.Evidence.LogLikelihood),
                ["prior"] = l.Evidence.Prior,
                ["posterior"] = l.Evidence.Posterior,
            }))
            .With("contradiction", found.Test.IsContradiction)
            .With("lookedAt", found.LookedAt)
            .With("verdict", found.Verdict)
            .With("notes", JsonShapes.Array(found.Notes));
    }
}
