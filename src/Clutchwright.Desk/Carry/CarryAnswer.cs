using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Carry;

/// <summary>Of which animals to tell what they may carry, and how to reckon it.</summary>
public sealed record CarryQuestion
{
    /// <summary>Gets the pedigree file; <c>null</c>: the stock.</summary>
    public NamedFile? File { get; init; }

    /// <summary>Gets the ids of the animals to tell of; none: all.</summary>
    public IReadOnlyList<string> Animals { get; init; } = [];

    /// <summary>Gets the chance that the eye reads one locus wrongly, 0 to 1/2; <c>null</c>: 0.</summary>
    public double? Misreading { get; init; }

    /// <summary>Gets how common alleles are among founders, by name or id, 0 to 1; those left out are as the species data say.</summary>
    public IReadOnlyDictionary<string, double> Frequencies { get; init; } = new Dictionary<string, double>();
}

/// <summary>What animals may carry.</summary>
/// <param name="Animals">The animals asked for, in the order of the stock or the file.</param>
/// <param name="Total">How many animals there are in all.</param>
/// <param name="LogLikelihood">The natural logarithm of the probability of all records.</param>
/// <param name="Contradictions">Records that cannot all be true.</param>
/// <param name="IsExact">Whether all beliefs are exact; otherwise some were sampled.</param>
/// <param name="StandardError">The largest standard error of a sampled probability; 0 where all is exact.</param>
/// <param name="Unread">Statements that cannot be read, in sentences.</param>
public sealed record CarryAnswer(
    IReadOnlyList<CarryAnimal> Animals,
    int Total,
    double LogLikelihood,
    IReadOnlyList<CarryContradiction> Contradictions,
    bool IsExact,
    double StandardError,
    IReadOnlyList<string> Unread);

/// <summary>What one animal may carry.</summary>
/// <param name="Id">The keeper's id of it.</param>
/// <param name="Name">Its name, if any.</param>
/// <param name="Sex">Its sex; <c>null</c>: not known.</param>
/// <param name="Count">How many young alike it stands for; 1: itself.</param>
/// <param name="Words">Its genotype as believed.</param>
/// <param name="Loci">Every locus in play, in the catalogue's order: also those at which it is certainly wild.</param>
/// <param name="NotCounted">Labels told of it that were not counted, because the records of its kin already say what can be known.</param>
public sealed record CarryAnimal(
    string Id, string? Name, Sex? Sex, int Count, AnimalWords Words, IReadOnlyList<CarryLocus> Loci, IReadOnlyList<string> NotCounted);

/// <summary>What an animal may carry at one locus.</summary>
/// <param name="Id">The locus' id.</param>
/// <param name="Name">The locus' name.</param>
/// <param name="HasMore">Whether there is anything to tell: it is not certainly wild.</param>
/// <param name="Genotypes">The possible genotypes, likeliest first.</param>
/// <param name="StandardError">The largest standard error of a probability where it was sampled; <c>null</c>: exact.</param>
public sealed record CarryLocus(
    string Id, string Name, bool HasMore, IReadOnlyList<CarryGenotype> Genotypes, double? StandardError);

/// <summary>One possible genotype at a locus.</summary>
/// <param name="Notation">In genetics' notation.</param>
/// <param name="Words">In trade words.</param>
/// <param name="Chance">Its chance.</param>
public sealed record CarryGenotype(string Notation, string Words, Probability Chance);

/// <summary>Records that cannot all be true.</summary>
/// <param name="Animals">The ids of the animals whose records clash, and of the kin between.</param>
/// <param name="Records">The records, each with the animal it is of.</param>
/// <param name="Causes">What may be the cause, likeliest first.</param>
public sealed record CarryContradiction(
    IReadOnlyList<string> Animals, IReadOnlyList<string> Records, IReadOnlyList<string> Causes);
