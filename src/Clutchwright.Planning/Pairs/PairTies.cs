using Clutchwright.Genetics.Crosses;

namespace Clutchwright.Planning.Pairs;

/// <summary>Which pairs share a doubt, and what the two are together.</summary>
/// <param name="AreTied">Whether the doubts of the two at these places (male, female) may have to do with each other.</param>
/// <param name="Together">The two with their doubts together; <c>null</c>: that is not to be had, and each animal's doubt counts as its own.</param>
public sealed record PairTies(Func<int, int, bool> AreTied, Func<int, int, Mating?> Together);
