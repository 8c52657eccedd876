using System.Text;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>Writes genotypes in the trade's words, in one way only: sex, what is seen in the catalogue's order, what is carried, strands.</summary>
internal sealed class TradeWriter(Lexicon lexicon)
{
    private const string NormalName = "Normal";

    public IReadOnlyList<TradeWord> Words(GenotypeBelief belief)
    {
        var parts = new List<(int Order, TradeWord Word)>();
        foreach (var group in lexicon.Species.Groups)
        {
            var possible = belief[group];
            if (possible is [{ Value: var only }])
            {
                if (!only.IsWild)
                {
                    parts.AddRange(Certain(group, only, belief.IsHeterogametic));
                }
            }
            else
            {
                parts.AddRange(Uncertain(belief, group));
            }
        }

        var words = parts
            .OrderBy(p => p.Word.Kind)
            .ThenBy(p => p.Order)
            .Select(p => p.Word)
            .Prepend(new(TradeWordKind.Sex, belief.Sex == Sex.Male ? "1.0" : "0.1", Probability.Certain))
            .ToList();
        if (words.Count == 1)
        {
            words.Add(new(TradeWordKind.Seen, NormalSpelling(), Probability.Certain));
        }

        return words;
    }

    public string Look(IEnumerable<Expression> expressions)
    {
        var names = expressions.Where(e => e.IsVisible).OrderBy(e => e.Locus.Index).Select(e => e.Name).ToArray();
        return names.Length == 0 ? NormalSpelling() : Join(names);
    }

    /// <summary>Puts words together; a comma stands between seen and carried, and where two words would read as one name.</summary>
    public string Join(IReadOnlyList<TradeWord> words)
    {
        var text = new StringBuilder();
        for (var i = 0; i < words.Count; i++)
        {
            if (i > 0)
            {
                var comma = (words[i - 1].IsSeen && words[i].IsCarried)
                    || (words[i].Kind != TradeWordKind.Strands && RunsTogether([.. words.Take(i).Select(w => w.Text)], [.. words.Skip(i).Select(w => w.Text)]));
                text.Append(comma ? ", " : " ");
            }

            text.Append(words[i].Text);
        }

        return text.ToString();
    }

    private string Join(string[] names)
    {
        var text = new StringBuilder(names[0]);
        for (var i = 1; i < names.Length; i++)
        {
            text.Append(RunsTogether([.. names.Take(i)], [.. names.Skip(i)]) ? ", " : " ").Append(names[i]);
        }

        return text.ToString();
    }

