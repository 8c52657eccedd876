using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Proofs.Makers;

/// <summary>Carries records over to a species that differs in its recombination fractions only.</summary>
internal sealed class SpeciesBridge(Species from, Species to)
{
    public RecordedAnimal Map(RecordedAnimal animal) => animal with { Observations = [.. animal.Observations.Select(Map)] };

    public BeliefSettings Map(BeliefSettings settings) => settings with
    {
        Frequencies = settings.Frequencies.ToDictionary(f => to.FindAllele(f.Key.Id)!, f => f.Value),
    };

    private Observation Map(Observation observation) => observation switch
    {
        Observation.Seen seen => seen with { Forms = [.. seen.Forms.Select(f => to.FindExpression(f.Id)!)], Reading = Map(seen.Reading) },
        Observation.Said said => said with { Reading = Map(said.Reading) },
        Observation.RuledOut ruledOut => ruledOut with { Alleles = [.. ruledOut.Alleles.Select(a => to.FindAllele(a.Id)!)] },
        Observation.DnaTest test => test with { Allele = to.FindAllele(test.Allele.Id)! },
        _ => throw new ArgumentException($"{observation} is not known here.", nameof(observation)),
    };

    private GenotypeBelief Map(GenotypeBelief belief)
    {
        var mapped = GenotypeBelief.Wild(to, belief.Sex);
        foreach (var group in from.Groups.Where(g => belief[g] is not [{ Value.IsWild: true }]))
        {
            var other = to.FindLocus(group.Loci[0].Id)!.Group;
            mapped = mapped.With(other, belief[group].Select(w => new Weighted<Diplotype>(
                new(Haplotype(group, other, w.Value.First), Haplotype(group, other, w.Value.Second)), w.Weight)));
        }

        return mapped;
    }

    // On the sex chromosomes loci lie in the order of their fractions, so the places of alleles in a code may change.
    private int Haplotype(LinkageGroup group, LinkageGroup other, int haplotype) => group.Loci.Aggregate(0, (code, locus) =>
        other.With(code, to.FindLocus(locus.Id)!.IndexInGroup, group.AlleleAt(haplotype, locus.IndexInGroup)));
}
