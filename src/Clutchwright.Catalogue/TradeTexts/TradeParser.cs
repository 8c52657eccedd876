using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>What a trade text says, claim by claim, before it is reckoned into genotypes.</summary>
internal sealed class ParsedText
{
    public Sex? Sex { get; set; }

    /// <summary>Where the sex stands; <c>null</c>: nowhere.</summary>
    public TextSpan? SexSpan { get; set; }

    public List<Claim> Claims { get; } = [];

    public List<TextNote> Notes { get; } = [];
}

/// <summary>Reads the words of one animal or of one alternative of a want.</summary>
internal sealed partial class TradeParser
{
    private const int MostWordsInAName = 6;

    private readonly Lexicon _lexicon;
    private readonly string _text;
    private readonly IReadOnlyList<TextToken> _tokens;
    private readonly ParsedText _result = new();
    private int _at;

    private TradeParser(Lexicon lexicon, string text, IReadOnlyList<TextToken> tokens)
    {
        _lexicon = lexicon;
        _text = text;
        _tokens = tokens;
    }

    private Species Species => _lexicon.Species;

    /// <summary>Reads a stretch of tokens.</summary>
    /// <param name="lexicon">The names.</param>
    /// <param name="text">The whole text.</param>
    /// <param name="tokens">The tokens to read, with places in the whole text.</param>
    public static TextOutcome<ParsedText> Parse(Lexicon lexicon, string text, IReadOnlyList<TextToken> tokens)
    {
        var parser = new TradeParser(lexicon, text, tokens);
        return parser.Run() is { } problem ? new(problem) : new(parser._result);
    }

    private TextProblem? Run()
    {
        var atStart = true;
        while (_at < _tokens.Count)
        {
            var token = _tokens[_at];
            if (atStart && token.Kind is TokenKind.Word or TokenKind.Plus && Strands(_at, SegmentEnd()) is { } strand)
            {
                _result.Claims.Add(strand);
                _at = SegmentEnd();
                continue;
            }

            switch (token.Kind)
            {
                case TokenKind.Break or TokenKind.Close:
                    _at++;
                    break;
                case TokenKind.Dot:
                    _at++;
                    atStart = true;
                    break;
                case TokenKind.Count or TokenKind.MaleSign or TokenKind.FemaleSign:
                    if (SexToken(token) is { } sexProblem)
                    {
                        return sexProblem;
                    }

                    break;
                case TokenKind.Unknown:
                    return Problem(TextProblemKind.UnknownWord, token.Span, $"The sign '{token.Key}' means nothing here.");
                default:
                    atStart = false;
                    if (Item(token) is { } problem)
                    {
                        return problem;
                    }

                    break;
            }
        }

        return _result.Claims.Count == 0 && _result.SexSpan is null
            ? Problem(TextProblemKind.Empty, new(0, _text.Length), "Nothing is said; write Normal for an animal that shows nothing.")
            : null;
    }

    private TextProblem? Item(TextToken token)
    {
        if (token.Kind == TokenKind.Open)
        {
            return Parenthesis(chance: null);
        }

        if (token.Kind == TokenKind.Slash)
        {
            return Problem(TextProblemKind.Incomplete, token.Span, "A slash stands between two alleles of one locus, as in Mojave/Lesser.");
        }

        if (token.Kind == TokenKind.Plus && !IsAt(_at + 1, TokenKind.Slash))
        {
            _at++; // Pastel + Clown
            return null;
        }

        if (token.Kind == TokenKind.Word && NameAt(_at) is not { Length: > 1 })
        {
            switch (token.Key)
            {
                case "and" or "with" or "plus":
                    _at++;
                    return null;
                case "male" or "female" or "unsexed" when !IsWord(_at + 1, "maker"):
                    return SexToken(token);
                case "or":
                    return Problem(TextProblemKind.NotHere, token.Span, "'or' belongs in a want; an animal is one thing, perhaps with a percentage.");
                case "maker":
                    return Problem(TextProblemKind.Incomplete, token.Span, "Write male maker or female maker.");
            }
        }

        var (qualifier, problem) = ReadQualifier();
        return problem ?? Named(qualifier);
    }

    private TextProblem? SexToken(TextToken token)
    {
        _at++;
        Sex? sex = null;
        switch (token.Kind)
        {
            case TokenKind.MaleSign:
                sex = Sex.Male;
                break;
            case TokenKind.FemaleSign:
                sex = Sex.Female;
                break;
            case TokenKind.Word:
                sex = token.Key switch { "male" => Sex.Male, "female" => Sex.Female, _ => null };
                break;
            default:
                switch (token.Key)
                {
                    case "1.0" or "1.0.0":
                        sex = Sex.Male;
                        break;
                    case "0.1" or "0.1.0":
                        sex = Sex.Female;
                        break;
                    case "0.0.1":
                        break;
                    default:
                        return Problem(TextProblemKind.NotHere, token.Span, $"'{token.Key}' is not one animal; write 1.0 for a male, 0.1 for a female, 0.0.1 for unsexed.");
                }

                break;
        }

        if (_result.SexSpan is { } earlier)
        {
            return Problem(TextProblemKind.Contradiction, token.Span, $"The sex is told twice: '{Words(earlier)}' and '{Words(token.Span)}'.");
        }

        _result.Sex = sex;
        _result.SexSpan = token.Span;
        return null;
    }

    private TextProblem? Parenthesis(Qualifier? chance)
    {
        var open = _at;
        var close = open + 1;
        while (close < _tokens.Count && _tokens[close].Kind != TokenKind.Close)
        {
            close++;
        }

        if (Strands(open + 1, close) is { } strand)
        {
            var span = _tokens[open].Span.To(_tokens[Math.Min(close, _tokens.Count - 1)].Span);
            _result.Claims.Add(strand with { Span = span, Chance = chance?.Chance ?? Probability.Certain });
            _at = Math.Min(close + 1, _tokens.Count);
            return null;
        }

        if (chance is not null)
        {
            return Problem(TextProblemKind.NotOneLocus, _tokens[open].Span, "After a percentage brackets hold the two strands of one linkage group, as in (A B/+ +).");
        }

        // Brackets around a remark, as in Banana (male maker).
        _at++;
        return null;
    }

    private TextProblem? Named(Qualifier qualifier)
    {
        if (qualifier.Side is not null && !qualifier.IsHet && !qualifier.IsTwo && !NextIsSexLinked())
        {
            return MakerOfBefore(qualifier);
        }

        if (_at >= _tokens.Count)
        {
            return Problem(TextProblemKind.Incomplete, qualifier.Span, $"'{Words(qualifier.Span)}' names no gene.");
        }

        if (qualifier.Chance is not null && !qualifier.IsHet && !qualifier.IsPossible)
        {
            if (IsAt(_at, TokenKind.Open))
            {
                return Parenthesis(qualifier);
            }

            if (qualifier.Side is null)
            {
                var what = NameAt(_at) is { } next ? Words(next.Span) : "Clown";
                return Problem(
                    TextProblemKind.Incomplete,
                    qualifier.Span,
                    $"A percentage needs het or possible: '{Words(qualifier.Span)} het {what}', or '{Words(qualifier.Span)} possible {what}' for a gene that shows in one copy.");
            }
        }

        if (qualifier.Copies > 0 && !qualifier.IsHet)
        {
            return Problem(TextProblemKind.Incomplete, qualifier.Span, $"'{Words(qualifier.Span)}' goes with het, as in double het Clown Pied.");
        }

        return qualifier.IsHet ? HetRun(qualifier) : One(qualifier);
    }
}
