using Clutchwright.Desk.Animals;

namespace Clutchwright.Desk.Carry;

/// <summary>What one animal of the stock may carry, and why.</summary>
/// <param name="Line">The animal.</param>
/// <param name="Beliefs">The loci at which there is something to tell.</param>
/// <param name="Without">Names of the loci at which it is certainly wild although a record of its kin or its own speaks of them.</param>
/// <param name="NotCounted">Labels told of it that were not counted, because the records of its kin already say what can be known.</param>
/// <param name="Problems">Statements that cannot be read, and conflicts, in sentences.</param>
public sealed record AnimalCarry(
    AnimalLine Line,
    IReadOnlyList<CarryBelief> Beliefs,
    IReadOnlyList<string> Without,
    IReadOnlyList<string> NotCounted,
    IReadOnlyList<string> Problems);

/// <summary>What an animal may carry at one locus, and why.</summary>
/// <param name="Locus">The possibilities.</param>
/// <param name="GeneId">The entry of the catalogue that tells of the allele explained.</param>
/// <param name="Explained">Where the belief comes from, and what would settle it.</param>
public sealed record CarryBelief(CarryLocus Locus, string GeneId, ExplainedBelief Explained);
