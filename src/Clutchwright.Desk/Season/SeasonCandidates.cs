using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Season;

/// <summary>The males, females and pairs of a season.</summary>
/// <param name="Sires">The males.</param>
/// <param name="Dams">The females.</param>
/// <param name="Pairs">The pairs, by place; those of animals that cannot be used only where they are pinned.</param>
internal sealed record SeasonCandidates(StockAnimal[] Sires, StockAnimal[] Dams, (int Sire, int Dam)[] Pairs)
{
    public static SeasonCandidates Of(StockState stock, GoalsFile goals, Func<StockAnimal, bool> canBeUsed)
    {
        var pinned = goals.Pinned.Select(c => (stock.Find(c.Sire)!, stock.Find(c.Dam)!)).ToHashSet();
        var named = pinned.SelectMany(p => new[] { p.Item1, p.Item2 })
            .Concat(goals.Animals.Where(a => a.Value.IsPinned).Select(a => stock.Find(a.Key)!))
            .ToHashSet();
        var here = stock.Animals.Where(a => named.Contains(a) || (a.IsHere && a.Animal.Sex is not null && canBeUsed(a))).ToArray();
        var sires = Array.FindAll(here, a => a.Animal.Sex != Sex.Female);
        var dams = Array.FindAll(here, a => a.Animal.Sex == Sex.Female);
        var pairs = from s in Enumerable.Range(0, sires.Length)
                    from d in Enumerable.Range(0, dams.Length)
                    where (canBeUsed(sires[s]) && canBeUsed(dams[d])) || pinned.Contains((sires[s], dams[d]))
                    select (s, d);
        return new(sires, dams, [.. pairs]);
    }
}
