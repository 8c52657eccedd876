using System.Globalization;
using System.Text;

namespace Clutchwright.Catalogue.TradeTexts;

internal enum TokenKind
{
    /// <summary>Letters and digits.</summary>
    Word = 1,

    /// <summary>Numbers with dots: males.females.unsexed.</summary>
    Count = 2,

    /// <summary>A number with a percent sign.</summary>
    Percent = 3,

    Slash = 4,
    Plus = 5,

    /// <summary>A comma, semicolon or the like: no name reaches across.</summary>
    Break = 6,

    /// <summary>The raised dot between linkage groups in genetics' notation.</summary>
    Dot = 7,
    Open = 8,
    Close = 9,

    /// <summary>The signs of the sexes.</summary>
    MaleSign = 10,
    FemaleSign = 11,
    Unknown = 12,
}

/// <summary>The smallest part of a trade text. Spaces and hyphens only separate.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Span">Where.</param>
/// <param name="Key">Its letters and digits in lower case; a number as written.</param>
internal readonly record struct TextToken(TokenKind Kind, TextSpan Span, string Key)
{
    public static IReadOnlyList<TextToken> Split(string text)
    {
        var tokens = new List<TextToken>();
        for (var at = 0; at < text.Length;)
        {
            var c = text[at];
            if (char.IsWhiteSpace(c) || IsHyphen(c))
            {
                at++;
            }
            else if (char.IsDigit(c) && NumberAt(text, at) is { } number)
            {
                tokens.Add(number);
                at = number.Span.End;
            }
            else if (IsLetter(text, at))
            {
                var start = at;
                while (at < text.Length && IsLetter(text, at))
                {
                    at++;
                }

                tokens.Add(new(TokenKind.Word, new(start, at - start), Spelling.Key(text[start..at])));
                at += at < text.Length && text[at] == '.' ? 1 : 0; // poss.
            }
            else
            {
                tokens.Add(new(SignKind(c), new(at, 1), c.ToString()));
                at++;
            }
        }

        return tokens;
    }

    private static bool IsLetter(string text, int at) =>
        char.IsLetterOrDigit(text[at])
        || (text[at] is '\'' or '’' && at > 0 && at + 1 < text.Length && char.IsLetterOrDigit(text[at - 1]) && char.IsLetterOrDigit(text[at + 1]))
        || CharUnicodeInfo.GetUnicodeCategory(text[at]) is UnicodeCategory.NonSpacingMark;

    // 1.0 and 66.6 % are numbers; 8 of "8 Ball" and 1st are words.
    private static TextToken? NumberAt(string text, int start)
    {
        var at = start;
        var dots = 0;
        while (at < text.Length && (char.IsAsciiDigit(text[at])
            || (text[at] == '.' && at + 1 < text.Length && char.IsAsciiDigit(text[at + 1]))))
        {
            dots += text[at] == '.' ? 1 : 0;
            at++;
        }

        if (at == start)
        {
            return null;
        }

        var sign = at;
        while (sign < text.Length && char.IsWhiteSpace(text[sign]))
        {
            sign++;
        }

        if (sign < text.Length && text[sign] == '%' && dots <= 1)
        {
            return new(TokenKind.Percent, new(start, sign + 1 - start), text[start..at]);
        }

        return dots > 0 && (at == text.Length || !char.IsLetterOrDigit(text[at]))
            ? new(TokenKind.Count, new(start, at - start), text[start..at])
            : null;
    }

    private static bool IsHyphen(char c) => c is '-' or '‐' or '‑' or '–' or '—';

    private static TokenKind SignKind(char c) => c switch
    {
        '/' => TokenKind.Slash,
        '+' => TokenKind.Plus,
        ',' or ';' or '&' or '|' or ':' => TokenKind.Break,
        '·' or '•' => TokenKind.Dot,
        '(' or '[' => TokenKind.Open,
        ')' or ']' => TokenKind.Close,
        '♂' => TokenKind.MaleSign,
        '♀' => TokenKind.FemaleSign,
        _ => TokenKind.Unknown,
    };

    /// <summary>The keys of the tokens put together.</summary>
    public static string Join(IEnumerable<TextToken> tokens)
    {
        var key = new StringBuilder();
        foreach (var token in tokens)
        {
            key.Append(token.Key);
        }

        return key.ToString();
    }
}
