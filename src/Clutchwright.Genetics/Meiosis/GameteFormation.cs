using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Meiosis;

/// <summary>Mendel's segregation with recombination between the loci of a linkage group.</summary>
public static class GameteFormation
{
    /// <summary>What a parent passes on at one linkage group, with the chance of each gamete.</summary>
    /// <param name="group">The linkage group.</param>
    /// <param name="diplotype">The parent's haplotypes.</param>
    /// <param name="heterogametic">Whether the parent has two different sex chromosomes; counts in the sex group only.</param>
    /// <returns>Distinct gametes whose chances sum to 1, in order of haplotype code, X or Z before Y or W.</returns>
    /// <remarks>
    /// Walks along the chromosome: the gamete starts on either strand with chance 1/2 and changes strand in each interval with that
    /// interval's recombination fraction, crossings-over in different intervals being independent (no interference). Exact where every fraction is 0 or 1/2.
    /// Cost: linear in the loci times the number of distinct partial gametes. Source: docs/references.md [Haldane1919].
    /// </remarks>
    public static IReadOnlyList<Weighted<Gamete>> Of(LinkageGroup group, Diplotype diplotype, bool heterogametic)
    {
        var ordered = Genotype.Ordered(group, heterogametic);
        if (diplotype.First == diplotype.Second)
        {
            return ordered
                ? [new(new(diplotype.First, false), Probability.Half), new(new(diplotype.First, true), Probability.Half)]
                : [new(new(diplotype.First, false), Probability.Certain)];
        }

        if (group.Loci.Count == 1 && !ordered)
        {
            return [new(new(diplotype.First, false), Probability.Half), new(new(diplotype.Second, false), Probability.Half)];
        }

        return Walk(group, diplotype, ordered);
    }

    private static Weighted<Gamete>[] Walk(LinkageGroup group, Diplotype diplotype, bool ordered)
    {
        var intervals = group.IsSex && !ordered ? group.OtherSexIntervals : group.Intervals;
        var states = new Dictionary<(int Haplotype, bool Second, bool Unshared), Probability>
        {
            [(0, false, false)] = Probability.Half,
            [(0, true, false)] = Probability.Half,
        };

        var places = group.Loci.Count + (group.IsSex ? 1 : 0);
        for (var place = 0; place < places; place++)
        {
            if (place > 0)
            {
                states = Cross(states, intervals[place - 1].ToProbability());
            }

            var locus = group.IsSex && place > group.SexRegion ? place - 1 : place;
            states = group.IsSex && place == group.SexRegion
                ? Merge(states, key => ordered ? (key.Haplotype, key.Second, key.Second) : key)
                : Merge(states, key =>
                {
                    var strand = key.Second ? diplotype.Second : diplotype.First;
                    return (group.With(key.Haplotype, locus, group.AlleleAt(strand, locus)), key.Second, key.Unshared);
                });
        }

        return states
            .GroupBy(s => new Gamete(s.Key.Haplotype, s.Key.Unshared))
            .Select(g => new Weighted<Gamete>(g.Key, g.Aggregate(Probability.Impossible, (sum, s) => sum + s.Value)))
            .Where(w => !w.Weight.IsImpossible)
            .OrderBy(w => w.Value.Haplotype)
            .ThenBy(w => w.Value.CarriesUnshared)
            .ToArray();
    }

    private static Dictionary<(int Haplotype, bool Second, bool Unshared), Probability> Cross(
        Dictionary<(int Haplotype, bool Second, bool Unshared), Probability> states, Probability recombination)
    {
        var next = new Dictionary<(int Haplotype, bool Second, bool Unshared), Probability>();
        foreach (var ((haplotype, second, unshared), chance) in states)
        {
            Put(next, (haplotype, second, unshared), chance * recombination.Complement);
            Put(next, (haplotype, !second, unshared), chance * recombination);
        }

        return next;
    }

    private static Dictionary<(int Haplotype, bool Second, bool Unshared), Probability> Merge(
        Dictionary<(int Haplotype, bool Second, bool Unshared), Probability> states,
        Func<(int Haplotype, bool Second, bool Unshared), (int Haplotype, bool Second, bool Unshared)> move)
    {
        var next = new Dictionary<(int Haplotype, bool Second, bool Unshared), Probability>();
        foreach (var (key, chance) in states)
        {
            Put(next, move(key), chance);
        }

        return next;
    }

    private static void Put(
        Dictionary<(int Haplotype, bool Second, bool Unshared), Probability> states,
        (int Haplotype, bool Second, bool Unshared) key,
        Probability chance)
    {
        if (!chance.IsImpossible)
        {
            states[key] = states.TryGetValue(key, out var old) ? old + chance : chance;
        }
    }
}
