using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs.Explanations;

/// <summary>The weights for and against a claim; scaled so that the sum is about 1.</summary>
internal readonly record struct ClaimOdds(double For, double Against)
{
    public double Odds => For == 0.0 ? 0.0 : For / Against;

    public bool IsSettled => For == 0.0 || Against == 0.0;

    /// <summary>How many times the odds have grown since; 1 where they could not.</summary>
    public double Since(ClaimOdds before) => before.IsSettled ? 1.0 : For == 0.0 ? 0.0 : Against == 0.0 ? double.PositiveInfinity : Odds / before.Odds;

    public Probability Chance(bool isRatio) => ExactRatio.Weigh([true, false], [For, Against], isRatio)
        .Where(w => w.Value)
        .Select(w => w.Weight)
        .DefaultIfEmpty(Probability.Impossible)
        .First();
}
