using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>What is believed of an animal's genotype, and from what.</summary>
/// <param name="Genotype">The belief.</param>
/// <param name="Steps">For every group with something to tell, how the belief there came about, in order.</param>
/// <param name="Conflicts">Records that cannot be true together; the belief then follows what was seen, or else what was said last.</param>
public sealed record AnimalBelief(
    GenotypeBelief Genotype, IReadOnlyList<BeliefStep> Steps, IReadOnlyList<BeliefConflict> Conflicts);

/// <summary>One step in the making of a belief at a linkage group.</summary>
/// <param name="Group">The group.</param>
/// <param name="Source">From what the step comes.</param>
/// <param name="Observation">The place in the list of observations, from 0; <c>null</c> where the step comes from the parents alone. A step
/// that comes from a parent and bears on an observation names that one.</param>
/// <param name="After">What is believed after it; weights sum to 1.</param>
public sealed record BeliefStep(
    LinkageGroup Group, BeliefSource Source, int? Observation, IReadOnlyList<Weighted<Diplotype>> After);

/// <summary>Records of one animal that cannot be true together.</summary>
/// <param name="Group">The group at which they clash.</param>
/// <param name="Source">What clashed with what had been believed before.</param>
/// <param name="Observation">The place in the list of observations, from 0.</param>
public sealed record BeliefConflict(LinkageGroup Group, BeliefSource Source, int Observation);

/// <summary>From what a step of a belief comes.</summary>
public enum BeliefSource
{
    /// <summary>From what the parents may pass on.</summary>
    Parents = 1,

    /// <summary>From words about the animal itself, taken as the starting point.</summary>
    Words = 2,

    /// <summary>Looked at: what shows, or does not.</summary>
    Seen = 3,

    /// <summary>Said by someone for certain.</summary>
    Said = 4,

    /// <summary>A possible het said by someone, not counted because the parents' records already say it.</summary>
    SaidAndImplied = 5,

    /// <summary>Ruled out.</summary>
    RuledOut = 6,

    /// <summary>A test of DNA.</summary>
    DnaTest = 7,
}
