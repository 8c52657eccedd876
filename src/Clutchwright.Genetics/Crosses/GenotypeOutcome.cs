using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>One genotype that can be laid.</summary>
/// <param name="Genotype">The genotype. Where <paramref name="Sex"/> is <c>null</c> its sex stands for both.</param>
/// <param name="Sex">The sex; <c>null</c> where genotypes of both sexes are put together, being equally likely.</param>
/// <param name="Chance">Of eggs laid.</param>
/// <param name="Survival">The share that becomes a live hatchling, relative to other genotypes.</param>
public sealed record GenotypeOutcome(Genotype Genotype, Sex? Sex, Probability Chance, Probability Survival);
