using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>Works out which pairs of alleles stand behind what is seen of a block.</summary>
internal static class HiddenChances
{
    /// <summary>Adds the pairs, by locus, that a look does not say of itself.</summary>
    /// <param name="result">Where to add.</param>
    /// <param name="block">The block.</param>
    /// <param name="classes">The classes of the block that the look may come from, with weights that sum to 1.</param>
    /// <param name="through">What is left to see of an expression.</param>
    public static void Add(
        List<HiddenChance> result,
        CrossBlock block,
        IEnumerable<(LookClass Class, Probability Weight)> classes,
        Func<Expression, Expression> through)
    {
        var states = new Dictionary<int, Probability>();
        Expression[]? seen = null;
        foreach (var (member, weight) in classes)
        {
            seen ??= Array.ConvertAll(member.Seen, e => through(e));
            foreach (var entry in member.Entries)
            {
                var chance = weight * (block.Hatched[entry.State] * entry.Share).Given(member.Hatched);
                states[entry.State] = states.TryGetValue(entry.State, out var old) ? old + chance : chance;
            }
        }

        for (var l = 0; l < block.Loci.Count; l++)
        {
            var locus = block.Loci[l];
            var pairs = new Dictionary<(int First, int Second, bool IsOrdered), Probability>();
            foreach (var (state, chance) in states)
            {
                if (chance.IsImpossible)
                {
                    continue;
                }

                var (a, b) = block.PairAt(block.States[state], locus);
                var ordered = block.IsOrdered(block.States[state], locus) && a != b;
                var key = ordered || a <= b ? (a, b, ordered) : (b, a, false);
                pairs[key] = pairs.TryGetValue(key, out var old) ? old + chance : chance;
            }

            foreach (var ((a, b, ordered), chance) in pairs)
            {
                if (!SaysItself(seen![l], a, b, pairs.Count == 1))
                {
                    result.Add(new(locus, a, b, ordered, chance));
                }
            }
        }
    }

    // Nothing seen says wild. A form says its own pair where that is the only one left.
    private static bool SaysItself(Expression seen, int a, int b, bool isOnly) =>
        seen.IsVisible ? isOnly && seen.Locus.ExpressionOf(a, b) == seen : a == 0 && b == 0;
}
