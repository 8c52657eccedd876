using Clutchwright.Pedigrees.Networks;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Samples a network that is too large to be solved.</summary>
internal static class NetworkSampler
{
    /// <summary>Samples.</summary>
    public static (double LogTotal, double[][] Marginals, double[][] Errors) Run(
        int[] counts, IReadOnlyList<Factor> factors, BeliefSettings settings, CancellationToken cancel) =>
        throw new NotSupportedException("too large");
}
