using Clutchwright.Desk.Words;
using Clutchwright.Proofs.Linkages;

namespace Clutchwright.Desk.Proofs;

/// <summary>Do two genes share a chromosome, and how far apart do they lie?</summary>
public static class AskLinkage
{
    private static readonly double[] Table = [0.0, 0.01, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5];

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    public static Answer<LinkageAnswer> Run(LinkageQuestion question)
    {
        var problems = new List<AskedWrongly>();
        if (question.Intercross is { } counts)
        {
            return OfIntercross(question, counts, problems);
        }

        var phase = question.IsPhaseKnown ? LinkagePhase.Known : LinkagePhase.Unknown;
        foreach (var (recombinants, meioses) in question.Families)
        {
            if (meioses is < 1 or > LinkageFamily.MostMeioses)
            {
                problems.Add(new("meioses", $"{meioses} is no number of meioses. Write 1 to {LinkageFamily.MostMeioses}."));
            }
            else if (recombinants < 0 || recombinants > meioses)
            {
                problems.Add(new("recombinants", $"{recombinants} recombinants of {meioses} meioses cannot be. Write 0 to {meioses}."));
            }
        }

        if (question.Families.Count == 0)
        {
            problems.Add(new("recombinants", "No family is given. Write its recombinants and its meioses."));
        }
        else if (problems.Count == 0 && question.Families.Sum(f => (long)f.Meioses) > LinkageFamily.MostMeioses)
        {
            problems.Add(new("meioses", $"More than {LinkageFamily.MostMeioses} meioses in all are too many."));
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var test = LinkageTest.Of([.. question.Families.Select(f => new LinkageFamily(f.Recombinants, f.Meioses, phase))]);
        return new LinkageAnswer(test, null, test.Curve, LodAt(test.Curve), test.Meioses, LinkageWords.Verdict(test.Curve), [.. LinkageWords.Notes(test)]);
    }

    /// <summary>The LOD at the usual fractions.</summary>
    internal static IReadOnlyList<(double R, double Lod)> LodAt(LodCurve curve) => [.. Table.Select(r => (r, curve.At(r)))];

    private static Answer<LinkageAnswer> OfIntercross(LinkageQuestion question, string text, List<AskedWrongly> problems)
    {
        var counts = ChanceReader.ReadCounts("intercross", text, problems);
        if (counts is not null && counts.Count != 4)
        {
            problems.Add(new("intercross", $"'{text}' has {counts.Count} classes. Write four: both looks, the first only, the second only, neither."));
        }
        else if (counts is not null && counts.Sum(c => (long)c.Count) is 0 or > Clutchwright.Proofs.Segregations.SegregationTest.MostEggs)
        {
            problems.Add(new("intercross", $"'{text}' has no young, or too many."));
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var test = IntercrossTest.Of([.. counts!.Select(c => c.Count)], question.IsCoupling);
        return new LinkageAnswer(
            null,
            test,
            test.Curve,
            LodAt(test.Curve),
            test.Number,
            LinkageWords.Verdict(test.Curve),
            ["The fraction is taken as the same in both parents.", LinkageWords.Looks]);
    }
}
