using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.TradeTexts;

/// <content>Looking names and strands up.</content>
internal sealed partial class TradeParser
{
    private sealed record NameMatch(Term Term, int Length, TextSpan Span);

    // (A B/+ +) or (X A/Y B): the alleles of a linkage group, strand by strand.
    private Claim.Strand? Strands(int start, int end)
    {
        var slash = -1;
        for (var i = start; i < end; i++)
        {
            if (_tokens[i].Kind == TokenKind.Slash)
            {
                if (slash >= 0)
                {
                    return null;
                }

                slash = i;
            }
        }

        if (slash < 0)
        {
            return null;
        }

        var (shared, unshared) = (Species.SexSystem.Shared().ToLowerInvariant(), Species.SexSystem.Unshared().ToLowerInvariant());
        var forward = IsWord(start, shared) && IsWord(slash + 1, unshared);
        var backward = IsWord(start, unshared) && IsWord(slash + 1, shared);
        var skip = forward || backward ? 1 : 0;
        if (StrandOf(start + skip, slash) is not { } first || StrandOf(slash + 1 + skip, end) is not { } second)
        {
            return null;
        }

        var group = first.Concat(second).FirstOrDefault(a => a is not null)?.Locus.Group;
        if (group is null
            || (skip == 1 && !group.IsSex)
            || (skip == 0 && group.Loci.Count == 1 && !IsAt(start - 1, TokenKind.Open))
            || HaplotypeOf(group, first) is not { } a
            || HaplotypeOf(group, second) is not { } b)
        {
            return null;
        }

        var span = _tokens[start].Span.To(_tokens[end - 1].Span);
        return new(group, backward ? new(b, a) : new(a, b), skip == 1, Probability.Certain, span);
    }

    private List<Allele?>? StrandOf(int start, int end)
    {
        var alleles = new List<Allele?>();
        for (var i = start; i < end;)
        {
            if (_tokens[i].Kind == TokenKind.Plus)
            {
                alleles.Add(null);
                i++;
            }
            else if (_tokens[i].Kind == TokenKind.Break)
            {
                i++;
            }
            else if (NameAt(i) is { Term: Term.OfAllele { Value: var allele } } name && i + name.Length <= end)
            {
                alleles.Add(allele);
                i += name.Length;
            }
            else
            {
                return null;
            }
        }

        return alleles;
    }

    private static int? HaplotypeOf(LinkageGroup group, List<Allele?> alleles)
    {
        if (alleles.Count != group.Loci.Count)
        {
            return null;
        }

        var code = 0;
        for (var i = 0; i < alleles.Count; i++)
        {
            if (alleles[i] is not { } allele)
            {
                continue;
            }

            if (allele.Locus != group.Loci[i])
            {
                return null;
            }

            code = group.With(code, i, allele.Index);
        }

        return code;
    }

    private NameMatch? NameAt(int at)
    {
        var most = 0;
        while (most < MostWordsInAName && at + most < _tokens.Count && _tokens[at + most].Kind == TokenKind.Word)
        {
            most++;
        }

        for (var length = most; length > 0; length--)
        {
            if (_lexicon.FindKey(TextToken.Join(_tokens.Skip(at).Take(length))) is { } term)
            {
                return new(term, length, _tokens[at].Span.To(_tokens[at + length - 1].Span));
            }
        }

        return null;
    }

    private TextProblem Unknown()
    {
        var best = (Score: int.MaxValue, Length: 1);
        var nearest = new List<(int Score, string Name, object Means)>();
        for (var length = 1; length <= 3 && IsAt(_at + length - 1, TokenKind.Word); length++)
        {
            var key = TextToken.Join(_tokens.Skip(_at).Take(length));
            foreach (var name in _lexicon.Names)
            {
                Try(name.Key, name.Name, name.Term);
            }

            foreach (var keyword in length == 1 ? Keywords : [])
            {
                Try(keyword, keyword, keyword);
            }

            void Try(string known, string name, object means)
            {
                // "Axanthic" alone is the beginning of several names, which are as near as a slip of one letter.
                var score = key.Length >= 4 && known.StartsWith(key, StringComparison.Ordinal) ? 1 : Spelling.Score(key, known);
                if (score < int.MaxValue)
                {
                    nearest.Add((score, name, means));
                    best = score < best.Score || (score == best.Score && length > best.Length) ? (score, length) : best;
                }
            }
        }

        var span = _tokens[_at].Span.To(_tokens[_at + best.Length - 1].Span);
        var spellings = nearest
            .OrderBy(n => n.Score)
            .DistinctBy(n => n.Means)
            .Select(n => n.Name)
            .Take(3)
            .ToArray();
        var hint = spellings.Length == 0 ? "" : $" Nearest: {string.Join(", ", spellings)}.";
        return new(TextProblemKind.UnknownWord, span.Start, span.Length, $"'{Words(span)}' is not known.{hint}", spellings);
    }

    private int SegmentEnd()
    {
        var end = _at;
        while (end < _tokens.Count && _tokens[end].Kind != TokenKind.Dot)
        {
            end++;
        }

        return end;
    }

    private bool IsAt(int at, TokenKind kind) => at >= 0 && at < _tokens.Count && _tokens[at].Kind == kind;

    private bool IsWord(int at, string key) => IsAt(at, TokenKind.Word) && string.Equals(_tokens[at].Key, key, StringComparison.Ordinal);

    private bool IsJoiner(int at) =>
        IsAt(at, TokenKind.Break)
        || (IsAt(at, TokenKind.Plus) && !IsAt(at + 1, TokenKind.Slash))
        || IsWord(at, "and")
        || IsWord(at, "plus");

    // "66 het Clown": the sign is often left out.
    private bool IsBarePercent(int at) =>
        IsAt(at, TokenKind.Word)
        && _tokens[at].Key.All(char.IsAsciiDigit)
        && IsAt(at + 1, TokenKind.Word)
        && _tokens[at + 1].Key is "percent" or "het" or "hets" or "heterozygous" or "poss" or "possible" or "ph" or "dh" or "th";

    private string Words(TextSpan span) => _text.Substring(span.Start, span.Length);

    private void Note(TextSpan span, string text) => _result.Notes.Add(new(span.Start, span.Length, text));

    private static TextProblem Problem(TextProblemKind kind, TextSpan span, string text) => new(kind, span.Start, span.Length, text, []);
}
