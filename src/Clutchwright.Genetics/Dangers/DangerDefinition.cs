using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Dangers;

/// <summary>How grave a danger is.</summary>
public enum Severity
{
    /// <summary>Told, and a pair that can give it is not left out.</summary>
    Watch = 1,

    /// <summary>The animal suffers; pairs that can give it are left out unless the keeper lifts that.</summary>
    Suffering = 2,

    /// <summary>The animal dies young or unhatched; pairs that can give it are left out unless the keeper lifts that.</summary>
    Lethal = 3,
}

/// <summary>The shares of animals of a genotype that live through each stage, relative to other genotypes.</summary>
/// <param name="Egg">Of fertile eggs, the share that lives to hatching.</param>
/// <param name="Hatch">Of those, the share that gets out of the egg alive.</param>
/// <param name="Months">Of those, the share that lives through the first months.</param>
public sealed record Viability(Probability Egg, Probability Hatch, Probability Months)
{
    /// <summary>Lives as any other.</summary>
    public static Viability Full { get; } = new(Probability.Certain, Probability.Certain, Probability.Certain);

    /// <summary>Gets the share of fertile eggs that become a live hatchling.</summary>
    public Probability ToHatchling => Egg * Hatch;
}

/// <summary>A condition on the genotype at one locus.</summary>
public abstract record GenotypeCondition
{
    private GenotypeCondition()
    {
    }

    /// <summary>At least one copy of an allele.</summary>
    /// <param name="AlleleId">The allele's id.</param>
    public sealed record Carries(string AlleleId) : GenotypeCondition;

    /// <summary>Exactly this pair of alleles.</summary>
    /// <param name="FirstId">An allele's id, or <c>+</c>.</param>
    /// <param name="SecondId">An allele's id, or <c>+</c>.</param>
    public sealed record IsPair(string FirstId, string SecondId) : GenotypeCondition;
}

/// <summary>A danger as it is described: a genotype over one or more loci, and what it does.</summary>
/// <param name="Id">Unique in the species.</param>
/// <param name="When">Conditions that must all hold; at different loci.</param>
/// <param name="Severity">How grave it is.</param>
/// <param name="Text">One plain sentence.</param>
/// <param name="Evidence">On what grounds.</param>
public sealed record DangerDefinition(
    string Id, IReadOnlyList<GenotypeCondition> When, Severity Severity, string Text, Evidence Evidence)
{
    /// <summary>Gets the sex concerned; <c>null</c>: both.</summary>
    public Sex? Sex { get; init; }

    /// <summary>Gets what it does to survival.</summary>
    public Viability Viability { get; init; } = Viability.Full;
}
