using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Proofs;
using Clutchwright.Desk.Words;

namespace Clutchwright.Cli.Proofs;

/// <summary><c>proof het</c>: is this animal het?</summary>
internal static class HetCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var prior = new Option<string>("--prior") { Description = "The chance that it is het, before its young: 2/3, 66% (which means 2/3, as the trade writes it) or 0.5.", HelpName = "P", Required = true };
        var mate = new Option<string[]>("--mate") { Description = "What the mate is: visual, het, or a possible het such as \"66% het\". Once for each mate.", HelpName = "MATE", Required = true };
        var normals = new Option<int[]>("--normals") { Description = "Young of that mate that do not show it, all its clutches together. Once for each mate, in the same order.", HelpName = "N" };
        var visuals = new Option<int[]>("--visuals") { Description = "Young of that mate that show it. Once for each mate, or left out.", HelpName = "N" };
        var matePrior = new Option<string[]>("--mate-prior") { Description = "The chance that a het mate carries, in place of \"66% het\". Once for each mate, or left out.", HelpName = "Q" };
        var below = new Option<string?>("--below") { Description = "Count the eggs until the chance falls to B. Default: 1%.", HelpName = "B" };
        var command = new Command("het", "Is this animal het? What its young say, and how many more it takes.") { prior, mate, normals, visuals, matePrior, below };
        command.SetAction(asked =>
        {
            var mates = asked.GetValue(mate) ?? [];
            var (normal, visual, priors) = (asked.GetValue(normals) ?? [], asked.GetValue(visuals) ?? [], asked.GetValue(matePrior) ?? []);
            foreach (var (name, number) in new[] { ("--normals", normal.Length), ("--visuals", visual.Length), ("--mate-prior", priors.Length) })
            {
                if (number != 0 && number != mates.Length)
                {
                    return terminal.AskedWrongly($"{name}: is given {number} times for {mates.Length} mates; give it once for each --mate, in the same order");
                }
            }

            var question = new HetQuestion(
                asked.GetValue(prior) ?? string.Empty,
                [.. mates.Select((m, i) => new HetMateQuestion(m, At(normal, i), At(visual, i)) { Prior = i < priors.Length ? priors[i] : null })])
            {
                Below = asked.GetValue(below),
            };
            var answer = AskHetProof.Run(question);
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

            static int At(int[] counts, int i) => i < counts.Length ? counts[i] : 0;
        });
        return command;
    }

    private static JsonObject Json(HetAnswer answer)
    {
        var proof = answer.Proof;
        return new JsonObject()
            .With("posterior", proof.Posterior)
            .With("eggsFor", ProofWords.ByPercent(answer.Mates[0].EggsFor))
            .With("prior", proof.Prior)
            .With("ifHet", proof.IfHet)
            .With("ifNotHet", proof.IfNotHet)
            .With("contradiction", proof.IsContradiction)
            .With("below", answer.Below)
            .With("eggsUntilBelow", answer.Mates[0].EggsUntilBelow)
            .With("mates", JsonShapes.Array(answer.Mates, m => new JsonObject { ["mate"] = m.Text, ["normals"] = m.Mate.Normals, ["visuals"] = m.Mate.Visuals }
                .With("carries", m.Carries)
                .With("bayesFactor", ProofWords.Number(m.BayesFactor))
                .With("eggsFor", ProofWords.ByPercent(m.EggsFor))
                .With("eggsUntilBelow", m.EggsUntilBelow)
                .With("afterNormals", JsonShapes.Array(m.After, p => JsonValue.Create(p.Value)))))
            .With("verdict", answer.Verdict)
            .With("notes", JsonShapes.Array(answer.Notes));
    }

    private static void Show(Terminal terminal, HetAnswer answer)
    {
        var (page, proof) = (new Page(terminal), answer.Proof);
        page.Table(
            ["", ""],
            [
                ["before its young", Page.Plain(OddsText.RatioAndPercent(proof.Prior))],
                ["now", Page.Plain(OddsText.RatioAndPercent(proof.Posterior))],
            ]);
        page.Table(
            ["mate", ">normal", ">visual", ">odds times", ">mate carries", .. answer.Mates[0].EggsFor.Keys.Order().Select(c => $">eggs for {c}%"), $">normals until {OddsText.Percent(answer.Below)}"],
            [.. answer.Mates.Select(m => (string[])
            [
                Page.Plain(m.Text),
                $"{m.Mate.Normals:N0}",
                $"{m.Mate.Visuals:N0}",
                ProofWords.Factor(m.BayesFactor),
                Page.Plain(OddsText.Percent(m.Carries)),
                .. m.EggsFor.OrderBy(e => e.Key).Select(e => ProofWords.Eggs(e.Value)),
                m.EggsUntilBelow is 0 ? "reached" : ProofWords.Eggs(m.EggsUntilBelow),
            ])]);
        if (!proof.IsContradiction && !proof.Posterior.IsCertain && answer.Mates is [{ After.Count: > 0 } only])
        {
            page.Line($"If the next {AskHetProof.EggsShown} hatch normal:");
            page.Table(
                ["eggs", .. Enumerable.Range(1, AskHetProof.EggsShown).Select(n => $">{n}")],
                [["het", .. only.After.Skip(1).Select(p => Page.Plain(OddsText.Percent(p)))]]);
        }

        page.Verdict(answer.Verdict, answer.Notes);
        page.Send();
    }
}
