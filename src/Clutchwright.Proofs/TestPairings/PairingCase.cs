namespace Clutchwright.Proofs.TestPairings;

/// <summary>What the eggs of a test pairing would be if the parents are thus.</summary>
/// <param name="Weight">The chance that the parents are thus, given the hypothesis; in [0, 1].</param>
/// <param name="Classes">The chance of each class of egg, in the order of the pairing's classes; in sum 1.</param>
public sealed record PairingCase(double Weight, IReadOnlyList<double> Classes);
