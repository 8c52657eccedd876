namespace Clutchwright.Planning.Schemes;

/// <summary>How hard to look for a scheme; the same effort on the same problem gives the same scheme on any number of threads.</summary>
/// <param name="Seed">The seed of the local search.</param>
/// <param name="Starts">How many independent local searches, at least 1.</param>
/// <param name="Steps">How many changes each tries, at least 0. Many starts do better than many steps.</param>
/// <param name="ProofSteps">How many sets of genotypes the proof may look at before it gives up; 0: no proof is tried. Above four loci none is.</param>
public sealed record SchemeEffort(ulong Seed = 1, int Starts = 20, int Steps = 400_000, int ProofSteps = 50_000);

/// <summary>The best scheme found.</summary>
/// <param name="Scheme">The scheme; <c>null</c> where none exists within the most plants a crossing may raise.</param>
/// <param name="LowerBound">No scheme costs less, in plants.</param>
/// <param name="IsProven">Whether nothing is cheaper, by exhaustion or because the bound is reached.</param>
public sealed record SchemeAnswer(CrossingScheme? Scheme, int LowerBound, bool IsProven);
