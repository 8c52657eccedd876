using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Desk.Routes;

/// <summary>The chance that an animal is what is wanted.</summary>
internal static class WantedChance
{
    /// <summary>Exact for one alternative, since linkage groups are independent in a belief; of several the likeliest, which is a floor for any of them.</summary>
    public static Probability Of(Want want, GenotypeBelief belief) => want.Alternatives.Select(a => Of(a, belief)).MaxBy(p => p.Value);

    private static Probability Of(WantedGenotype wanted, GenotypeBelief belief)
    {
        if (wanted.Sex is { } sex && sex != belief.Sex)
        {
            return Probability.Impossible;
        }

        var chance = Probability.Certain;
        foreach (var group in wanted.Loci.GroupBy(l => l.Locus.Group))
        {
            var ordered = group.Key.IsSex && belief.IsHeterogametic;
            var met = belief[group.Key]
                .Where(w => group.All(l => l.Locus.PairOf(w.Value) is var (first, second) && l.Allows(first, second, ordered)))
                .Sum(w => w.Weight.Value);
            chance *= Probability.Rounded(Math.Min(1.0, met));
        }

        return chance;
    }
}
