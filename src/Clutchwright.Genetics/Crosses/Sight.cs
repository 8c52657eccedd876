using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>What is seen of the blocks that can hide others: several combinations of their classes may give the same sight.</summary>
internal sealed class Sight(Expression[] seen, Sex? sex, IReadOnlyList<Mask> acting)
{
    private readonly List<(int[] Choice, Probability Chance)> _combinations = [];
    private MergedClass[][] _factors = [];

    /// <summary>Gets the chance of an egg that hatches and gives this sight.</summary>
    public Probability Chance { get; private set; }

    public static Expression Through(Expression expression, IReadOnlyList<Mask> acting) =>
        IsHidden(expression, acting) ? expression.Locus.Expressions[0] : expression;

    public void Add(int[] choice, Probability chance)
    {
        _combinations.Add((choice, chance));
        Chance += chance;
    }

    /// <summary>Lists the looks of the other blocks under this sight, best first.</summary>
    public IEnumerable<(int[] Choice, double LogProduct)> Over(LookBlock[] others)
    {
        _factors = others.Select(Merge).ToArray();
        return BestFirst.Products(_factors.Select(f => f.Select(c => Math.Log(c.Hatched.Value)).ToArray()).ToArray());
    }

    public LookOutcome Outcome(Cross cross, LookBlock[] hiders, LookBlock[] others, int[] choice)
    {
        // Run once a look listed: plain loops, nothing made that is not kept.
        var chosen = new MergedClass[choice.Length];
        var (chance, ownSex, visible) = (Chance, sex, new List<Expression>());
        AddVisible(visible, seen);
        for (var i = 0; i < choice.Length; i++)
        {
            chosen[i] = _factors[i][choice[i]];
            chance *= chosen[i].Hatched;
            ownSex ??= chosen[i].Sex;
            AddVisible(visible, chosen[i].Seen);
        }

        visible.Sort((a, b) => a.Locus.Index.CompareTo(b.Locus.Index));
        return new(
            visible,
            Faint(hiders, chosen),
            ownSex,
            chance,
            cross.Survival,
            () => Shared(hiders, others, chosen),
            () => Hidden(hiders, others, chosen));
    }

    private static void AddVisible(List<Expression> visible, Expression[] seen)
    {
        foreach (var expression in seen)
        {
            if (expression.IsVisible)
            {
                visible.Add(expression);
            }
        }
    }

    private static bool IsHidden(Expression expression, IReadOnlyList<Mask> acting) =>
        expression.IsVisible && acting.Any(m => m.Hides(expression)) && !acting.Any(m => m.By == expression);

    private MergedClass[] Merge(LookBlock block)
    {
        var merged = new List<(List<LookClass> Members, Expression[] Seen, Sex? Sex)>();
        foreach (var item in block.Classes)
        {
            var through = Array.ConvertAll(item.Seen, e => Through(e, acting));
            var found = merged.FindIndex(m => m.Sex == item.Sex && m.Seen.AsSpan().SequenceEqual(through));
            if (found < 0)
            {
                merged.Add(([item], through, item.Sex));
            }
            else
            {
                merged[found].Members.Add(item);
            }
        }

        return merged
            .Select(m => new MergedClass(
                [.. m.Members], m.Seen, m.Sex, m.Members.Aggregate(Probability.Impossible, (sum, c) => sum + c.Hatched)))
            .OrderByDescending(m => m.Hatched.Value)
            .ToArray();
    }

    private Expression[] Faint(LookBlock[] hiders, MergedClass[] chosen) =>
        acting.Count == 0
            ? []
            : chosen.SelectMany(c => c.Members).SelectMany(m => m.Seen)
                .Concat(_combinations.SelectMany(c => c.Choice.SelectMany((k, i) => hiders[i].Classes[k].Seen)))
                .Where(e => IsHidden(e, acting) && acting.All(m => !m.Hides(e) || m.Faint.Contains(e)))
                .Distinct()
                .OrderBy(e => e.Locus.Index)
                .ToArray();

    // One term a combination of the hiders; a factor that is no hider has the same value in all.
    private SharedChance Shared(
        LookBlock[] hiders, LookBlock[] others, MergedClass[] chosen)
    {
        var product = new CaseProduct(_combinations.Count);
        for (var i = 0; i < hiders.Length; i++)
        {
            var (hider, at) = (hiders[i], i);
            product.Multiply(hider.Block.CaseWeights, (k, t) => hider.InCase(k, [hider.Classes[_combinations[t].Choice[at]]]));
        }

        for (var i = 0; i < others.Length; i++)
        {
            var (other, members) = (others[i], chosen[i].Members);
            var values = Enumerable.Range(0, other.Block.CaseWeights.Count).Select(k => other.InCase(k, members)).ToArray();
            product.Multiply(other.Block.CaseWeights, (k, _) => values[k]);
        }

        return product.Sum(Enumerable.Repeat(1, _combinations.Count).ToArray());
    }

    private List<HiddenChance> Hidden(
        LookBlock[] hiders, LookBlock[] others, MergedClass[] chosen)
    {
        var result = new List<HiddenChance>();
        for (var i = 0; i < hiders.Length; i++)
        {
            // Of all combinations of this sight, those with a given class of this block, by that class' weight.
            var at = i;
            var weights = _combinations
                .GroupBy(c => c.Choice[at])
                .Select(g => (
                    Class: hiders[at].Classes[g.Key],
                    Weight: g.Aggregate(Probability.Impossible, (sum, c) => sum + c.Chance).Given(Chance)));
            HiddenChances.Add(result, hiders[i].Block, weights, e => Through(e, acting));
        }

        for (var i = 0; i < others.Length; i++)
        {
            var total = chosen[i].Hatched;
            HiddenChances.Add(
                result, others[i].Block, chosen[i].Members.Select(m => (m, m.Hatched.Given(total))), e => Through(e, acting));
        }

        return [.. result.OrderBy(h => h.Locus.Index).ThenByDescending(h => h.Chance)];
    }

    /// <summary>Classes of a block that this sight does not tell apart.</summary>
    private sealed record MergedClass(LookClass[] Members, Expression[] Seen, Sex? Sex, Probability Hatched);
}
