using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue.Looks;

/// <summary>How much each thing weighs in the order of makings, in steps of CIEDE2000.</summary>
/// <remarks>A convention of ours: docs/model/looks.md. Nothing is below 0, so that a part of a making never weighs more than the whole.</remarks>
internal static class RankingSteps
{
    public const double Copy = 1.0;
    public const double MissingAllele = 2.0;
    public const double Composed = 4.0;
    public const double FurtherPart = 2.0;
    public const double NotRecorded = 3.0;

    public static double Of(EvidenceGrade grade) => grade switch
    {
        EvidenceGrade.Published => 0.0,
        EvidenceGrade.CommonPractice => 1.0,
        EvidenceGrade.Reported => 3.0,
        EvidenceGrade.Disputed => 5.0,
    };

    public static double Of(Variation? variation) => variation switch
    {
        Variation.Little => 0.0,
        Variation.Much => 3.0,
        _ => 1.0,
    };

    public static double Of(IReadOnlyList<Danger> dangers) => dangers.Count == 0 ? 0.0 : dangers.Max(d => d.Severity) switch
    {
        Severity.Watch => 1.0,
        Severity.Suffering => 6.0,
        Severity.Lethal => 20.0,
    };

    public static double Of(LookEntry entry) =>
        Of(entry.Evidence.Grade) + Of(entry.Varies) + (entry.IsRecorded ? 0.0 : NotRecorded);
}
