using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Crosses;

/// <summary>What a keeper should know before making a pair.</summary>
internal static class CrossWarnings
{
    public const string LawText =
        "Laws on breeding forms that suffer, and on keeping and trading the species (CITES Appendix II), differ by place: follow local law, and ask a "
        + "reptile veterinarian. The program gives odds, not veterinary advice.";

    public static IReadOnlyList<Warning> Of(OpenCatalogue catalogue, Cross cross, GenotypeBelief sire, GenotypeBelief dam)
    {
        var warnings = new List<Warning>();
        foreach (var danger in cross.Mating.Species.Dangers.OrderByDescending(d => d.Severity))
        {
            var notes = new List<string>();
            var (chance, inSire, inDam) = (cross.ChanceOf(danger), danger.ChanceIn(sire), danger.ChanceIn(dam));
            if (!chance.IsImpossible)
            {
                notes.Add($"This pair gives it in {OddsText.RatioAndPercent(chance)} of the eggs laid.");
            }

            if (Own(inSire, inDam) is { } own)
            {
                notes.Add(own);
            }

            if (notes.Count > 0)
            {
                warnings.Add(catalogue.Wording.Danger(danger, string.Join(' ', notes)));
            }
        }

        if (warnings.Exists(w => w.Severity is "lethal" or "suffering"))
        {
            warnings.Add(new("law", "note", LawText, null, []));
        }

        warnings.AddRange(Recombination(catalogue, sire, dam));
        return warnings;
    }

    private static string? Own(Probability inSire, Probability inDam) => (inSire.IsImpossible, inDam.IsImpossible) switch
    {
        (true, true) => null,
        (false, true) => inSire.IsCertain ? "The sire has it himself." : $"The sire has it himself with a chance of {OddsText.RatioAndPercent(inSire)}.",
        (true, false) => inDam.IsCertain ? "The dam has it herself." : $"The dam has it herself with a chance of {OddsText.RatioAndPercent(inDam)}.",
        _ => inSire.IsCertain && inDam.IsCertain ? "Both parents have it themselves." : "Both parents have it or may have it themselves.",
    };

    public static IReadOnlyList<LossLine> Losses(OpenCatalogue catalogue, Cross cross)
    {
        var losses = new List<LossLine>();
        foreach (var danger in cross.Mating.Species.Dangers)
        {
            var chance = cross.ChanceOf(danger);
            if (chance.IsImpossible)
            {
                continue;
            }

            var (egg, hatch, months) = (danger.Viability.Egg, danger.Viability.Hatch, danger.Viability.Months);
            Add("egg", egg.Complement);
            Add("hatch", egg * hatch.Complement);
            Add("first months", egg * hatch * months.Complement);

            void Add(string stage, Probability lost)
            {
                if (!lost.IsImpossible)
                {
                    losses.Add(new(catalogue.Wording.Condition(danger), stage, chance * lost));
                }
            }
        }

        return losses;
    }

    // Where a sire's (or, in a ZW species, a dam's) sex-linked allele can cross over, the fraction is no settled fact.
    private static IEnumerable<Warning> Recombination(OpenCatalogue catalogue, GenotypeBelief sire, GenotypeBelief dam)
    {
        var group = catalogue.Species.SexGroup;
        var parent = sire.IsHeterogametic ? sire : dam;
        foreach (var locus in group.Loci)
        {
            if (locus.Placement is not Placement.SexLinked { Recombination.Value: var r } || r is 0.0 or 0.5
                || parent[group].All(w => locus.PairOf(w.Value) is var (first, second) && first == second))
            {
                continue;
            }

            var entry = catalogue.Catalogue.EntryOf(locus);
            var interval = entry.Recombination is { } known
                ? $" The catalogue holds it to lie between {known.Least.Value:0.##} and {known.Most.Value:0.##}."
                : string.Empty;
            yield return new(
                $"recombination-{locus.Id}",
                "note",
                $"{locus.Name} lies on the sex chromosomes. A share r of the young crosses over and has it in the unexpected sex; r = {r:0.###} was reckoned with.{interval} "
                + "Your own clutches can narrow it, and another value can be given.",
                Wording.Grade(entry.Evidence),
                catalogue.Wording.Sources(entry.Evidence));
        }
    }
}
