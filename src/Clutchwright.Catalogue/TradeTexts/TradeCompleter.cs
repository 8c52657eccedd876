using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>Finds how the word at the caret may go on.</summary>
internal sealed class TradeCompleter(Lexicon lexicon)
{
    private const int Most = 12;
    private static readonly string[] Openers = ["het", "66% het", "50% het", "Super", "double het", "male maker", "female maker", "possible"];

    private static readonly string[] AfterPercentage = ["het", "possible"];

    public IReadOnlyList<Completion> Suggest(string text, int caret)
    {
        var tokens = TextToken.Split(text);
        var before = tokens.Where(t => t.Span.Start < caret).ToList();
        var isTyping = before.Count > 0 && before[^1].Kind == TokenKind.Word && before[^1].Span.End >= caret;
        var found = new List<(int Rank, Completion Completion)>();
        var need = NeedsGene(before);
        if (!isTyping && (before.Count == 0 || need is not null))
        {
            found.AddRange(Names([], before, caret, 0));
        }
        else
        {
            // "Black Pa" goes on to Black Pastel before the Pa alone goes on to Pastel; "Black " may still become Black Pastel.
            for (var count = Math.Min(before.Count, 4); count > 0; count--)
            {
                var typed = before[^count..];
                if (typed.TrueForAll(t => t.Kind == TokenKind.Word))
                {
                    var start = typed[0].Span.Start;
                    var end = isTyping ? typed[^1].Span.End : caret;
                    string[] words = isTyping
                        ? [.. typed.SkipLast(1).Select(t => t.Key), Spelling.Key(text[typed[^1].Span.Start..caret])]
                        : [.. typed.Select(t => t.Key), ""];
                    found.AddRange(Names(words, before[..^count], start, end - start)
                        .Select(c => (((4 - count) * 10) + c.Rank, c.Completion)));
                }
            }
        }

        return found
            .OrderBy(f => f.Rank)
            .Select(f => f.Completion)
            .DistinctBy(c => (c.For ?? c.Text).ToUpperInvariant())
            .Take(Most)
            .ToArray();
    }

    private IEnumerable<(int Rank, Completion Completion)> Names(string[] words, List<TextToken> context, int start, int length)
    {
        var need = NeedsGene(context);
        var typed = string.Concat(words);
        foreach (var name in lexicon.Names.Where(n => Fits(n.Term, need)))
        {
            if (RankOf(name, words, typed) is { } rank)
            {
                var main = MainName(name.Term);
                var other = main is null || string.Equals(main, name.Name, StringComparison.Ordinal) ? null : main;
                yield return (rank + (other is null ? 0 : 1), new(name.Name, start, length, other));
            }
        }

        if (need is Need.Word || (need is null && typed.Length > 0))
        {
            foreach (var opener in need is Need.Word ? AfterPercentage : Openers)
            {
                if (Spelling.Key(opener).StartsWith(typed, StringComparison.Ordinal) && !string.Equals(Spelling.Key(opener), typed, StringComparison.Ordinal))
                {
                    yield return (2, new(opener, start, length, null));
                }
            }
        }
    }

    // 0: the name begins so; 1: its words do, as "de g" of Desert Ghost; 5: one of its later words does; null: none of it.
    private static int? RankOf(LexiconName name, string[] words, string typed)
    {
        if (name.Key.StartsWith(typed, StringComparison.Ordinal) && (words is not [.., ""] || name.Key.Length > typed.Length || typed.Length == 0))
        {
            return 0;
        }

        var parts = TextToken.Split(name.Name);
        if (words.Length > 1 && parts.Count >= words.Length
            && words.Select((w, i) => parts[i].Key.StartsWith(w, StringComparison.Ordinal)).All(m => m))
        {
            return 1;
        }

        return words is [{ Length: > 0 } one] && parts.Skip(1).Any(t => t.Key.StartsWith(one, StringComparison.Ordinal)) ? 5 : null;
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
