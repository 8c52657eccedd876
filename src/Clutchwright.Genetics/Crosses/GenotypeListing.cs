using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>Lists the genotypes of a cross, likeliest first, lazily.</summary>
internal static class GenotypeListing
{
    public static IEnumerable<GenotypeOutcome> Of(Cross cross)
    {
        // A block that tells the sex alone is left out where the sex does not matter.
        var blocks = cross.Blocks.Where(b => cross.IsBySex || !(b.HasSex && b.Loci.Count == 0 && b.Groups.Count == 1)).ToArray();
        var order = blocks
            .Select(b => Enumerable.Range(0, b.States.Count)
                .Where(s => !b.Laid[s].IsImpossible)
                .OrderByDescending(s => b.Laid[s].Value)
                .ToArray())
            .ToArray();
        var logs = blocks.Select((b, i) => order[i].Select(s => Math.Log(b.Laid[s].Value)).ToArray()).ToArray();
        foreach (var (choice, _) in BestFirst.Products(logs))
        {
            yield return Outcome(cross, blocks, choice.Select((c, i) => order[i][c]).ToArray());
        }
    }

    private static GenotypeOutcome Outcome(Cross cross, CrossBlock[] blocks, int[] states)
    {
        Sex? sex = null;
        var (chance, survival) = (Probability.Certain, Probability.Certain);
        for (var i = 0; i < blocks.Length; i++)
        {
            sex = blocks[i].States[states[i]].Sex ?? sex;
            chance *= blocks[i].Laid[states[i]];
            survival *= blocks[i].Viability[states[i]].ToHatchling;
        }

        var genotype = Genotype.Wild(cross.Mating.Species, sex ?? cross.Mating.Species.SexSystem.Heterogametic().Opposite());
        for (var i = 0; i < blocks.Length; i++)
        {
            for (var g = 0; g < blocks[i].Groups.Count; g++)
            {
                var diplotype = blocks[i].States[states[i]].Diplotypes[g];
                if (!diplotype.IsWild)
                {
                    genotype = genotype.With(blocks[i].Groups[g], diplotype);
                }
            }
        }

        return new(genotype, cross.IsBySex ? sex : null, chance, survival);
    }
}
