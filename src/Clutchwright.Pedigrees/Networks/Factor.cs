namespace Clutchwright.Pedigrees.Networks;

/// <summary>A table of weights over a few variables of a network.</summary>
/// <param name="Variables">The variables, distinct; the last counts fastest in <paramref name="Values"/>.</param>
/// <param name="Values">One weight for each combination of states.</param>
internal sealed record Factor(int[] Variables, double[] Values);
