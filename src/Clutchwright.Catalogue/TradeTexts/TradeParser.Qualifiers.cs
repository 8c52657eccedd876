using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.TradeTexts;

/// <content>Words before a name.</content>
internal sealed partial class TradeParser
{
    /// <summary>Words that mean something of their own in a trade text, so that no gene can bear them.</summary>
    public static IReadOnlyList<string> Keywords { get; } =
    [
        "het", "hets", "heterozygous", "ph", "dh", "th", "double", "triple", "quadruple", "quad", "poss", "possible", "super", "homozygous",
        "visual", "male", "female", "unsexed", "maker", "and", "with", "plus", "for", "or", "percent", "any",
    ];

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
}
