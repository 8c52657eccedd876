using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>Finds how the word at the caret may go on.</summary>
internal sealed class TradeCompleter(Lexicon lexicon)
{
    private const int Most = 12;
    private static readonly string[] Openers = ["het", "66% het", "50% het", "Super", "double het", "male maker", "female maker", "possible"];

    public IReadOnlyList<Completion> Suggest(string text, int caret)
    {
        var tokens = TextToken.Split(text);
        var before = tokens.Where(t => t.Span.Start < caret).ToList();
        var isTyping = before.Count > 0 && before[^1].Kind == TokenKind.Word && before[^1].Span.End >= caret;
        var found = new List<(int Rank, Completion Completion)>();
        if (isTyping)
        {
            // "Black Pa" goes on to Black Pastel before the Pa alone goes on to Pastel.
            for (var count = Math.Min(before.Count, 4); count > 0; count--)
            {
                var typed = before[^count..];
                if (typed.TrueForAll(t => t.Kind == TokenKind.Word))
                {
                    var context = before[..^count];
                    var start = typed[0].Span.Start;
                    var key = TextToken.Join(typed.SkipLast(1)) + Spelling.Key(text[typed[^1].Span.Start..caret]);
                    found.AddRange(Names(key, context, start, typed[^1].Span.End - start)
                        .Select(c => (((4 - count) * 10) + c.Rank, c.Completion)));
                }
            }
        }
        else if (before.Count == 0 || NeedsGene(before) is not null)
        {
            found.AddRange(Names("", before, caret, 0));
        }

        return found
            .OrderBy(f => f.Rank)
            .Select(f => f.Completion)
            .DistinctBy(c => (c.For ?? c.Text).ToUpperInvariant())
            .Take(Most)
            .ToArray();
    }

    private IEnumerable<(int Rank, Completion Completion)> Names(string typed, List<TextToken> context, int start, int length)
    {
        var need = NeedsGene(context);
        foreach (var name in lexicon.Names.Where(n => Fits(n.Term, need)))
        {
            var rank = name.Key.StartsWith(typed, StringComparison.Ordinal)
                ? 0
                : TextToken.Split(name.Name).Skip(1).Any(t => typed.Length > 0 && t.Key.StartsWith(typed, StringComparison.Ordinal)) ? 5 : -1;
            if (rank >= 0)
            {
                var main = MainName(name.Term);
                var other = main is null || string.Equals(main, name.Name, StringComparison.Ordinal) ? null : main;
                yield return (rank + (other is null ? 0 : 1), new(name.Name, start, length, other));
            }
        }

        if (need is null && typed.Length > 0)
        {
            foreach (var opener in Openers)
            {
                if (Spelling.Key(opener).StartsWith(typed, StringComparison.Ordinal) && !string.Equals(Spelling.Key(opener), typed, StringComparison.Ordinal))
                {
                    yield return (2, new(opener, start, length, null));
                }
            }
        }
    }

    private string? MainName(Term term) => term switch
    {
        Term.OfAllele { Value: var allele } => allele.Name,
        _ => lexicon.Names.FirstOrDefault(n => n.Term == term)?.Name,
    };

    // What kind of gene the words before call for; null: anything.
    private static Need? NeedsGene(List<TextToken> before)
    {
        if (before.Count == 0)
        {
            return null;
        }

        var last = before[^1];
        return last.Kind switch
        {
            TokenKind.Percent => Need.Word,
            TokenKind.Slash => Need.Allele,
            TokenKind.Word => last.Key switch
            {
                "het" or "hets" or "ph" or "dh" or "for" => Need.Recessive,
                "visual" => Need.Recessive,
                "super" => Need.Visible,
                "possible" or "poss" => Need.Allele,
                "maker" => Need.SexLinked,
                _ => null,
            },
            _ => null,
        };
    }

    private static bool Fits(Term term, Need? need) => (need, term) switch
    {
        (null, Term.OfSpecies) => false,
        (null, _) => true,
        (Need.Word, _) => false,
        (Need.Recessive, Term.OfAllele { Value.Mode: InheritanceMode.Recessive }) => true,
        (Need.Visible, Term.OfAllele { Value.Mode: not InheritanceMode.Recessive }) => true,
        (Need.SexLinked, Term.OfAllele { Value.Locus.Group.IsSex: true }) => true,
        (Need.Allele, Term.OfAllele) => true,
        _ => false,
    };

    private enum Need
    {
        Recessive = 1,
        Visible = 2,
        SexLinked = 3,
        Allele = 4,
        Word = 5,
    }
}
