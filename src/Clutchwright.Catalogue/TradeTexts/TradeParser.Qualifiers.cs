using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.TradeTexts;

/// <content>Words before a name, and looking names up.</content>
internal sealed partial class TradeParser
{
    /// <summary>Words that mean something of their own in a trade text, so that no gene can bear them.</summary>
    public static IReadOnlyList<string> Keywords { get; } =
    [
        "het", "hets", "heterozygous", "ph", "dh", "th", "double", "triple", "quadruple", "quad", "poss", "possible", "super", "homozygous",
        "visual", "male", "female", "unsexed", "maker", "and", "with", "plus", "for", "or", "percent", "any",
    ];

    private sealed record NameMatch(Term Term, int Length, TextSpan Span);

    private sealed class Qualifier
    {
        public TextSpan Span { get; set; }

        public bool IsEmpty { get; set; } = true;

        public Probability? Chance { get; set; }

        public bool IsPossible { get; set; }

        public bool IsHet { get; set; }

        /// <summary>How many genes double or triple het promises; 0: not said.</summary>
        public int Copies { get; set; }

        public bool IsTwo { get; set; }

        public bool IsSuper { get; set; }

        public bool IsVisual { get; set; }

        public Side? Side { get; set; }

        public bool HalfIsNoted { get; set; }
    }

    private (Qualifier Qualifier, TextProblem? Problem) ReadQualifier()
    {
        var q = new Qualifier();
        while (_at < _tokens.Count)
        {
            var token = _tokens[_at];
            var used = 1;
            if (token.Kind == TokenKind.Word && NameAt(_at) is { Length: > 1 })
            {
                break;
            }

            if (token.Kind == TokenKind.Percent || IsBarePercent(_at))
            {
                used = IsWord(_at + 1, "percent") ? 2 : 1;
                if (Percentages.Read(token.Key) is not { } chance)
                {
                    return (q, Problem(TextProblemKind.Contradiction, token.Span, $"'{Words(token.Span)}' is no chance; it lies above 0 % and up to 100 %."));
                }

                if (q.Chance is not null || q.IsHet)
                {
                    return (q, Problem(
                        TextProblemKind.Contradiction, q.Span.To(token.Span), $"Two statements stand before one gene: '{Words(q.Span)}' and '{Words(token.Span)}'."));
                }

                q.Chance = chance;
            }
            else if (token.Kind != TokenKind.Word)
            {
                break;
            }
            else if (token.Key is "het" or "hets" or "heterozygous" or "ph" or "dh" or "th")
            {
                if (q.IsHet || q.IsTwo || q.IsVisual)
                {
                    return (q, Problem(
                        TextProblemKind.Contradiction, q.Span.To(token.Span), $"Two statements stand before one gene: '{Words(q.Span)}' and '{Words(token.Span)}'."));
                }

                q.IsHet = true;
                q.IsPossible |= token.Key == "ph";
                q.Copies = token.Key switch { "dh" => 2, "th" => 3, _ => q.Copies };
                used = IsWord(_at + 1, "for") ? 2 : 1;
            }
            else if (token.Key is "poss" or "possible")
            {
                q.IsPossible = true;
            }
            else if (token.Key is "double" or "triple" or "quad" or "quadruple")
            {
                q.Copies = token.Key switch { "double" => 2, "triple" => 3, _ => 4 };
            }
            else if (token.Key is "super" or "homozygous" or "visual")
            {
                if (q.IsHet || q.IsTwo || q.IsVisual)
                {
                    return (q, Problem(
                        TextProblemKind.Contradiction, q.Span.To(token.Span), $"Two statements stand before one gene: '{Words(q.Span)}' and '{Words(token.Span)}'."));
                }

                q.IsTwo = token.Key is not "visual";
                q.IsSuper = token.Key is "super";
                q.IsVisual = token.Key is "visual";
            }
            else if (token.Key is "male" or "female" && IsWord(_at + 1, "maker"))
            {
                used = 2;
                var span = token.Span.To(_tokens[_at + 1].Span);
                if (q.Side is not null)
                {
                    return (q, Problem(TextProblemKind.Contradiction, q.Span.To(span), "Two statements on the maker stand before one gene."));
                }

                var givesTo = token.Key == "male" ? Sex.Male : Sex.Female;
                q.Side = new(givesTo == Species.SexSystem.Heterogametic(), Probability.Certain);
            }
            else
            {
                break;
            }

            var last = _tokens[Math.Min(_at + used, _tokens.Count) - 1].Span;
            q.Span = q.IsEmpty ? token.Span.To(last) : q.Span.To(last);
            q.IsEmpty = false;
            _at += used;
        }

        // 92% male maker Banana: the chance is that of the side.
        if (q is { Side: { } side, Chance: { } sure, IsHet: false, IsPossible: false })
        {
            q.Side = side with { Chance = sure };
        }

        return (q, null);
    }

