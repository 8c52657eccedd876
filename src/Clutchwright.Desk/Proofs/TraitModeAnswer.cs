using Clutchwright.Proofs.Modes;

namespace Clutchwright.Desk.Proofs;

/// <summary>How is this new look inherited?</summary>
/// <param name="Clutches">Each in the form <c>Rex shows x Ada normal: sons 5 shows 4 normal, daughters 3 shows 6 normal</c>.</param>
public sealed record TraitModeQuestion(IReadOnlyList<string> Clutches);

/// <summary>Every hypothesis with its odds.</summary>
/// <param name="Test">The reckoning.</param>
/// <param name="Clutches">The clutches as understood.</param>
/// <param name="Lines">The hypotheses, likeliest first.</param>
/// <param name="Verdict">What it means, in a sentence.</param>
/// <param name="Notes">What to mind.</param>
public sealed record TraitModeAnswer(
    TraitModeTest Test, IReadOnlyList<TraitClutch> Clutches, IReadOnlyList<TraitModeLine> Lines, string Verdict, IReadOnlyList<string> Notes);

/// <summary>One hypothesis.</summary>
/// <param name="Text">In words.</param>
/// <param name="Evidence">What the clutches say of it.</param>
/// <param name="AgainstBest">How many times likelier the best hypothesis makes the clutches; infinite where this one cannot give them.</param>
public sealed record TraitModeLine(string Text, TraitEvidence Evidence, double AgainstBest);
