using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Loci;

/// <summary>Works out what every pair of alleles of a locus shows, from the modes and the stated forms.</summary>
internal static class ExpressionTable
{
    public static (IReadOnlyList<Expression> Expressions, Expression[,] Full, Weighted<Expression>[,][] Weighted) Of(
        Locus locus, LocusDefinition definition)
    {
        var count = locus.Alleles.Count;
        var wild = new Expression(locus, 0, $"{locus.Id}:normal", "Normal", AgeStage.Hatchling, isNamed: true);
        var expressions = new List<Expression> { wild };
        var byId = new Dictionary<string, Expression>(StringComparer.Ordinal);
        var stated = new Dictionary<(int First, int Second), Expression>();

        foreach (var form in definition.Forms)
        {
            var expression = Add(form.Id, form.Name, form.TellableFrom, isNamed: true);
            foreach (var (first, second) in form.Pairs)
            {
                var pair = Ordered(IndexOf(locus, first), IndexOf(locus, second));
                if (pair.Second == 0)
                {
                    throw new SpeciesException($"Locus {locus.Id}: the form '{form.Id}' is of two wild alleles, which look normal.");
                }

                if (!stated.TryAdd(pair, expression))
                {
                    throw new SpeciesException($"Locus {locus.Id}: the pair {first}/{second} stands under two forms.");
                }
            }
        }

        var full = new Expression[count, count];
        var weighted = new Weighted<Expression>[count, count][];
        for (var first = 0; first < count; first++)
        {
            for (var second = first; second < count; second++)
            {
                var shown = stated.TryGetValue((first, second), out var form) ? form : ByMode(first, second);
                full[first, second] = full[second, first] = shown;
                weighted[first, second] = weighted[second, first] = Weigh(shown, first, second);
            }
        }

        return (expressions, full, weighted);

        Expression Add(string id, string name, AgeStage tellableFrom, bool isNamed)
        {
            if (byId.TryGetValue(id, out var existing))
            {
                return existing;
            }

            var expression = new Expression(locus, expressions.Count, id, name, tellableFrom, isNamed);
            expressions.Add(expression);
            byId.Add(id, expression);
            return expression;
        }

        Expression ByMode(int first, int second)
        {
            var (a, b) = (locus.Alleles[first], locus.Alleles[second]);
            if (b.IsWild)
            {
                return wild;
            }

            if (a.IsWild)
            {
                return b.Mode == InheritanceMode.Recessive ? wild : Single(b);
            }

            if (first == second)
            {
                return a.Mode == InheritanceMode.IncompleteDominant
                    ? Add($"super-{a.Id}", $"Super {a.Name}", Stage(a), isNamed: true)
                    : Single(a);
            }

            return (a.Mode, b.Mode) switch
            {
                (InheritanceMode.Recessive, not InheritanceMode.Recessive) => Single(b),
                (not InheritanceMode.Recessive, InheritanceMode.Recessive) => Single(a),
                _ => Add($"{a.Id}/{b.Id}", $"{a.Name}/{b.Name}", Later(Stage(a), Stage(b)), isNamed: false),
            };
        }

        Expression Single(Allele allele) =>
            stated.TryGetValue((0, allele.Index), out var form) && allele.Mode != InheritanceMode.Recessive
                ? form
                : Add(allele.Id, allele.Name, Stage(allele), isNamed: true);

        Expression OneCopyOf(int allele) => stated.TryGetValue((0, allele), out var form) ? form : ByMode(0, allele);

        AgeStage Stage(Allele allele) => definition.Alleles[allele.Index - 1].TellableFrom;

        // A pair shows when either of the alleles that could make it show does; two equal copies count once. Where the pair shows what one
        // copy of one of the two shows, the other (a recessive one, say) has no part in it.
        Weighted<Expression>[] Weigh(Expression shown, int first, int second)
        {
            var (a, b) = (locus.Alleles[first].Penetrance, locus.Alleles[second].Penetrance);
            var (byFirst, bySecond) = (first > 0 && OneCopyOf(first) == shown, OneCopyOf(second) == shown);
            var penetrance = first == 0 || first == second || (bySecond && !byFirst) ? b
                : byFirst && !bySecond ? a
                : (a.Complement * b.Complement).Complement;
            return !shown.IsVisible || penetrance.IsCertain
                ? [new(shown, Probability.Certain)]
                : [new(shown, penetrance), new(wild, penetrance.Complement)];
        }
    }

    private static AgeStage Later(AgeStage a, AgeStage b) => a > b ? a : b;

    private static (int First, int Second) Ordered(int a, int b) => a <= b ? (a, b) : (b, a);

    private static int IndexOf(Locus locus, string alleleId)
    {
        for (var i = 0; i < locus.Alleles.Count; i++)
        {
            if (string.Equals(locus.Alleles[i].Id, alleleId, StringComparison.Ordinal))
            {
                return i;
            }
        }

        throw new SpeciesException($"Locus {locus.Id} has no allele '{alleleId}'.");
    }
}
