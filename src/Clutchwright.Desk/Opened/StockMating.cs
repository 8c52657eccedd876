using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Opened;

/// <summary>Two animals of the stock as a pair, in the doubts they share as kin.</summary>
internal static class StockMating
{
    /// <param name="stock">The stock.</param>
    /// <param name="sire">The male.</param>
    /// <param name="dam">The female.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <param name="among">The groups that are asked about; in the others the doubts are taken apart. Null: all.</param>
    /// <param name="holdsDam">Whether the kin are reckoned for each thing that the dam may be, and not the sire: cheaper where she stands in many pairs.</param>
    public static Mating Of(
        StockState stock, StockAnimal sire, StockAnimal dam, CancellationToken cancel, IReadOnlyList<LinkageGroup>? among = null, bool holdsDam = false)
    {
        var (his, her) = (sire.As(Sex.Male), dam.As(Sex.Female));
        if (!stock.Beliefs.AreTied(sire.Key, dam.Key))
        {
            return Mating.Of(his, her);
        }

        var together = new Dictionary<LinkageGroup, IReadOnlyList<Weighted<(Diplotype Sire, Diplotype Dam)>>>();
        foreach (var group in (among ?? his.Species.Groups).Where(g => his[g].Count > 1 && her[g].Count > 1))
        {
            // Of an unsexed animal the strands of the sex chromosomes are not known, so that there the doubts are taken apart.
            if (!group.IsSex || (sire.Belief.Genotype.Sex == Sex.Male && dam.Belief.Genotype.Sex == Sex.Female))
            {
                together.Add(group, holdsDam
                    ? [.. stock.Beliefs.Together(group, dam.Key, sire.Key, cancel).Select(w => new Weighted<(Diplotype, Diplotype)>((w.Value.Second, w.Value.First), w.Weight))]
                    : stock.Beliefs.Together(group, sire.Key, dam.Key, cancel));
            }
        }

        return Mating.Of(his, her, together);
    }
}
