using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Tests.Crosses;

/// <summary>Reads expected ratios off a cross, and sets them against counts.</summary>
internal static class Ratios
{
    /// <summary>The chance of each look among eggs laid, by the ids of the forms seen (and the sex where it is told apart).</summary>
    public static Dictionary<string, Probability> Looks(Cross cross, AgeStage stage = AgeStage.Hatchling) =>
        cross.Looks(stage).ToDictionary(Text, l => l.Chance);

    /// <summary>The forms a look shows: <c>pastel clown</c>, <c>normal</c>, <c>banana (Male)</c>.</summary>
    public static string Text(LookOutcome look) =>
        (look.Seen.Count == 0 ? "normal" : string.Join(' ', look.Seen.Select(e => e.Id))) + (look.Sex is { } sex ? $" ({sex})" : "");

    /// <summary>The exact ratio of each look: <c>"9/16"</c>.</summary>
    public static Dictionary<string, string> ExactLooks(Cross cross) => Looks(cross).ToDictionary(l => l.Key, l => l.Value.Exact!.Value.ToString());

    /// <summary>Pearson's chi-square of counts against expected shares.</summary>
    public static double ChiSquare(IReadOnlyList<int> counts, IReadOnlyList<Probability> shares)
    {
        var total = counts.Sum();
        return counts.Zip(shares, (count, share) => Math.Pow(count - (total * share.Value), 2.0) / (total * share.Value)).Sum();
    }
}
