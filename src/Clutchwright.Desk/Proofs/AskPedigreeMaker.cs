using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Proofs.Linkages;
using Clutchwright.Proofs.Makers;

namespace Clutchwright.Desk.Proofs;

/// <summary>How tightly does a locus ride on the sex chromosomes, by all that a pedigree file records?</summary>
public sealed class AskPedigreeMaker
{
    private readonly OpenCatalogue _catalogue;

    internal AskPedigreeMaker(OpenCatalogue catalogue) => _catalogue = catalogue;

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    /// <param name="file">The pedigree.</param>
    /// <param name="locus">The locus' id, or the name of one of its alleles.</param>
    /// <param name="cancel">Stops the work.</param>
    public async Task<Answer<PedigreeMakerAnswer>> RunAsync(NamedFile file, string locus, CancellationToken cancel)
    {
        var found = _catalogue.Species.FindLocus(locus.Trim()) ?? _catalogue.Catalogue.FindAllele(locus)?.Allele.Locus;
        if (found?.Placement is not Placement.SexLinked)
        {
            var sexLinked = _catalogue.Species.SexGroup.Loci.Select(l => l.Id).ToArray();
            return new AskedWrongly(
                "locus",
                found is null
                    ? $"'{locus}' is no locus or gene of the catalogue. Those on the sex chromosomes are {string.Join(", ", sexLinked)}."
                    : $"{locus} does not lie on the sex chromosomes in the catalogue. Those that do are {string.Join(", ", sexLinked)}; for another gene count its young by sex.",
                DidYouMean: NearWords.Of(locus, sexLinked));
        }

        var read = await PedigreeFile.ReadAsync(_catalogue, file, cancel);
        if (read.Value is not { } pedigree)
        {
            return read.Problems.ToArray();
        }

        var record = StockRecord.Of(_catalogue, pedigree.Animals, [], before: null);
        var test = PedigreeMakerTest.Of(_catalogue.Species, record.Animals, found.Id, _catalogue.BeliefSettings, cancel);
        return new PedigreeMakerAnswer(
            test, found.Name, test.Curve, AskLinkage.LodAt(test.Curve), AskMaker.Verdict(test.Curve), [.. Notes(test)]);
    }

    private static IEnumerable<string> Notes(PedigreeMakerTest test)
    {
        if (!test.IsExact)
        {
            yield return "The pedigree is too wide to be reckoned exactly: it was sampled, and the figures are rough.";
        }

        if (test.Meioses == 0)
        {
            yield return "No young tells what its parent passed on: sexed young of a carrier, looked at, are needed.";
        }

        yield return "Everything recorded is counted: who may carry what, and on which sex chromosome, is summed over. The interval is where the LOD is within 1 of its highest.";
        yield return LinkageWords.Looks;
    }
}

/// <summary>What a pedigree says.</summary>
/// <param name="Test">The reckoning.</param>
/// <param name="Locus">The locus' name.</param>
/// <param name="Curve">The LOD over the recombination fraction, against a locus that does not ride with sex.</param>
/// <param name="LodAt">The LOD at the usual fractions.</param>
/// <param name="Verdict">What it means, in a sentence.</param>
/// <param name="Notes">What to mind.</param>
public sealed record PedigreeMakerAnswer(
    PedigreeMakerTest Test, string Locus, LodCurve Curve, IReadOnlyList<(double R, double Lod)> LodAt, string Verdict, IReadOnlyList<string> Notes);
