using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs.Explanations;

namespace Clutchwright.Desk.Carry;

/// <summary>Why is this animal believed to carry this, and what would settle it?</summary>
public sealed class ExplainBelief
{
    private const int MostSettling = 6;
    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs _beliefs;

    internal ExplainBelief(OpenCatalogue catalogue, StockBeliefs beliefs)
    {
        _catalogue = catalogue;
        _beliefs = beliefs;
    }

    /// <summary>Explains.</summary>
    /// <param name="tag">The animal's tag, whatever the case.</param>
    /// <param name="gene">An allele by any of its names, or a locus by its id.</param>
    /// <param name="cancel">Stops the work.</param>
    public async Task<Answer<ExplainedBelief>> RunAsync(string tag, string gene, CancellationToken cancel)
    {
        var state = await _beliefs.ReadAsync(cancel);
        if (state.Find(tag) is not { } animal)
        {
            return new AskedWrongly("animal", $"There is no animal {tag} in the stock.", DidYouMean: NearWords.Of(tag, state.Animals.Select(a => a.Animal.Tag)));
        }

        if (AlleleOf(_catalogue, animal, gene) is not { } allele)
        {
            return new AskedWrongly("gene", $"'{gene}' is no gene of the catalogue.", DidYouMean: _catalogue.Catalogue.NearestNames(gene));
        }

        return Of(_catalogue, state.Record, animal, allele, cancel);
    }

    /// <summary>The allele meant: of a locus the one the animal most likely carries.</summary>
    internal static Allele? AlleleOf(OpenCatalogue catalogue, StockAnimal animal, string gene) =>
        catalogue.Catalogue.FindAllele(gene)?.Allele
        ?? catalogue.Species.FindLocus(gene)?.Alleles.Skip(1).MaxBy(a => animal.Belief.Genotype.ChanceOfCarrying(a).Value);

    /// <summary>Explains a belief about an animal of a stock or of a pedigree file.</summary>
    internal static ExplainedBelief Of(OpenCatalogue catalogue, StockRecord record, StockAnimal animal, Allele allele, CancellationToken cancel)
    {
        var claim = new GenotypeClaim.Carries(allele);
        var explanation = BeliefExplanation.Of(animal.Beliefs, animal.Key, claim, cancel);
        var words = new ExplanationWords(catalogue, record, explanation);
        return new(
            animal.Animal.Tag,
            allele.Locus.Name,
            allele.Name,
            explanation.Prior,
            explanation.Chance,
            [.. explanation.Steps.Select(s => new ExplainedStep(
                s.Kind.ToString(), [.. s.Records.Select(r => record[r.Key].Animal.Tag).Distinct()], words.Sentence(s), s.Factor, s.Chance, s.RestsOn))],
            words.All(),
            [.. SettlingRecord.For(animal.Beliefs, animal.Key, claim, SettlingOptions.Default, cancel).Take(MostSettling).Select(s =>
                new SettlingLine(s.Kind.ToString(), ExplanationWords.Sentence(record, s), s.Bits, s.Settles))]);
    }
}
