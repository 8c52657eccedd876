using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Proofs;
using Clutchwright.Proofs.Linkages;

namespace Clutchwright.Cli.Proofs;

/// <summary><c>proof linkage</c>: do two genes share a chromosome, and how far apart do they lie?</summary>
internal static class LinkageCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var recombinants = Options.Count("--recombinants", "Young in which the two genes came apart; with --phase unknown either of the two kinds.", "K", 0, LinkageFamily.MostMeioses);
        var meioses = Options.Count("--meioses", "Young in which it can be seen what the parent passed on at both.", "N", 1, LinkageFamily.MostMeioses);
        var family = new Option<string[]>("--family") { Description = "Recombinants and meioses of one doubly heterozygous parent, in place of the two above. Any number of times.", HelpName = "K/N" };
        var phase = Phase("known or unknown: whether recombinants can be told from parental types. With --intercross: coupling or repulsion. Default: known, or coupling.");
        var intercross = new Option<string?>("--intercross")
        {
            Description = "The young of double het × double het, four counts: both looks, the first only, the second only, neither.",
            HelpName = "A,B,C,D",
        };
        var command = new Command("linkage", "Do two genes share a chromosome, and how far apart do they lie? LOD score and intervals.") { recombinants, meioses, family, phase, intercross };
        command.SetAction(asked =>
        {
            var (k, n, families, told, classes) = (asked.GetValue(recombinants), asked.GetValue(meioses), asked.GetValue(family) ?? [], asked.GetValue(phase), asked.GetValue(intercross));
            string[] phases = classes is null ? ["known", "unknown"] : ["coupling", "repulsion"];
            told ??= phases[0];
            if (!phases.Contains(told, StringComparer.Ordinal))
            {
                return terminal.AskedWrongly($"--phase: '{told}' is none here; write {Spelling.OneOf(phases)}{Spelling.Hint(told, phases)}");
            }

            if ((k is null) != (n is null) || (k is null && families.Length == 0 && classes is null))
            {
                return terminal.AskedWrongly("proof linkage: give --recombinants K and --meioses N, or --family K/N, or --intercross A,B,C,D");
            }

            if ((k is not null ? 1 : 0) + (families.Length > 0 ? 1 : 0) + (classes is null ? 0 : 1) > 1)
            {
                return terminal.AskedWrongly("proof linkage: --recombinants with --meioses, --family and --intercross are three ways to ask; give one of them");
            }

            var read = new List<(int, int)>();
            foreach (var text in families)
            {
                if (ReadFamily(text) is not { } counts)
                {
                    return terminal.AskedWrongly($"--family: '{text}' is not K/N, for example 2/17");
                }

                read.Add(counts);
            }

            if (k is { } few && n is { } all)
            {
                read.Add((few, all));
            }

            var answer = AskLinkage.Run(new(read, told is "known") { Intercross = classes, IsCoupling = told is "coupling" });
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

    /// <summary>The option that says what is known of a parent's strands.</summary>
    public static Option<string?> Phase(string help) => new("--phase") { Description = help, HelpName = "PHASE" };

    private static (int Recombinants, int Meioses)? ReadFamily(string text)
    {
        var parts = text.Split('/', StringSplitOptions.TrimEntries);
        return parts.Length == 2
            && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var k)
            && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            ? (k, n)
            : null;
    }

    private static JsonObject Json(LinkageAnswer answer)
    {
        var json = ProofWords.Linkage(answer.Curve, answer.LodAt, answer.Test?.Interval)
            .With("intervalKind", answer.Test?.Interval is null ? "support" : "exact")
            .With("credible", ProofWords.Interval(answer.Test?.Credible))
            .With("meioses", answer.Meioses);
        if (answer.Test?.Heterogeneity is { } apart)
        {
            json["heterogeneity"] = new JsonObject { ["chiSquare"] = apart.ChiSquare, ["degreesOfFreedom"] = apart.DegreesOfFreedom, ["pValue"] = apart.PValue };
        }

        if (answer.Intercross is { } intercross)
        {
            json["standardError"] = ProofWords.Number(intercross.StandardError);
            json["phase"] = intercross.IsCoupling ? "coupling" : "repulsion";
        }

        return json.With("verdict", answer.Verdict).With("notes", JsonShapes.Array(answer.Notes));
    }

    private static void Show(Terminal terminal, LinkageAnswer answer)
    {
        var page = new Page(terminal);
        page.Table(
            ["", ""],
            [
                ["best r", $"{answer.Curve.Best:0.#####}"],
                ["LOD there", $"{answer.Curve.Most:0.###}"],
                answer.Test?.Interval is { } interval ? ["95% interval, exact", ProofWords.Range(interval)] : ["", ""],
                answer.Test is { } test ? ["95% interval, Bayesian", ProofWords.Range(test.Credible)] : ["", ""],
                answer.Intercross is { } cross ? ["standard error", $"{cross.StandardError:0.#####}"] : ["", ""],
                ["support, LOD within 1", ProofWords.Range(answer.Curve.Support)],
                ["counted", $"{answer.Meioses:N0}"],
            ]);
        page.Lod(answer.LodAt);
        page.Verdict(answer.Verdict, answer.Notes);
        page.Send();
    }
}
