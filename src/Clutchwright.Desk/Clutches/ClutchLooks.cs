using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Stock.Clutches;

namespace Clutchwright.Desk.Clutches;

/// <summary>The looks that can hatch from a clutch.</summary>
internal static class ClutchLooks
{
    /// <summary>The likeliest first, by all that is known of the parents by now: what hatched already counts.</summary>
    /// <param name="stock">The stock.</param>
    /// <param name="clutch">The clutch.</param>
    /// <param name="most">How many at most.</param>
    /// <param name="unknown">Why they cannot be told.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<HatchLook> Of(StockState stock, Clutch clutch, int most, out string? unknown, CancellationToken cancel)
    {
        var dam = stock.Find(clutch.DamId);
        var sires = clutch.Sires.Select(stock.Find).OfType<StockAnimal>().ToArray();
        unknown = dam is null ? "The dam is in the bin."
            : clutch.Sires.Count == 0 ? "No sire is written down, so the looks that can be cannot be told. Write what you see."
            : sires.Length < clutch.Sires.Count ? "A sire is in the bin."
            : null;
        if (unknown is not null)
        {
            return [];
        }

        // Which of several males it was is not known: their looks are mixed in equal parts.
        var share = 1.0 / sires.Length;
        var found = new Dictionary<string, (LookOutcome Look, Probability Chance)>(StringComparer.Ordinal);
        foreach (var sire in sires)
        {
            cancel.ThrowIfCancellationRequested();
            foreach (var look in Cross.Of(StockMating.Of(stock, sire, dam!, cancel)).Looks().Take(most * 4))
            {
                var key = $"{look.Sex} {string.Join(' ', look.Seen.Select(e => e.Id))}";
                var chance = sires.Length == 1 ? look.ChanceOfHatchling : Probability.Rounded(look.ChanceOfHatchling.Value * share);
                found[key] = found.TryGetValue(key, out var known) ? (known.Look, Probability.Rounded(Math.Min(1.0, known.Chance.Value + chance.Value))) : (look, chance);
            }
        }

        var catalogue = stock.Record.Catalogue;
        var hatched = Hatched(stock, clutch);
        return [.. found.Values
            .OrderByDescending(l => l.Chance.Value)
            .ThenBy(l => l.Look.Seen.Count)
            .Take(most)
            .Select(l => new HatchLook(
                catalogue.Wording.Look(l.Look.Seen),
                catalogue.Wording.Label(l.Look.Seen),
                l.Look.Sex,
                l.Chance,
                Writable(catalogue, l.Look.Seen, dam!, sires),
                hatched.Where(h => (l.Look.Sex is null || h.Sex == l.Look.Sex) && h.Seen.SetEquals(l.Look.Seen)).Sum(h => h.Count),
                catalogue.Wording.LookByAge(l.Look.Seen)))];
    }

    // A name that several pairs of alleles share cannot be written down as seen: the likeliest pair that these parents can give says it.
    private static string Writable(OpenCatalogue catalogue, IReadOnlyList<Expression> seen, StockAnimal dam, IReadOnlyList<StockAnimal> sires)
    {
        var name = catalogue.Wording.Look(seen);
        return catalogue.Read(name).IsRead ? name : string.Join(' ', seen.Select(form => catalogue.Wording.Look([form]) is var own && catalogue.Read(own).IsRead
            ? own
            : Pairs(form, dam, sires).OrderByDescending(p => p.Chance).Select(p => catalogue.Wording.Pair(form.Locus, p.First, p.Second, isOrdered: false)).FirstOrDefault(own)));
    }

    private static IEnumerable<(int First, int Second, double Chance)> Pairs(Expression form, StockAnimal dam, IReadOnlyList<StockAnimal> sires) =>
        from his in sires.SelectMany(s => s.Belief.Genotype.PairsAt(form.Locus))
        from her in dam.Belief.Genotype.PairsAt(form.Locus)
        from one in new[] { his.Value.First, his.Value.Second }
        from other in new[] { her.Value.First, her.Value.Second }
        where form.Locus.ExpressionOf(Math.Min(one, other), Math.Max(one, other)) == form
        select (Math.Min(one, other), Math.Max(one, other), his.Weight.Value * her.Weight.Value);

    private static IReadOnlyList<(HashSet<Expression> Seen, Sex? Sex, int Count)> Hatched(StockState stock, Clutch clutch)
    {
        var counted = ClutchAnimals.Counted([clutch]).Select(c => (stock.Record[StockRecord.Key(c.Animal.AnimalId)], c.Count));
        return [.. stock.Record.Entries.Where(e => e.Animal.ClutchId == clutch.ClutchId).Select(e => (e, 1)).Concat(counted)
            .Select(e => (e.Item1.Read.Observations.OfType<Observation.Seen>().SelectMany(o => o.Forms).ToHashSet(), e.Item1.Animal.Sex, e.Item2))];
    }
}
