using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Proofs;

namespace Clutchwright.Cli.Proofs;

/// <summary><c>proof segregation</c>: do these counts fit what the genes should give?</summary>
internal static class SegregationCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var observed = new Option<string[]>("--observed")
        {
            Description = "The counts, with names or without. Once for each clutch: several clutches are tested together and against each other.",
            HelpName = "\"NAME=N,…\"",
            Required = true,
        };
        var expected = new Option<string>("--expected") { Description = "The ratio expected, in the order of the counts.", HelpName = "9:3:3:1", Required = true };
        var seed = Options.Count("--seed", "The seed for outcomes that are drawn where they are too many to add up. Default: 1866.", "N", 0, int.MaxValue);
        var command = new Command("segregation", "Do these counts fit what the genes should give? Chi-square and the exact test.") { observed, expected, seed };
        command.SetAction(asked =>
        {
            var question = new SegregationQuestion(asked.GetValue(observed) ?? [], asked.GetValue(expected) ?? string.Empty);
            if (asked.GetValue(seed) is { } given)
            {
                question = question with { Seed = (ulong)given };
            }

            var answer = AskSegregation.Run(question);
            if (answer.Value is not { } found)
            {
                return terminal.AskedWrongly(answer.Problems, _ => null);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(Json(found, question));
            }
            else
            {
                Show(terminal, found);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static JsonObject Json(SegregationAnswer answer, SegregationQuestion question)
    {
        var test = answer.Test;
        var json = new JsonObject
        {
            ["chiSquare"] = test.ChiSquare,
            ["degreesOfFreedom"] = test.DegreesOfFreedom,
            ["pValue"] = test.PValue,
            ["exactPValue"] = test.Exact.Value,
            ["exact"] = ProofWords.Exact(test.Exact),
            ["seed"] = question.Seed,
            ["classes"] = new JsonArray([.. answer.Classes.Select((name, i) => new JsonObject
            {
                ["name"] = name,
                ["observed"] = test.Observed[i],
                ["expected"] = test.Expected[i],
                ["share"] = test.Shares[i].ToDouble(),
                ["shareExact"] = test.Shares[i].ToString(),
                ["chiSquare"] = test.Contributions[i],
            })]),
        };
        if (answer.Heterogeneity is { } together)
        {
            json["clutches"] = JsonShapes.Array(together.Clutches, c => new JsonObject
            {
                ["observed"] = JsonShapes.Array(c.Observed, n => JsonValue.Create(n)),
                ["chiSquare"] = c.ChiSquare,
                ["degreesOfFreedom"] = c.DegreesOfFreedom,
                ["pValue"] = c.PValue,
                ["exactPValue"] = c.Exact.Value,
            });
            json["sum"] = new JsonObject { ["chiSquare"] = together.Sum, ["degreesOfFreedom"] = together.SumDegreesOfFreedom, ["pValue"] = together.SumPValue };
            json["heterogeneity"] = new JsonObject
            {
                ["chiSquare"] = together.ChiSquare,
                ["degreesOfFreedom"] = together.DegreesOfFreedom,
                ["pValue"] = together.PValue,
                ["exactPValue"] = together.Exact.Value,
                ["exact"] = ProofWords.Exact(together.Exact),
            };
        }

        return json.With("verdict", answer.Verdict).With("notes", JsonShapes.Array(answer.Notes));
    }

    private static void Show(Terminal terminal, SegregationAnswer answer)
    {
        var (page, test) = (new Page(terminal), answer.Test);
        page.Table(
            ["class", ">seen", ">expected", ">share", ">adds to chi-square"],
            [.. answer.Classes.Select((name, i) => new[]
            {
                Page.Plain(name), $"{test.Observed[i]:N0}", $"{test.Expected[i]:N1}", $"{test.Shares[i]}", $"{test.Contributions[i]:0.###}",
            })]);
        if (answer.Heterogeneity is { } together)
        {
            page.Heading("Clutch by clutch");
            page.Table(
                ["", ">chi-square", ">df", ">p", ">exact p"],
                [
                    .. together.Clutches.Select((c, i) => new[]
                    {
                        $"clutch {i + 1}: {string.Join(':', c.Observed)}", $"{c.ChiSquare:0.#####}", $"{c.DegreesOfFreedom}", ProofWords.P(c.PValue), ProofWords.P(c.Exact),
                    }),
                    ["sum", $"{together.Sum:0.#####}", $"{together.SumDegreesOfFreedom}", ProofWords.P(together.SumPValue), string.Empty],
                    ["together", $"{test.ChiSquare:0.#####}", $"{test.DegreesOfFreedom}", ProofWords.P(test.PValue), ProofWords.P(test.Exact)],
                    ["disagreement", $"{together.ChiSquare:0.#####}", $"{together.DegreesOfFreedom}", ProofWords.P(together.PValue), ProofWords.P(together.Exact)],
                ]);
        }
        else
        {
            page.Table(
                ["", ""],
                [
                    ["chi-square", $"{test.ChiSquare:0.#####}, {test.DegreesOfFreedom} df"],
                    ["p", ProofWords.P(test.PValue)],
                    ["exact p", ProofWords.P(test.Exact)],
                ]);
        }

        page.Verdict(answer.Verdict, answer.Notes);
        page.Send();
    }
}
