using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Desk.Season;

/// <summary>Of a stock with more pairs than can be weighed, those of the animals that promise most for each goal.</summary>
/// <remarks>What is planned then is proven among these pairs only, which is told. docs/model/season.md</remarks>
internal static class SeasonNarrowing
{
    /// <summary>The most pairs that are weighed without narrowing.</summary>
    private const int MostPairs = 8_000;

    // A male serves several females, so fewer of them are needed.
    private const int DamsPerSire = 5;
    private const int FewestSires = 8;

    /// <summary>The animals and pairs to weigh.</summary>
    /// <param name="all">All that can be used.</param>
    /// <param name="goals">What is wanted.</param>
    /// <param name="pinned">Whether an animal is pinned, or in a pair that is.</param>
    public static SeasonCandidates Of(SeasonCandidates all, GoalsFile goals, Func<StockAnimal, bool> pinned)
    {
        if (all.Pairs.Length <= MostPairs)
        {
            return all;
        }

        var kinds = goals.Wishes.SelectMany(Wants).ToArray();
        var proofs = goals.Wishes.OfType<SeasonWish.Prove>().ToArray();
        var most = Math.Max(FewestSires, (int)Math.Sqrt((double)MostPairs / Math.Max(1, kinds.Length + proofs.Length) / DamsPerSire));
        var chosen = new HashSet<(int, int)>(all.Pairs.Where(p => pinned(all.Sires[p.Sire]) && pinned(all.Dams[p.Dam])));
        var (his, her) = (Array.ConvertAll(all.Sires, a => a.As(Sex.Male)), Array.ConvertAll(all.Dams, a => a.As(Sex.Female)));
        foreach (var want in kinds)
        {
            var table = new PairTable(his, her, want);
            var (sires, dams) = (new double[his.Length], new double[her.Length]);
            foreach (var (s, d) in all.Pairs)
            {
                var chance = table.BoundOf(s, d, areTied: false).PerEgg;
                (sires[s], dams[d]) = (Math.Max(sires[s], chance), Math.Max(dams[d], chance));
            }

            Pair(Best(sires, most), Best(dams, most * DamsPerSire));
        }

        foreach (var proof in proofs)
        {
            double Carries(StockAnimal animal) => animal.Belief.Genotype.ChanceOfCarrying(proof.Allele).Value;
            var (sire, dam) = (Place(all.Sires, proof.Tag), Place(all.Dams, proof.Tag));
            Pair(sire >= 0 ? [sire] : [], Best(Array.ConvertAll(all.Dams, Carries), most * DamsPerSire));
            Pair(Best(Array.ConvertAll(all.Sires, Carries), most * DamsPerSire), dam >= 0 ? [dam] : []);
        }

        int[] keptSires = [.. Enumerable.Range(0, his.Length).Where(s => pinned(all.Sires[s]) || chosen.Any(p => p.Item1 == s))];
        int[] keptDams = [.. Enumerable.Range(0, her.Length).Where(d => pinned(all.Dams[d]) || chosen.Any(p => p.Item2 == d))];
        return new(
            Array.ConvertAll(keptSires, s => all.Sires[s]),
            Array.ConvertAll(keptDams, d => all.Dams[d]),
            [.. all.Pairs.Where(chosen.Contains).Select(p => (Array.IndexOf(keptSires, p.Sire), Array.IndexOf(keptDams, p.Dam)))]);

        void Pair(int[] sires, int[] dams)
        {
            foreach (var s in sires)
            {
                chosen.UnionWith(dams.Select(d => (s, d)));
            }
        }

        static int Place(StockAnimal[] animals, string tag) => Array.FindIndex(animals, a => string.Equals(a.Animal.Tag, tag, StringComparison.OrdinalIgnoreCase));
    }

    private static IEnumerable<Want> Wants(SeasonWish wish) => wish switch
    {
        SeasonWish.AtLeast w => [w.Want],
        SeasonWish.Expect w => [w.Want],
        SeasonWish.Value w => w.Kinds.Count > 0 ? w.Kinds.Select(k => k.Want) : [new Want([new WantedGenotype(null, [])])],
        _ => [],
    };

    private static int[] Best(double[] chances, int most) =>
        [.. Enumerable.Range(0, chances.Length).Where(i => chances[i] > 0.0).OrderByDescending(i => chances[i]).ThenBy(i => i).Take(most)];
}
