using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Meiosis;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>What an egg may be at the groups of a block.</summary>
/// <param name="Diplotypes">By the groups of the block, in their order.</param>
/// <param name="Sex">The sex, if the block holds the sex chromosomes; else <c>null</c>.</param>
internal sealed record ChildState(Diplotype[] Diplotypes, Sex? Sex);

/// <summary>Works out what an egg may be from two known parents.</summary>
internal static class ChildStates
{
    /// <summary>The states at several groups together: groups segregate independently.</summary>
    public static IReadOnlyList<Weighted<ChildState>> Of(Mating mating, IReadOnlyList<LinkageGroup> groups, MatingCase parents)
    {
        IReadOnlyList<Weighted<ChildState>> states = OfGroup(mating, groups[0], parents.Sire[0], parents.Dam[0]);
        for (var i = 1; i < groups.Count; i++)
        {
            var more = OfGroup(mating, groups[i], parents.Sire[i], parents.Dam[i]);
            states = states
                .SelectMany(_ => more, (a, b) => new Weighted<ChildState>(
                    new([.. a.Value.Diplotypes, .. b.Value.Diplotypes], a.Value.Sex ?? b.Value.Sex),
                    a.Weight * b.Weight))
                .ToArray();
        }

        return states;
    }

    /// <summary>The states among young of one sex; all of them, where the block does not tell the sex.</summary>
    public static IEnumerable<Weighted<ChildState>> GivenSex(IReadOnlyList<Weighted<ChildState>> states, Sex sex)
    {
        var kept = states.Where(s => s.Value.Sex is null || s.Value.Sex == sex).ToArray();
        var total = kept.Aggregate(Probability.Impossible, (sum, s) => sum + s.Weight);
        return kept.Select(s => s with { Weight = s.Weight.Given(total) });
    }

    private static Weighted<ChildState>[] OfGroup(Mating mating, LinkageGroup group, Diplotype sire, Diplotype dam)
    {
        var fromSire = GameteFormation.Of(group, sire, mating.SireIsHeterogametic);
        var fromDam = GameteFormation.Of(group, dam, !mating.SireIsHeterogametic);
        var sum = new Dictionary<(Diplotype Diplotype, Sex? Sex), Probability>();
        foreach (var (s, sireChance) in fromSire)
        {
            foreach (var (d, damChance) in fromDam)
            {
                var key = Fertilization.Of(mating.Species, group, s, d);
                var chance = sireChance * damChance;
                sum[key] = sum.TryGetValue(key, out var old) ? old + chance : chance;
            }
        }

        var result = new Weighted<ChildState>[sum.Count];
        var next = 0;
        foreach (var (key, chance) in sum)
        {
            result[next++] = new(new([key.Diplotype], key.Sex), chance);
        }

        return result;
    }
}
