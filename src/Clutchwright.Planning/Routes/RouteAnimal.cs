using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>An animal a route can start from: one of the stock, or one that could be bought.</summary>
/// <param name="Sex">Its sex.</param>
/// <param name="Belief">What is believed of its genotype.</param>
public sealed record RouteAnimal(Sex Sex, GenotypeBelief Belief)
{
    /// <summary>Gets the first season in which it can breed, from 1.</summary>
    public int ReadySeason { get; init; } = 1;

    /// <summary>Gets the price; <c>null</c>: it is owned.</summary>
    public double? Price { get; init; }
}
