using Clutchwright.Genetics.Loci;

namespace Clutchwright.Proofs.Modes;

/// <summary>How is this new trait inherited? The marginal likelihood of each hypothesis for the clutches recorded.</summary>
/// <remarks>
/// What the parents show is taken as given; what they carry is summed over, and is the same in all clutches of a parent. Parents are
/// unrelated; the allele's frequency among them, q, is unknown, every value from 0 to 0.5 equally likely before. Full penetrance, no
/// misread young, all genotypes live alike. Marginal likelihoods compare hypotheses of different freedom fairly: one with an unknown
/// number pays for it [KassRaftery1995], docs/references.md. Immutable.
/// </remarks>
public sealed class TraitModeTest
{
    /// <summary>The most joint states of the parents of one sex that hang together; past it the clutches must be asked about in parts.</summary>
    public const int MostStates = 1024;

    private TraitModeTest(IReadOnlyList<TraitEvidence> evidence)
    {
        Evidence = evidence;
        IsContradiction = evidence.All(e => double.IsNegativeInfinity(e.LogLikelihood));
    }

    /// <summary>Gets every hypothesis, the likeliest first.</summary>
    public IReadOnlyList<TraitEvidence> Evidence { get; }

    /// <summary>Gets whether no hypothesis can give the clutches; the posteriors are then the priors.</summary>
    public bool IsContradiction { get; }

    /// <summary>Weighs all hypotheses, each equally likely before.</summary>
    /// <param name="clutches">The clutches; at least one. A parent that shows different things in two clutches is an error.</param>
    /// <param name="system">Which sex has two different sex chromosomes.</param>
    /// <returns>The hypotheses with their odds. Cost: for each of the unknown numbers' values, the joint states of the rarer sex of parents
    /// times the clutches.</returns>
    /// <exception cref="ArgumentException">A count is negative, a parent shows two things, or the parents are too many to be summed over.</exception>
    public static TraitModeTest Of(IReadOnlyList<TraitClutch> clutches, SexSystem system)
    {
        if (clutches.Count == 0 || clutches.Any(c => new[] { c.Males, c.Females, c.Unsexed }.Any(n => n.Normal < 0 || n.Shows < 0 || n.Super < 0)))
        {
            throw new ArgumentException("At least one clutch, its counts 0 or more.", nameof(clutches));
        }

        var likelihood = new TraitLikelihood(clutches, system);
        var logs = TraitHypothesis.All.Select(h => (Hypothesis: h, Log: likelihood.Log(h))).ToArray();
        var prior = 1.0 / logs.Length;
        var most = logs.Max(l => l.Log);
        var total = double.IsNegativeInfinity(most) ? 0.0 : logs.Sum(l => Math.Exp(l.Log - most));
        return new(
        [
            .. logs
                .Select(l => new TraitEvidence(l.Hypothesis, l.Log, prior, total == 0.0 ? prior : Math.Exp(l.Log - most) / total))
                .OrderByDescending(e => e.Posterior),
        ]);
    }

    /// <summary>The Bayes factor of one hypothesis against another; infinite or 0 where one cannot give the clutches, NaN never: <c>null</c> where neither can.</summary>
    /// <param name="a">The first hypothesis.</param>
    /// <param name="b">The second.</param>
    public double? BayesFactor(TraitHypothesis a, TraitHypothesis b)
    {
        var (first, second) = (Of(a).LogLikelihood, Of(b).LogLikelihood);
        return double.IsNegativeInfinity(first) && double.IsNegativeInfinity(second) ? null : Math.Exp(first - second);
    }

    private TraitEvidence Of(TraitHypothesis hypothesis) => Evidence.Single(e => e.Hypothesis == hypothesis);
}