    private Probability ChanceOf(Qualifier qualifier, string name)
    {
        if (qualifier.Chance is { } chance)
        {
            return chance;
        }

        if (!qualifier.IsPossible)
        {
            return Probability.Certain;
        }

        if (!qualifier.HalfIsNoted)
        {
            qualifier.HalfIsNoted = true;
            Note(qualifier.Span, $"'{Words(qualifier.Span)}' before {name} has no figure and is taken as 50 %.");
        }

        return Probability.Half;
    }

    private TextProblem? MakerOfBefore(Qualifier qualifier)
    {
        for (var i = _result.Claims.Count - 1; i >= 0; i--)
        {
            switch (_result.Claims[i])
            {
                case Claim.Shown { Side: null, Allele: { Locus.Group.IsSex: true, Mode: not InheritanceMode.Recessive } } shown:
                    _result.Claims[i] = shown with { Side = qualifier.Side };
                    return null;
                case Claim.Carried { Side: null, Allele.Locus.Group.IsSex: true } carried:
                    _result.Claims[i] = carried with { Side = qualifier.Side };
                    return null;
            }
        }

        return NameAt(_at) is { } name
            ? NotSexLinked(qualifier, Words(name.Span))
            : Problem(TextProblemKind.NotAMaker, qualifier.Span, $"'{Words(qualifier.Span)}' goes with one copy of a sex-linked gene.");
    }

    private bool NextIsSexLinked() => NameAt(_at) is { } name
        ? name.Term switch
        {
            Term.OfAllele { Value: var allele } => allele.Locus.Group.IsSex,
            Term.OfPair { Locus: var locus } => locus.Group.IsSex,
            _ => false,
        }
        : IsAt(_at, TokenKind.Plus) && IsAt(_at + 1, TokenKind.Slash);

    private TextProblem NotSexLinked(Qualifier qualifier, string name) => Problem(
        TextProblemKind.NotAMaker, qualifier.Span, $"{name} is not sex-linked; '{Words(qualifier.Span)}' goes with one copy of a sex-linked gene.");

    private TextProblem TwoCopyMaker(Qualifier qualifier, NameMatch name) => Problem(
        TextProblemKind.NotAMaker, qualifier.Span.To(name.Span), $"'{Words(name.Span)}' is two copies, which go to every young; only one copy makes a maker.");

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
        var nearest = new List<(int Score, string Name)>();
        for (var length = 1; length <= 3 && IsAt(_at + length - 1, TokenKind.Word); length++)
        {
            var key = TextToken.Join(_tokens.Skip(_at).Take(length));
            foreach (var name in _lexicon.Names)
            {
                Try(name.Key, name.Name);
            }

            foreach (var keyword in length == 1 ? Keywords : [])
            {
                Try(keyword, keyword);
            }

            void Try(string known, string name)
            {
                var score = Spelling.Score(key, known);
                if (score < int.MaxValue)
                {
                    nearest.Add((score, name));
                    best = score < best.Score ? (score, length) : best;
                }
            }
        }

        var span = _tokens[_at].Span.To(_tokens[_at + best.Length - 1].Span);
        var spellings = nearest
            .OrderBy(n => n.Score)
            .Select(n => n.Name)
            .Distinct(StringComparer.OrdinalIgnoreCase)
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
