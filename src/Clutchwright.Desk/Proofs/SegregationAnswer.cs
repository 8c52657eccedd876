using Clutchwright.Proofs.Segregations;

namespace Clutchwright.Desk.Proofs;

/// <summary>Do these counts fit?</summary>
/// <param name="Observed">The counts of each clutch, <c>a=315,b=101</c>; the same classes in each.</param>
/// <param name="Expected">The ratio, <c>9:3:3:1</c>.</param>
public sealed record SegregationQuestion(IReadOnlyList<string> Observed, string Expected)
{
    /// <summary>Gets the seed for outcomes that are drawn where they are too many to be added up.</summary>
    public ulong Seed { get; init; } = ExactSettings.Default.Seed;
}

/// <summary>How counts fit a ratio.</summary>
/// <param name="Classes">The classes' names, in order.</param>
/// <param name="Test">All clutches together.</param>
/// <param name="Heterogeneity">Each clutch, and whether they agree; <c>null</c> for one clutch.</param>
/// <param name="Verdict">What it means, in a sentence.</param>
/// <param name="Notes">What to mind.</param>
public sealed record SegregationAnswer(
    IReadOnlyList<string> Classes,
    SegregationTest Test,
    HeterogeneityTest? Heterogeneity,
    string Verdict,
    IReadOnlyList<string> Notes);
