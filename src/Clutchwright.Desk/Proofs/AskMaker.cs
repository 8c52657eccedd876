using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Proofs.Linkages;
using Clutchwright.Proofs.Makers;

namespace Clutchwright.Desk.Proofs;

/// <summary>Does a gene ride on the sex chromosomes, and is a carrier a male maker or a female maker?</summary>
public sealed class AskMaker
{
    /// <summary>The words for what is known of the carriers.</summary>
    public static readonly IReadOnlyList<string> Phases = ["unknown", "male-maker", "female-maker"];

    private const int MostYoung = 100_000;

    private readonly OpenCatalogue _catalogue;

    internal AskMaker(OpenCatalogue catalogue) => _catalogue = catalogue;

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    public Answer<MakerAnswer> Run(MakerQuestion question)
    {
        var system = _catalogue.Species.SexSystem;
        var problems = new List<AskedWrongly>();
        if (Phase(question.Phase, system) is not { } phase)
        {
            return new AskedWrongly("phase", $"'{question.Phase}' is no phase. Write unknown, male-maker or female-maker.", DidYouMean: NearWords.Of(question.Phase, Phases));
        }

        foreach (var counts in question.Carriers)
        {
            if (new[] { counts.MalesWith, counts.MalesWithout, counts.FemalesWith, counts.FemalesWithout }.Any(n => n is < 0 or > MostYoung))
            {
                problems.Add(new("sons-with", $"A count is out of range. Write 0 to {MostYoung} for each."));
            }
        }

        if (question.Carriers.Count == 0 || (problems.Count == 0 && question.Carriers.Sum(c => c.Number) == 0))
        {
            problems.Add(new("sons-with", "No young are counted. Write how many sons and daughters have it, and how many do not."));
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var test = MakerTest.Of([.. question.Carriers.Select(c => (c, phase))], system);
        var curve = test.Linkage.Curve;
        return new MakerAnswer(
            test,
            curve,
            AskLinkage.LodAt(curve),
            [.. test.OnDiffering.Select(c => Carrier(c, system))],
            Verdict(curve),
            [
                .. LinkageWords.Notes(test.Linkage),
                $"The carrier is {(system == SexSystem.XY ? "a male" : "a female")}, its mates do not carry the gene, and all young were sexed and read rightly.",
            ]);
    }

    /// <summary>What a LOD curve means for a gene and sex.</summary>
    internal static string Verdict(LodCurve curve) => curve.Most >= LodCurve.Linked
        ? $"It rides with sex: the highest LOD, {curve.Most:0.##}, at r = {curve.Best:0.###}, passes 3."
        : curve.ExcludedBelow is { } limit and >= 0.005
            ? $"Not settled; closer to the sex-determining region than r = {limit:0.###} is ruled out (LOD -2)."
            : $"Not settled: the highest LOD, {curve.Most:0.##}, does not reach 3, and nothing is ruled out.";

    // A male maker gives it to sons: a male with it on his Y, a female (of a ZW species) with it on her Z.
    private static (string Words, double Chance) Carrier(double onDiffering, SexSystem system)
    {
        var maleMaker = system == SexSystem.XY ? onDiffering : 1.0 - onDiffering;
        return maleMaker >= 0.5 ? ("male maker", maleMaker) : ("female maker", 1.0 - maleMaker);
    }

    private static MakerPhase? Phase(string text, SexSystem system) => text.Trim().ToLowerInvariant() switch
    {
        "unknown" => MakerPhase.Unknown,
        "male-maker" => system == SexSystem.XY ? MakerPhase.OnDiffering : MakerPhase.OnShared,
        "female-maker" => system == SexSystem.XY ? MakerPhase.OnShared : MakerPhase.OnDiffering,
        _ => null,
    };
}
