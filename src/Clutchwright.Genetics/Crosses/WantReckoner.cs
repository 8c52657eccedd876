using System.Numerics;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Genetics.Crosses;

/// <summary>Computes the chance of a want on the factors of a cross, by inclusion and exclusion over its alternatives.</summary>
internal static class WantReckoner
{
    public static Probability PerEgg(Cross cross, Want want)
    {
        var alternatives = Possible(cross, want);
        if (alternatives.Count == 0)
        {
            return Probability.Impossible;
        }

        var (subsets, coefficients) = Subsets(alternatives.Count);
        var product = new Probability[subsets.Length];
        Array.Fill(product, Probability.Certain);
        foreach (var block in Concerned(cross, alternatives))
        {
            var met = Met(block, alternatives);
            for (var t = 0; t < subsets.Length; t++)
            {
                product[t] *= Share(block, block.Laid, met, subsets[t]);
            }
        }

        return CaseProduct.Total(product, coefficients);
    }

    public static SharedChance Shared(Cross cross, Want want)
    {
        var alternatives = Possible(cross, want);
        if (alternatives.Count == 0)
        {
            return SharedChance.Never;
        }

        var (subsets, coefficients) = Subsets(alternatives.Count);
        var product = new CaseProduct(subsets.Length);
        foreach (var block in Concerned(cross, alternatives))
        {
            var met = Met(block, alternatives);
            product.Multiply(block.CaseWeights, (k, t) => Share(block, block.ByCase[k], met, subsets[t]));
        }

        return product.Sum(coefficients);
    }

    // What lies outside every block is wild in every egg.
    private static List<WantedGenotype> Possible(Cross cross, Want want) => want.Alternatives
        .Where(a => a.Loci.All(l => cross.Blocks.Any(b => b.Covers(l.Locus.Group)) || l.Allows(0, 0, ordered: false)))
        .ToList();

    private static IEnumerable<CrossBlock> Concerned(Cross cross, List<WantedGenotype> alternatives) => cross.Blocks
        .Where(b => !b.Lives
            || (b.HasSex && alternatives.Exists(a => a.Sex is not null))
            || alternatives.Exists(a => a.Loci.Any(l => b.Covers(l.Locus.Group))));

    // Bit i: the state meets every condition of alternative i that lies in this block.
    public static int[] Met(CrossBlock block, IReadOnlyList<WantedGenotype> alternatives)
    {
        var met = new int[block.States.Count];
        for (var s = 0; s < met.Length; s++)
        {
            var state = block.States[s];
            for (var i = 0; i < alternatives.Count; i++)
            {
                var alternative = alternatives[i];
                var holds = !block.HasSex || alternative.Sex is null || alternative.Sex == state.Sex;
                foreach (var condition in alternative.Loci)
                {
                    if (!holds)
                    {
                        break;
                    }

                    if (block.Covers(condition.Locus.Group))
                    {
                        var (a, b) = block.PairAt(state, condition.Locus);
                        holds = condition.Allows(a, b, block.IsOrdered(state, condition.Locus));
                    }
                }

                met[s] |= holds ? 1 << i : 0;
            }
        }

        return met;
    }

    public static Probability Share(CrossBlock block, Probability[] laid, int[] met, int subset)
    {
        var sum = Probability.Impossible;
        for (var s = 0; s < met.Length; s++)
        {
            if ((met[s] & subset) == subset && !laid[s].IsImpossible)
            {
                sum += laid[s] * block.Viability[s].ToHatchling;
            }
        }

        return sum;
    }

    public static (int[] Subsets, int[] Coefficients) Subsets(int count)
    {
        var subsets = Enumerable.Range(1, (1 << count) - 1).ToArray();
        return (subsets, subsets.Select(s => BitOperations.PopCount((uint)s) % 2 == 1 ? 1 : -1).ToArray());
    }
}
