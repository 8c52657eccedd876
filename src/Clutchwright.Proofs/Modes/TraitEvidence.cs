namespace Clutchwright.Proofs.Modes;

/// <summary>What the clutches say of one hypothesis.</summary>
/// <param name="Hypothesis">The hypothesis.</param>
/// <param name="LogLikelihood">The natural logarithm of the chance of the young, in their order, given what the parents show; negative
/// infinity where the hypothesis cannot give them.</param>
/// <param name="Prior">The chance of the hypothesis before.</param>
/// <param name="Posterior">The chance after.</param>
public sealed record TraitEvidence(TraitHypothesis Hypothesis, double LogLikelihood, double Prior, double Posterior);
