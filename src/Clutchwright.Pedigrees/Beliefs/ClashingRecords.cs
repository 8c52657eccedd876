using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Records that cannot all be true: without any one of them the others can.</summary>
/// <remarks>Found among the animals around: that one could be spared since kin farther off rules the others out by itself is not looked into.</remarks>
/// <param name="Groups">The linkage groups at which they clash.</param>
/// <param name="Records">The records, in the order of the pedigree.</param>
/// <param name="Animals">The keys of the animals that tie them together: those recorded and their kin between.</param>
public sealed record ClashingRecords(IReadOnlyList<LinkageGroup> Groups, IReadOnlyList<RecordPlace> Records, IReadOnlyList<string> Animals);
