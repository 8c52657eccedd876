using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs.Explanations;

/// <summary>The weights for and against a claim; scaled so that the sum is about 1.</summary>
/// <param name="For">For it.</param>
/// <param name="Against">Against it.</param>
/// <param name="IsRatio">Whether all that went in are ratios known exactly, and nothing was sampled: a share of a number of draws is a ratio that tells nothing.</param>
internal readonly record struct ClaimOdds(double For, double Against, bool IsRatio)
{
    public double Odds => For == 0.0 ? 0.0 : For / Against;

    public bool IsSettled => For == 0.0 || Against == 0.0;

    /// <summary>How many times the odds have grown since; 1 where they could not.</summary>
    public double Since(ClaimOdds before) => before.IsSettled ? 1.0 : For == 0.0 ? 0.0 : Against == 0.0 ? double.PositiveInfinity : Odds / before.Odds;

    public Probability Chance() => ExactRatio.Weigh([true, false], [For, Against], IsRatio)
        .Where(w => w.Value)
        .Select(w => w.Weight)
        .DefaultIfEmpty(Probability.Impossible)
        .First();
}
