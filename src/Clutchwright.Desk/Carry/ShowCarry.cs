using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;

namespace Clutchwright.Desk.Carry;

/// <summary>What may this animal of the stock carry, why, and what would settle it?</summary>
public sealed class ShowCarry
{
    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs _beliefs;

    internal ShowCarry(OpenCatalogue catalogue, StockBeliefs beliefs)
    {
        _catalogue = catalogue;
        _beliefs = beliefs;
    }

    /// <summary>Tells what an animal may carry; <c>null</c> if there is none of that tag out of the bin.</summary>
    public async Task<AnimalCarry?> RunAsync(string tag, CancellationToken cancel)
    {
        var state = await _beliefs.ReadAsync(cancel);
        if (state.Find(tag) is not { } animal)
        {
            return null;
        }

        var wording = new CarryWording(state);
        var loci = state.Beliefs.LociInPlay
            .Where(l => animal.Belief.Spoken.Contains(l.Group))
            .Select(l => (Locus: l, Carry: wording.Locus(animal.Belief, l)))
            .ToArray();
        return new(
            AnimalWording.Line(_catalogue, animal),
            [.. loci.Where(l => l.Carry.HasMore).Select(l =>
            {
                var allele = l.Locus.Alleles.Skip(1).MaxBy(a => animal.Belief.Genotype.ChanceOfCarrying(a).Value)!;
                return new CarryBelief(l.Carry, allele.Id, ExplainBelief.Of(_catalogue, state.Record, animal, allele, cancel));
            })],
            [.. loci.Where(l => !l.Carry.HasMore).Select(l => l.Carry.Name)],
            [.. animal.Belief.NotCounted.Select(i => AnimalWording.Line(animal.Statements[i]).Text)],
            animal.Problems);
    }
}