    // Whether a known name reaches across the place between two texts: "Red" and "Stripe" where Red Stripe is a gene of its own.
    private bool RunsTogether(IReadOnlyList<string> before, IReadOnlyList<string> after)
    {
        var left = TextToken.Split(string.Join(' ', before)).Reverse().TakeWhile(t => t.Kind == TokenKind.Word).Take(6).Reverse().ToArray();
        var right = TextToken.Split(string.Join(' ', after)).TakeWhile(t => t.Kind == TokenKind.Word).Take(6).ToArray();
        for (var l = 1; l <= left.Length; l++)
        {
            for (var r = 1; r <= right.Length; r++)
            {
                if (lexicon.FindKey(TextToken.Join(left[^l..].Concat(right[..r]))) is not null)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private IEnumerable<(int Order, TradeWord Word)> Certain(LinkageGroup group, Diplotype diplotype, bool heterogametic)
    {
        var ordered = group.IsSex && heterogametic;
        var pairs = group.Loci.Select(l => l.PairOf(diplotype)).ToArray();
        var needsStrands = ordered
            ? pairs.Any(p => p.First != p.Second && p.First != 0 && p.Second != 0)
            : pairs.Count(p => p.First != p.Second) > 1;
        foreach (var (locus, (first, second)) in group.Loci.Zip(pairs))
        {
            var maker = "";
            if (ordered && !needsStrands && first != second)
            {
                maker = MakerWords(onUnshared: first == 0);
            }

            foreach (var word in PairWords(locus, first, second, maker))
            {
                yield return (locus.Index, word);
            }
        }

        if (needsStrands)
        {
            yield return (group.Index, new(TradeWordKind.Strands, StrandText(group, diplotype, ordered), Probability.Certain));
        }
    }

    private List<(int Order, TradeWord Word)> Uncertain(GenotypeBelief belief, LinkageGroup group)
    {
        var ordered = group.IsSex && belief.IsHeterogametic;
        List<(int Order, TradeWord Word)> words;
        if (ordered && group.Loci.Count == 1 && belief.PairsAt(group.Loci[0]) is [{ Value: { First: 0, Second: var allele } }])
        {
            var likeliest = belief[group][0];
            var maker = likeliest.Weight.IsCloseTo(Probability.Half)
                ? ""
                : $"{Percentages.Write(likeliest.Weight)}% {MakerWords(onUnshared: likeliest.Value.First == 0)}";
            words = PairWords(group.Loci[0], 0, allele, maker).Select(w => (group.Loci[0].Index, w)).ToList();
        }
        else
        {
            words = group.Loci.SelectMany(l => Possibilities(l, belief.PairsAt(l)).Select(w => (l.Index, w))).ToList();
        }

        // Words by locus tell the whole belief only if loci and phases are as open as the reader takes them.
        if ((ordered || group.Loci.Count > 1) && !SaysAsMuch(belief, group, words))
        {
            var kind = TradeWordKind.Strands;
            words = belief[group]
                .Where(w => !w.Value.IsWild)
                .Select(w => (group.Index, new TradeWord(kind, $"{Percentages.Write(w.Weight)}% {StrandText(group, w.Value, ordered)}", w.Weight)))
                .ToList();
        }

        return words;
    }

    private bool SaysAsMuch(GenotypeBelief belief, LinkageGroup group, List<(int Order, TradeWord Word)> words)
    {
        var text = Join(words.OrderBy(w => w.Word.Kind).ThenBy(w => w.Order).Select(w => w.Word).ToArray());
        var parsed = TradeParser.Parse(lexicon, text, TextToken.Split(text));
        return parsed.IsRead
            && ClaimReckoner.Reckon(belief.Species, belief.Sex, parsed.Value, text, []) is { IsRead: true, Value: var read }
            && read[group].Count == belief[group].Count
            && belief[group].All(w => read[group].Any(r => r.Value == w.Value && Math.Abs(r.Weight.Value - w.Weight.Value) < 0.01));
    }

    // The pair with the fewest mutant alleles is told as if it were certain, the others as what may come on top of it.
    private IEnumerable<TradeWord> Possibilities(Locus locus, IReadOnlyList<Weighted<(int First, int Second)>> pairs)
    {
        var least = pairs
            .OrderBy(p => (p.Value.First == 0 ? 0 : 1) + (p.Value.Second == 0 ? 0 : 1))
            .ThenByDescending(p => p.Weight)
            .First();
        foreach (var word in PairWords(locus, least.Value.First, least.Value.Second, ""))
        {
            yield return word;
        }

        foreach (var (pair, weight) in pairs.Where(p => p.Value != least.Value))
        {
            var percent = Percentages.Write(weight);
            if (Added(least.Value, pair) is not { } more)
            {
                yield return new(TradeWordKind.Carried, $"{percent}% possible {PossiblePair(locus, pair.First, pair.Second)}", weight)
                {
                    Form = locus.ExpressionOf(pair.First, pair.Second),
                };
                continue;
            }

            var allele = locus.Alleles[more];
            var how = allele.Mode == InheritanceMode.Recessive ? "het" : "possible";
            yield return new(TradeWordKind.Carried, $"{percent}% {how} {allele.Name}", weight) { Allele = allele };
        }
    }

    // The allele that makes one pair into the other by taking the place of a wild one, unless the pair has it already.
    private static int? Added((int First, int Second) from, (int First, int Second) to)
    {
        if (from.First != 0)
        {
            return null;
        }

        var more = from.Second == to.First ? to.Second : from.Second == to.Second ? to.First : 0;
        return more != 0 && more != from.Second ? more : null;
    }

    private string PossiblePair(Locus locus, int first, int second)
    {
        if (first == 0)
        {
            return $"{locus.Alleles[second].Name}/+";
        }

        return first == second && locus.Alleles[first].Mode == InheritanceMode.Recessive
            ? $"visual {locus.Alleles[first].Name}"
            : PairName(locus, first, second);
    }

    private IEnumerable<TradeWord> PairWords(Locus locus, int first, int second, string maker)
    {
        var (a, b) = first <= second ? (first, second) : (second, first);
        if (b == 0)
        {
            yield break;
        }

        var before = maker.Length == 0 ? "" : maker + " ";
        if (a == 0 && locus.Alleles[b].Mode == InheritanceMode.Recessive && !locus.ExpressionOf(0, b).IsVisible)
        {
            yield return new(TradeWordKind.Carried, $"{before}het {locus.Alleles[b].Name}", Probability.Certain) { Allele = locus.Alleles[b] };
            yield break;
        }

        // Cryptic het Clown: one allele of the locus shows, the other is hidden behind it.
        var (shown, hidden) = locus.Alleles[a].Mode == InheritanceMode.Recessive ? (b, a) : (a, b);
        if (a != 0 && a != b
            && locus.Alleles[hidden].Mode == InheritanceMode.Recessive
            && locus.Alleles[shown].Mode != InheritanceMode.Recessive
            && locus.ExpressionOf(a, b) == locus.ExpressionOf(0, shown))
        {
            yield return new(TradeWordKind.Seen, PairName(locus, 0, shown), Probability.Certain) { Form = locus.ExpressionOf(0, shown) };
            yield return new(TradeWordKind.Carried, $"het {locus.Alleles[hidden].Name}", Probability.Certain) { Allele = locus.Alleles[hidden] };
            yield break;
        }

        yield return new(TradeWordKind.Seen, before + PairName(locus, a, b, needsAllele: maker.Length > 0), Probability.Certain)
        {
            Form = locus.ExpressionOf(a, b),
        };
    }

    private string PairName(Locus locus, int a, int b, bool needsAllele = false)
    {
        var form = locus.ExpressionOf(a, b);
        if (!needsAllele && form.IsVisible && lexicon.Find(form.Name) is Term.OfPair pair && pair.Locus == locus && (pair.First, pair.Second) == (a, b))
        {
            return form.Name;
        }

        var (one, two) = (locus.Alleles[a], locus.Alleles[b]);
        if (one.IsWild)
        {
            // A recessive allele that a stated form makes visible in one copy: the bare name would mean two.
            return two.Mode == InheritanceMode.Recessive ? $"{two.Name}/+" : two.Name;
        }

        if (a == b)
        {
            return one.Mode == InheritanceMode.Recessive ? one.Name : $"Super {one.Name}";
        }

        return $"{one.Name}/{two.Name}";
    }

    private string MakerWords(bool onUnshared)
    {
        var two = lexicon.Species.SexSystem.Heterogametic();
        var givesTo = onUnshared ? two : two.Opposite();
        return givesTo == Sex.Male ? "male maker" : "female maker";
    }

    private string StrandText(LinkageGroup group, Diplotype diplotype, bool bySexChromosome)
    {
        var system = lexicon.Species.SexSystem;
        var (x, y) = bySexChromosome ? (system.Shared() + " ", system.Unshared() + " ") : ("", "");
        var (first, second) = bySexChromosome || diplotype.First != 0
            ? (diplotype.First, diplotype.Second)
            : (diplotype.Second, diplotype.First);
        return $"({x}{Strand(group, first)}/{y}{Strand(group, second)})";
    }

    private string Strand(LinkageGroup group, int haplotype) => Join(group.Loci
        .Select((l, i) => l.Alleles[group.AlleleAt(haplotype, i)])
        .Select(a => a.Mode == InheritanceMode.Recessive ? a.Name.ToLowerInvariant() : a.Name)
        .ToArray());

    private string NormalSpelling() =>
        lexicon.Names.FirstOrDefault(n => n.Term is Term.OfNormal)?.Name ?? NormalName;
}
