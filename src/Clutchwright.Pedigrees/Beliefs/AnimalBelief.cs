using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>What is believed of an animal's genotype.</summary>
/// <param name="Genotype">The belief, group by group.</param>
/// <param name="Spoken">The groups at which a record of the animal or of its kin speaks of some allele, so that there is something to tell.</param>
/// <param name="NotCounted">The places, from 0, of possible hets told of the animal that were not counted, because its other records or those of its kin already say what can be known.</param>
/// <param name="StandardErrors">For groups at which the belief was sampled the largest standard error of a probability; other groups are exact.</param>
public sealed record AnimalBelief(
    GenotypeBelief Genotype,
    IReadOnlyList<LinkageGroup> Spoken,
    IReadOnlyList<int> NotCounted,
    IReadOnlyDictionary<LinkageGroup, double> StandardErrors);
