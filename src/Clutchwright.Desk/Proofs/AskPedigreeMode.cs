using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Modes;

namespace Clutchwright.Desk.Proofs;

/// <summary>How is a look inherited, or do two genes share a locus, by all that a pedigree file records?</summary>
public sealed class AskPedigreeMode
{
    private const double Settled = 0.95;

    private static readonly string[] Assumed =
    [
        "What founders show is taken as given; what they carry is summed over, and so is how common the gene is among them.",
        "Every genotype is taken as living and showing alike, no animal as misread; only what was seen counts, not what was told.",
        "All hypotheses are equally likely before counting. You may stop when it is clear: the odds depend on what hatched, not on why you stopped.",
    ];

    private readonly OpenCatalogue _catalogue;

    internal AskPedigreeMode(OpenCatalogue catalogue) => _catalogue = catalogue;

    /// <summary>How a look is inherited.</summary>
    /// <param name="file">The pedigree.</param>
    /// <param name="trait">The word for the look in the column <c>seen</c>; it need not be in the catalogue.</param>
    /// <param name="beside">A gene of the catalogue whose locus it may share; <c>null</c>: none.</param>
    /// <param name="cancel">Stops the work.</param>
    public async Task<Answer<PedigreeModeAnswer>> RunAsync(NamedFile file, string trait, string? beside, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var other = beside is null ? null : Gene("beside", beside, problems);
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var read = await TraitPedigreeReader.ReadAsync(file, trait, beside, cancel);
        if (read.Value is not { } pedigree)
        {
            return read.Problems.ToArray();
        }

        var test = PedigreeModeTest.Of(pedigree.Animals, _catalogue.Species.SexSystem, other?.Mode, cancel);
        return Answer(test, e => e.IsOneLocus ? $"{AskTraitMode.Words(e.Hypothesis)}, an allele of {beside}" : AskTraitMode.Words(e.Hypothesis), pedigree);
    }

    /// <summary>Whether two genes share a locus.</summary>
    /// <param name="file">The pedigree.</param>
    /// <param name="genes">The two, by name.</param>
    /// <param name="cancel">Stops the work.</param>
    public async Task<Answer<PedigreeModeAnswer>> RunAsync(NamedFile file, (string First, string Second) genes, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var (first, second) = (Gene("genes", genes.First, problems), Gene("genes", genes.Second, problems));
        if (first is not null && first == second)
        {
            problems.Add(new("genes", "Two different genes are needed."));
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var read = await TraitPedigreeReader.ReadAsync(file, genes.First, genes.Second, cancel);
        if (read.Value is not { } pedigree)
        {
            return read.Problems.ToArray();
        }

        var test = PedigreeModeTest.OfAllelism(pedigree.Animals, first!.Mode!.Value, second!.Mode!.Value, _catalogue.Species.SexSystem, cancel);
        return Answer(test, e => e.IsOneLocus ? "one locus" : "two loci, free of each other", pedigree);
    }

    private static PedigreeModeAnswer Answer(PedigreeModeTest test, Func<PedigreeModeEvidence, string> words, TraitPedigree pedigree)
    {
        var best = test.Evidence[0];
        var verdict = test.IsContradiction
            ? "No hypothesis of the list can give this record: a misread animal, another sire, or something the list does not hold."
            : best.Posterior >= Settled
                ? $"Most likely {words(best)}: {OddsText.Percent(Probability.Rounded(best.Posterior))} of the odds."
                : $"Not settled. Best: {words(best)}, {OddsText.Percent(Probability.Rounded(best.Posterior))}; next: {words(test.Evidence[1])}, {OddsText.Percent(Probability.Rounded(test.Evidence[1].Posterior))}.";
        return new(
            test,
            [.. test.Evidence.Select(e => (words(e), e))],
            pedigree.Animals.Count(a => a.Look is not null),
            verdict,
            Assumed);
    }

    private Allele? Gene(string where, string name, List<AskedWrongly> problems)
    {
        var allele = _catalogue.Catalogue.FindAllele(name)?.Allele;
        if (allele is null)
        {
            problems.Add(new(where, $"'{name}' is no gene of the catalogue.", DidYouMean: NearWords.Of(name, _catalogue.Species.Loci.SelectMany(l => l.Alleles.Skip(1)).Select(a => a.Name))));
        }
        else if (allele.Locus.Placement is Placement.SexLinked)
        {
            problems.Add(new(where, $"{allele.Name} rides on the sex chromosomes; an autosomal gene is needed here."));
            return null;
        }

        return allele;
    }
}

/// <summary>Every hypothesis with its odds.</summary>
/// <param name="Test">The reckoning.</param>
/// <param name="Lines">The hypotheses in words, likeliest first.</param>
/// <param name="LookedAt">How many animals were looked at.</param>
/// <param name="Verdict">What it means, in a sentence.</param>
/// <param name="Notes">What to mind.</param>
public sealed record PedigreeModeAnswer(
    PedigreeModeTest Test, IReadOnlyList<(string Text, PedigreeModeEvidence Evidence)> Lines, int LookedAt, string Verdict, IReadOnlyList<string> Notes);
