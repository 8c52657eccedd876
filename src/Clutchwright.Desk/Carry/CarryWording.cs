using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Desk.Carry;

/// <summary>Puts what animals may carry into words. Remembers the words of a pair of alleles, since many animals have the same.</summary>
internal sealed class CarryWording(StockState state)
{
    private readonly Dictionary<(Locus Locus, int First, int Second, bool IsOrdered), (string Notation, string Words)> _pairs = [];

    public CarryAnimal Animal(StockAnimal animal)
    {
        var belief = animal.Belief;
        return new(
            animal.Animal.Tag,
            animal.Animal.Name,
            animal.Animal.Sex,
            state.Record.CountOf(animal.Animal.AnimalId),
            state.Record.Catalogue.Wording.Animal(belief.Genotype),
            [.. state.Beliefs.LociInPlay.Select(l => Locus(belief, l))],
            [.. belief.NotCounted.Select(i => AnimalWording.Line(animal.Statements[i]).Text)]);
    }

    public CarryLocus Locus(AnimalBelief belief, Locus locus)
    {
        var isOrdered = locus.Group.IsSex && belief.Genotype.IsHeterogametic;
        var genotypes = belief.Genotype.PairsAt(locus, isOrdered);
        return new(
            locus.Id,
            locus.Name,
            genotypes is not [{ Value: (0, 0) }],
            [.. genotypes.Select(g =>
            {
                var (notation, words) = Pair(locus, g.Value.First, g.Value.Second, isOrdered);
                return new CarryGenotype(notation, words, g.Weight);
            })],
            belief.StandardErrors.TryGetValue(locus.Group, out var error) ? error : null);
    }

    private (string Notation, string Words) Pair(Locus locus, int first, int second, bool isOrdered)
    {
        if (!_pairs.TryGetValue((locus, first, second, isOrdered), out var known))
        {
            // Two copies of the same allele are the same on either strand.
            known = (
                GeneticNotation.Write(locus, first, second, isOrdered),
                state.Record.Catalogue.Wording.Pair(locus, first, second, isOrdered && first != second));
            _pairs.Add((locus, first, second, isOrdered), known);
        }

        return known;
    }
}
