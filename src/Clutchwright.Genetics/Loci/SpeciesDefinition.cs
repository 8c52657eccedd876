using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Loci;

/// <summary>A species as it is described, before <see cref="Species.From"/> checks it and makes it ready for use.</summary>
/// <param name="Id">A short name without spaces.</param>
/// <param name="SexSystem">Which sex has two different sex chromosomes.</param>
/// <param name="Loci">The loci in any order.</param>
public sealed record SpeciesDefinition(string Id, SexSystem SexSystem, IReadOnlyList<LocusDefinition> Loci)
{
    /// <summary>Gets what hides what, in order of precedence.</summary>
    public IReadOnlyList<MaskDefinition> Masks { get; init; } = [];

    /// <summary>Gets the genotypes that hurt or kill.</summary>
    public IReadOnlyList<DangerDefinition> Dangers { get; init; } = [];
}

/// <summary>A locus as it is described.</summary>
/// <param name="Id">Unique among the loci of the species.</param>
/// <param name="Name">For people.</param>
/// <param name="Placement">Where it lies.</param>
/// <param name="Alleles">The mutant alleles, at least one; the wild allele is understood.</param>
public sealed record LocusDefinition(
    string Id, string Name, Placement Placement, IReadOnlyList<AlleleDefinition> Alleles)
{
    /// <summary>Gets the forms that pairs of alleles take against what the modes alone would give.</summary>
    public IReadOnlyList<FormDefinition> Forms { get; init; } = [];
}

/// <summary>A mutant allele as it is described.</summary>
/// <param name="Id">Unique among the alleles of the species.</param>
/// <param name="Name">As the trade writes it.</param>
/// <param name="Mode">Against the wild allele.</param>
public sealed record AlleleDefinition(string Id, string Name, InheritanceMode Mode)
{
    /// <summary>Gets the chance that a genotype that should show this allele does.</summary>
    public Probability Penetrance { get; init; } = Probability.Certain;

    /// <summary>Gets the first stage of life at which its visible form can be told.</summary>
    public AgeStage TellableFrom { get; init; } = AgeStage.Hatchling;
}

/// <summary>A named visible form that one or more pairs of alleles of a locus take. Pairs under one form cannot be told apart by eye.</summary>
/// <param name="Id">Unique among the forms of the species.</param>
/// <param name="Name">For people.</param>
/// <param name="Pairs">Pairs of allele ids; <c>+</c> is the wild allele.</param>
public sealed record FormDefinition(string Id, string Name, IReadOnlyList<(string First, string Second)> Pairs)
{
    /// <summary>Gets the first stage of life at which the form can be told.</summary>
    public AgeStage TellableFrom { get; init; } = AgeStage.Hatchling;
}
