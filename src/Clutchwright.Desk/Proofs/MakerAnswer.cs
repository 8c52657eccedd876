using Clutchwright.Proofs.Linkages;
using Clutchwright.Proofs.Makers;

namespace Clutchwright.Desk.Proofs;

/// <summary>Does a gene ride on the sex chromosomes? From the young of carriers of the sex with two different ones.</summary>
/// <param name="Carriers">The young of each carrier.</param>
/// <param name="Phase">What is known of the carriers: <c>unknown</c>, <c>male-maker</c> or <c>female-maker</c>.</param>
public sealed record MakerQuestion(IReadOnlyList<MakerCounts> Carriers, string Phase);

/// <summary>What the young say.</summary>
/// <param name="Test">The reckoning.</param>
/// <param name="Curve">The LOD over the recombination fraction, against a gene that does not ride with sex.</param>
/// <param name="LodAt">The LOD at the usual fractions.</param>
/// <param name="Carriers">What each carrier is, in words, with the chance.</param>
/// <param name="Verdict">What it means, in a sentence.</param>
/// <param name="Notes">What to mind.</param>
public sealed record MakerAnswer(
    MakerTest Test,
    LodCurve Curve,
    IReadOnlyList<(double R, double Lod)> LodAt,
    IReadOnlyList<(string Words, double Chance)> Carriers,
    string Verdict,
    IReadOnlyList<string> Notes);
