using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Hets;

namespace Clutchwright.Desk.Proofs;

/// <summary>Is this animal het? What the young of a possible het say, and how many more it takes.</summary>
public static class AskHetProof
{
    /// <summary>How many further eggs are shown one by one.</summary>
    public const int EggsShown = 12;

    private static readonly int[] Confidences = [90, 95, 99];

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    public static Answer<HetAnswer> Run(HetQuestion question)
    {
        var problems = new List<AskedWrongly>();
        var prior = ChanceReader.Read("prior", question.Prior, problems);
        var below = question.Below is null ? Probability.Ratio(1, 100) : ChanceReader.Read("below", question.Below, problems);
        if (below is { IsImpossible: true } or { IsCertain: true })
        {
            problems.Add(new("below", $"'{question.Below}' is no bound: normal young never prove beyond all doubt that an animal is not het. Write a chance between 0 and 1, for example 1%."));
        }

        if (question.Mates.Count == 0)
        {
            problems.Add(new("mate", "No mate is named. Write visual, het, or a possible het such as 66% het."));
        }

        var mates = question.Mates.Select((m, i) => MateReader.Read(m, question.Mates.Count == 1 ? string.Empty : $" {i + 1}", problems)).ToArray();
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var proof = HetProof.Of(prior!.Value, [.. mates.Select(m => m!)]);
        return new HetAnswer(proof, [.. mates.Select((_, i) => Line(proof, i, below!.Value))], below!.Value, Verdict(proof, below.Value), [.. Notes(question, proof)]);
    }

    private static HetMateLine Line(HetProof proof, int index, Probability below)
    {
        var mate = proof.Mates[index];
        return new(
            MateReader.Words(mate),
            mate,
            proof.MateCarries(index),
            mate.Visuals > 0 ? null : HetProof.Of(Probability.Half, [mate]).IfHet.Value,
            Confidences.ToDictionary(c => c, c => HetProof.EggsFor(mate, Probability.Ratio(c, 100))),
            proof.IsContradiction ? null : proof.NormalsUntil(index, below),
            mate.Normals + EggsShown > HetProof.MostYoung ? [] : proof.AfterNormals(index, EggsShown));
    }

    private static string Verdict(HetProof proof, Probability below)
    {
        var shown = proof.Mates.Any(m => m.Visuals > 0);
        return (proof, shown) switch
        {
            ({ IsContradiction: true }, _) => "This cannot be: a visual hatched of a pair that could give none. Another sire, stored sperm, a misread look, or a statement that is wrong.",
            ({ Posterior.IsCertain: true }, true) => "Proven: a visual hatched, so the animal is het.",
            ({ Posterior.IsCertain: true }, false) or ({ Prior.IsImpossible: true }, _) => "The prior leaves no doubt, so the young change nothing.",
            _ when proof.Posterior <= below => $"Most likely not het: {OddsText.RatioAndPercent(proof.Posterior)} is left.",
            _ when proof.Mates.All(m => m.Normals == 0) => "No young yet, so the prior stands.",
            _ => $"Not settled: {OddsText.RatioAndPercent(proof.Posterior)} that the animal is het.",
        };
    }

    private static IEnumerable<string> Notes(HetQuestion question, HetProof proof)
    {
        if (question.Prior.Trim() is "66%" or "67%" or "33%")
        {
            yield return $"{question.Prior.Trim()} was taken as {proof.Prior}, as the trade writes it.";
        }

        if (proof.Mates.Any(m => !m.IsVisual && !m.Carries.IsCertain))
        {
            yield return "A mate's chance to carry is meant as it is if the animal is het: for the animal's own daughters of a clear dam, 1/2.";
        }

        yield return "You may stop when it is clear: this chance depends on what hatched, not on why you stopped.";
        yield return "Taken for granted: every visual shows, none is misread, and both kinds hatch alike.";
    }
}
