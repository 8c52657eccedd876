using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Allelisms;

namespace Clutchwright.Desk.Proofs;

/// <summary>Do two genes share a locus?</summary>
public static class AskAllelism
{
    /// <summary>The crosses by their names.</summary>
    public static readonly IReadOnlyList<(string Name, AllelismPairing Pairing, string Words)> Crosses =
    [
        ("visual-visual", AllelismPairing.VisualByVisual, "visual of one × visual of the other"),
        ("visual-het", AllelismPairing.VisualByHet, "visual of one × het of the other"),
        ("het-het", AllelismPairing.HetByHet, "het of one × het of the other"),
        ("both-neither", AllelismPairing.BothByNeither, "one copy of each visible gene × neither"),
    ];

    private static readonly int[] Confidences = [90, 95, 99];

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    public static Answer<AllelismAnswer> Run(AllelismQuestion question)
    {
        var problems = new List<AskedWrongly>();
        var prior = ChanceReader.Read("prior", question.Prior, problems);
        var misread = question.Misread is null ? Probability.Impossible : ChanceReader.Read("misread", question.Misread, problems);
        if (misread > Probability.Half)
        {
            problems.Add(new("misread", $"'{question.Misread}' is misread more often than not. Write at most 1/2."));
        }

        if (question.Clutches.Count == 0)
        {
            problems.Add(new("cross", $"No cross is named. Write {string.Join(", ", Crosses.Select(c => c.Name))}."));
        }

        var clutches = question.Clutches.Select(c => Read(c, problems)).ToArray();
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var test = AllelismTest.Of(prior!.Value, [.. clutches.Select(c => c!)], misread!.Value);
        return new AllelismAnswer(test, [.. test.Clutches.Select(c => Line(c, misread.Value))], Verdict(test), [.. Notes(test)]);
    }

    /// <summary>The cross of a name; <c>null</c>, and a problem, where there is none.</summary>
    internal static AllelismPairing? Cross(string where, string name, List<AskedWrongly> problems)
    {
        var found = Crosses.FirstOrDefault(c => string.Equals(c.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));
        if (found.Name is null)
        {
            problems.Add(new(where, $"'{name}' is no cross for this. Write {string.Join(", ", Crosses.Select(c => c.Name))}.", DidYouMean: NearWords.Of(name, Crosses.Select(c => c.Name))));
            return null;
        }

        return found.Pairing;
    }

    private static AllelismClutch? Read(AllelismPairQuestion asked, List<AskedWrongly> problems)
    {
        var pairing = Cross("cross", asked.Cross, problems);
        var carries = asked.Carries is null ? Probability.Certain : ChanceReader.Read("carries", asked.Carries, problems);
        foreach (var (where, count) in new[] { ("telling", asked.Telling), ("others", asked.Others) })
        {
            if (count is < 0 or > AllelismTest.MostYoung)
            {
                problems.Add(new(where, $"{count} is no number of young. Write 0 to {AllelismTest.MostYoung}."));
                return null;
            }
        }

        return pairing is null || carries is null ? null : new(pairing.Value, asked.Telling, asked.Others) { Carries = carries.Value };
    }

    private static AllelismLine Line(AllelismClutch clutch, Probability misread) => new(
        Crosses.First(c => c.Pairing == clutch.Pairing).Words,
        clutch.Pairing == AllelismPairing.BothByNeither ? "has both or neither" : "shows",
        clutch,
        AllelismTest.PerEgg(clutch.Pairing, isTelling: true, misread),
        AllelismTest.PerEgg(clutch.Pairing, isTelling: false, misread),
        Confidences.ToDictionary(c => c, c => (int?)AllelismTest.EggsFor(clutch.Pairing, Probability.Ratio(c, 100))));

    private static string Verdict(AllelismTest test) => test switch
    {
        { IsContradiction: true } => "Neither one locus nor two can give these young of these parents: something recorded is wrong.",
        { Posterior.IsCertain: true } => "One locus: no other way gives these young.",
        { Posterior.IsImpossible: true } => "Two loci: one locus cannot give these young.",
        { Posterior.Value: >= 0.95 } => $"One locus, with {OddsText.Percent(test.Posterior)}.",
        { Posterior.Value: <= 0.05 } => $"Two loci, with {OddsText.Percent(test.Posterior.Complement)}.",
        _ => $"Not settled: {OddsText.RatioAndPercent(test.Posterior)} for one locus.",
    };

    private static IEnumerable<string> Notes(AllelismTest test)
    {
        if (test.Misread.IsImpossible)
        {
            yield return "No egg is taken as misread, so that one telling egg settles it; --misread gives a chance for it.";
        }

        yield return "Two loci are taken as free of each other. Visible genes on two loci close together look like one locus until one egg has both or neither.";
        yield return "You may stop when it is clear: this chance depends on what hatched, not on why you stopped.";
    }
}
