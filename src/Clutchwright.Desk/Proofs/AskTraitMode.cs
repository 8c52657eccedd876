using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Modes;

namespace Clutchwright.Desk.Proofs;

/// <summary>How is this new look inherited?</summary>
public sealed class AskTraitMode
{
    private const double Settled = 0.95;

    private readonly OpenCatalogue _catalogue;

    internal AskTraitMode(OpenCatalogue catalogue) => _catalogue = catalogue;

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    public Answer<TraitModeAnswer> Run(TraitModeQuestion question)
    {
        var problems = new List<AskedWrongly>();
        var clutches = question.Clutches
            .Select((c, i) => TraitClutchReader.Read(question.Clutches.Count == 1 ? "clutch" : $"clutch {i + 1}", c, i + 1, problems))
            .OfType<TraitClutch>()
            .ToArray();
        if (question.Clutches.Count == 0)
        {
            problems.Add(new("clutch", $"No clutch is given. {TraitClutchReader.Shape}."));
        }

        var looks = new Dictionary<string, TraitLook>(StringComparer.OrdinalIgnoreCase);
        foreach (var (name, look) in clutches.SelectMany(c => new[] { (c.Sire, c.SireLook), (c.Dam, c.DamLook) }))
        {
            if (!looks.TryAdd(name, look) && looks[name] != look)
            {
                problems.Add(new("clutch", $"{name} shows one thing in one clutch and another in the next. Write the same each time."));
            }
        }

        if (clutches.Select(c => c.Sire).Intersect(clutches.Select(c => c.Dam), StringComparer.OrdinalIgnoreCase).FirstOrDefault() is { } both)
        {
            problems.Add(new("clutch", $"{both} is a sire in one clutch and a dam in another. The sire stands first."));
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        TraitModeTest test;
        try
        {
            test = TraitModeTest.Of([.. clutches.Select(Folded)], _catalogue.Species.SexSystem);
        }
        catch (ArgumentException tooMany)
        {
            return new AskedWrongly("clutch", tooMany.Message);
        }

        var best = test.Evidence[0];
        return new TraitModeAnswer(
            test,
            clutches,
            [.. test.Evidence.Select(e => new TraitModeLine(Words(e.Hypothesis), e, Math.Exp(best.LogLikelihood - e.LogLikelihood)))],
            Verdict(test),
            [
                "All hypotheses are equally likely before counting; the odds are what these clutches say of them.",
                "Parents are taken as unrelated, every genotype as living and showing alike. What the parents show is taken as given; what they may carry is summed over.",
                "You may stop when it is clear: the odds depend on what hatched, not on why you stopped.",
            ]);
    }

    /// <summary>A hypothesis in words.</summary>
    internal static string Words(TraitHypothesis hypothesis)
    {
        var mode = hypothesis.Mode switch
        {
            InheritanceMode.Recessive => "recessive",
            InheritanceMode.IncompleteDominant => "incomplete dominant",
            _ => "dominant",
        };
        return hypothesis.Placement switch
        {
            TraitPlacement.Autosomal => mode,
            TraitPlacement.FullySexLinked => $"{mode}, always with one sex chromosome",
            TraitPlacement.PartlySexLinked => $"{mode}, on the sex chromosomes but for crossing over",
            _ => "not inherited: chance, or how it was incubated",
        };
    }

    // One animal, one spelling.
    private static TraitClutch Folded(TraitClutch clutch) =>
        clutch with { Sire = clutch.Sire.ToUpperInvariant(), Dam = clutch.Dam.ToUpperInvariant() };

    private static string Verdict(TraitModeTest test)
    {
        var best = test.Evidence[0];
        return test.IsContradiction
            ? "No hypothesis of the list can give these clutches: a misread animal, another sire, or something the list does not hold."
            : best.Posterior >= Settled
                ? $"Most likely {Words(best.Hypothesis)}: {OddsText.Percent(Probability.Rounded(best.Posterior))} of the odds."
                : $"Not settled. Best: {Words(best.Hypothesis)}, {OddsText.Percent(Probability.Rounded(best.Posterior))}; next: {Words(test.Evidence[1].Hypothesis)}, {OddsText.Percent(Probability.Rounded(test.Evidence[1].Posterior))}.";
    }
}
